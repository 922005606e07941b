"""What a newcomer looks for on a page: all that is laid out, whom to ring, which step it is."""

from tests.render.pages_of_demo import pages, part_of, words


def test_what_is_laid_out_has_chemicals_lubricants_and_what_is_worn() -> None:
    page = pages()["procedures/uterine-aspirator-coldonly-soak.html"]
    ready = words(part_of(page, "things ready before you begin", "</details>"))
    for each in ("Silicone lubricant", "Glutaraldehyde", "Neutral liquid detergent"):
        assert each.lower() in ready.lower(), each
    assert "To wear:" in ready
    assert "heavy gloves" in ready
    assert "face shield" in ready


def test_the_drawing_of_a_procedure_names_its_parts_in_working_order() -> None:
    page = pages()["procedures/uterine-aspirator-coldonly-soak.html"]
    caption = words(part_of(page, "<figcaption>", "</figcaption>")).strip()
    assert caption.startswith("Taken apart, in this order: 1. 6 × cannula, 2. 2 × adapter")
    hinged = pages()["procedures/delivery-set-steam.html"]
    assert "Nothing comes apart: cord scissors" in words(
        part_of(hinged, "<figcaption>", "</figcaption>")
    )


def test_whom_to_ring_stands_before_what_happened_and_is_led_to() -> None:
    page = pages()["incidents.html"]
    assert page.index('href="#ring"') < page.index('id="ring"') < page.index('class="incident"')


def test_a_line_to_watch_names_its_step_and_who_may_watch_is_said() -> None:
    page = pages()["print/observation-speculum-boil.html"]
    assert "<strong>Safety step 1</strong>" in page
    assert "Who may observe: anyone whose own record" in words(page)


def test_a_test_with_a_wait_has_its_time() -> None:
    page = pages()["procedures/uterine-aspirator-coldonly-vacuum-test.html"]
    assert '"short":"Inspection and maintenance, step ' in page.replace(": ", ":")
    assert 'data-component="timer"' in page
