"""Sentences with references: a value's id, perhaps a unit, and nothing else inside the braces."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.model.prose import ProseError, Reference, Words, read_prose, references


@pytest.mark.parametrize(
    ("text", "spans"),
    [
        ("Wipe it.", (Words("Wipe it."),)),
        ("  Wipe\n  it. ", (Words("Wipe it."),)),
        ("{{ boil.hold }}", (Reference("boil.hold"),)),
        ("{{boil.hold}} more", (Reference("boil.hold"), Words(" more"))),
        (
            "For {{ boil.hold in minutes }}, then {{ a-b.c-d.e }}.",
            (Words("For "), Reference("boil.hold", "minutes"), Words(", then "),
             Reference("a-b.c-d.e"), Words(".")),
        ),
        ("{{ a.b in % w/v }}", (Reference("a.b", "% w/v"),)),
        ("{{ a.b\n in  h\n min }}", (Reference("a.b", "h min"),)),
        ("{{ a.b }}{{ c.d }}", (Reference("a.b"), Reference("c.d"))),
        ("{ one } brace", (Words("{ one } brace"),)),
        ("", (Words(""),)),
    ],
)  # fmt: skip
def test_what_is_read(text: str, spans: tuple[object, ...]) -> None:
    assert read_prose(text) == spans
    assert references(text) == tuple(each for each in spans if isinstance(each, Reference))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("{{ boil.hold", "opened or closed only half"),
        ("boil.hold }}", "opened or closed only half"),
        ("{{ boil.hold }", "opened or closed only half"),
        ("{{ a.b }} }}", "opened or closed only half"),
        ("{{ }}", "is no reference"),
        ("{{ boil }}", "is no reference"),
        ("{{ Boil.hold }}", "is no reference"),
        ("{{ boil.hold + 5 }}", "is no reference"),
        ("{{ boil.hold in }}", "is no reference"),
        ("{{ boil.hold | upper }}", "is no reference"),
        ("{{ a.b.__class__ }}", "is no reference"),
        ("{{ a.b {{ c.d }} }}", "is no reference"),
        ("{{ 'a.b' }}", "is no reference"),
    ],
)
def test_what_is_refused_says_how_to_write_it(text: str, said: str) -> None:
    with pytest.raises(ProseError, match=said) as caught:
        read_prose(text)
    assert "{{ boil.hold" in str(caught.value)


@given(st.text("ab.-{} in1\n", max_size=40))
def test_any_text_is_read_or_refused_and_no_word_is_lost(text: str) -> None:
    try:
        spans = read_prose(text)
    except ProseError:
        return
    written = "".join(
        each.text
        if isinstance(each, Words)
        else f"{{{{ {each.figure}{f' in {each.unit}' if each.unit else ''} }}}}"
        for each in spans
    )
    assert read_prose(written) == spans
    assert "".join(written.split()) == "".join(text.split())
