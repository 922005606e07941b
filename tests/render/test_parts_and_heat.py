"""What holds for some parts only, and the sentence that stops somebody from heating."""

from basinside.derive.everything import derive
from basinside.load.content import load
from basinside.pipeline.build import Clinic, handbook_files, open_theme
from tests.built import CHECKOUT
from tests.render.pages_of_demo import demo, pages, part_of, words

LARYNGOSCOPE = "instruments/laryngoscope.html"


def changed(file: str, *changes: tuple[str, str]) -> dict[str, str]:
    """Return the pages of the demo with words of one file changed, each found once or more."""
    raw = dict(demo().raw)
    text = raw[file].decode()
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new)
    raw[file] = text.encode()
    content, problems = load(raw)
    assert not problems
    clinic = Clinic(root=CHECKOUT, raw=raw, content=content, derived=derive(content), problems=())
    made = handbook_files(clinic, open_theme())
    return {path: make() for path, make in made if path.startswith(("instruments/", "routes"))}


def test_a_way_for_some_parts_says_for_which_and_why_not_for_the_others() -> None:
    told = words(part_of(pages()[LARYNGOSCOPE], 'id="route-glutaraldehyde-hld"', "</ul>"))
    assert "Permitted for some parts only" in told
    assert "Permitted for: Blade and lamp." in told
    assert "Not for: handle, battery cap and battery (does not stand it)" in told
    assert "Refused" not in told


def test_a_way_is_refused_whole_where_the_clinic_brings_back_no_part_alone() -> None:
    vinyl = pages()["instruments/bag-mask-vinyl.html"]
    verdict = next(
        each
        for each in demo().derived.instruments["bag-mask-vinyl"].verdicts
        if each.route.route == "boil"
    )
    assert verdict.partly  # some parts would stand it
    told = words(part_of(vinyl, 'id="route-boil"', '<p class="instead">'))
    assert "Refused" in told
    assert "Permitted" not in told


def test_what_may_be_done_stands_before_what_is_refused() -> None:
    for path, page in pages().items():
        if path.startswith("instruments/") and 'class="routes"' in page:
            listed = part_of(page, '<ul class="routes">', "<h2")
            assert "</li>" in listed
            last = listed.rfind("<strong>Permitted")
            first = listed.find('class="refused"')
            assert first == -1 or last < first, path


def test_what_heat_ruins_says_so_on_its_page_its_procedures_and_the_first_page() -> None:
    for path in (
        "instruments/bag-mask-vinyl.html",
        "instruments/uterine-aspirator-coldonly.html",
        "procedures/bag-mask-vinyl-soak.html",
        "procedures/uterine-aspirator-coldonly-soak.html",
    ):
        assert '<p class="never"><strong>Never heat it</strong>' in pages()[path], path
    start = pages()["index.html"]
    for name in ("bag-mask-vinyl", "uterine-aspirator-coldonly"):
        row = part_of(start, f'href="instruments/{name}.html"', "</a>")
        assert "<strong>Never heat it</strong>" in row


def test_what_stands_heat_is_not_warned_of() -> None:
    for name in ("bag-mask-silicone", "uterine-aspirator-heatproof", "speculum"):
        assert 'class="never"' not in pages()[f"instruments/{name}.html"], name


def test_what_nobody_states_is_refused_but_is_no_warning() -> None:
    made = changed(
        "content/instruments/bag-mask-vinyl.yaml",
        ("boil: no, steam-wrapped: no", "chlorine-hld: yes"),
        ("immersion: {boiling: never}\n", ""),
    )
    page = made["instruments/bag-mask-vinyl.html"]
    assert 'class="never"' not in page


def test_one_part_that_water_ruins_says_so_beside_its_name_and_under_the_drawing() -> None:
    page = pages()["instruments/vacuum-extractor.html"]
    gauge = part_of(page, '<li id="gauge">', "</li>")
    assert '<strong class="tag">Never under water</strong></h3>' in gauge
    cup = part_of(page, '<li id="cup">', "</li>")
    assert "Never under water" not in cup
    caption = words(part_of(page, "<figcaption>Taken apart:", "</figcaption>"))
    assert "gauge (never under water)" in caption
    assert "2 × tubing" in caption


def test_the_two_that_look_the_same_are_drawn_side_by_side() -> None:
    page = pages()["instruments/uterine-aspirator-coldonly.html"]
    both = part_of(page, '<ul class="look-alikes">', "</ul>")
    assert both.count("<figure") == 2
    assert "This one: Uterine aspirator, cold-only" in both
    assert "The other one: Uterine aspirator, heat-proof" in both


def test_chemicals_that_keep_moist_or_never_wet_lead_to_their_cards() -> None:
    page = pages()["instruments/bag-mask-silicone.html"]
    told = part_of(page, "<dt>Never keep it moist with (before it is clean)</dt>", "</dd>")
    assert '<a href="../agents/saline.html">Saline' in told
    assert '<a href="../agents/chlorine.html">chlorine solution</a>' in told


def test_a_lubricated_part_names_what_with_and_leads_to_its_card() -> None:
    page = pages()["instruments/uterine-aspirator-heatproof.html"]
    told = part_of(page, '<li id="plunger-seal">', "</li>")
    assert '<a href="../agents/silicone-lubricant.html">silicone lubricant for seals</a>' in told
    assert "petroleum jelly" in told


def test_parts_that_go_their_own_way_are_warned_of_by_name_when_another_stands_heat() -> None:
    cup = "- part: cup"
    text = demo().raw["content/instruments/vacuum-extractor.yaml"].decode()
    after = text[text.index(cup) :]
    routes = after[after.index("routes: {") : after.index("}", after.index("routes: {"))]
    made = changed(
        "content/instruments/vacuum-extractor.yaml",
        (
            after[: after.index(routes) + len(routes)],
            after[: after.index(routes)] + routes.replace("boil: no", "boil: yes"),
        ),
        ("\nimmersion: {boiling: never, ", "\nimmersion: {"),
    )
    told = words(part_of(made["instruments/vacuum-extractor.html"], '<p class="never">', "</p>"))
    assert "Never heat: " in told
    assert "gauge" in told
    assert "cup" not in told


def test_only_what_a_procedure_is_for_is_listed_to_be_taken_apart() -> None:
    def step(name: str) -> str:
        return part_of(pages()[f"procedures/{name}.html"], 'id="take-apart"', '<div class="signs">')

    soaked = words(part_of(step("vacuum-extractor-soak"), "<ol", "</ol>"))
    assert soaked.split() == "2 × tubing Cup Trap lid Trap jar".split()
    wiped = step("vacuum-extractor-pump-wipe")
    assert "Pull the pump off its tube." in words(wiped)
    assert "<ol" not in wiped
    handle = words(part_of(step("laryngoscope-handle-wipe"), "<ol", "</ol>"))
    assert handle.split() == "Battery cap 2 × battery Handle".split()
