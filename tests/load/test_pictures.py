"""A drawing is parsed and written anew; what is not on the allow-list never reaches a page."""

from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.load.pictures import ATTRIBUTES, ELEMENTS, clean_picture

FILE = "content/pictures/bulb.svg"
SVG = "http://www.w3.org/2000/svg"


def drawn(inside: str, attributes: str = "") -> str:
    return f'<svg xmlns="{SVG}" viewBox="0 0 10 10"{attributes}>{inside}</svg>'


def refusals(text: str) -> list[str]:
    picture, problems = clean_picture(text.encode(), FILE)
    assert (picture is None) == bool(problems)
    return [each.message for each in problems]


def test_ids_are_kept_and_stand_in_the_markup_with_the_files_name() -> None:
    text = drawn('<defs><g id="leaf"/></defs><g id="tip"><use href="#leaf"/></g>')
    picture, problems = clean_picture(text.encode(), FILE)
    assert problems == ()
    assert picture is not None
    assert picture.ids == ("leaf", "tip")
    assert picture.markup == (
        '<svg viewBox="0 0 10 10"><defs><g id="d-bulb-leaf"></g></defs>'
        '<g id="d-bulb-tip"><use href="#d-bulb-leaf"></use></g></svg>'
    )


def test_words_are_escaped_and_words_elsewhere_are_dropped() -> None:
    text = drawn(
        "lost<text x='1'>a &lt;b&gt; <tspan>c</tspan> d</text>lost<title>e &amp; f</title>"
    )
    picture, _ = clean_picture(text.encode(), FILE)
    assert picture is not None
    assert "lost" not in picture.markup
    assert '<text x="1">a &lt;b&gt; <tspan>c</tspan> d</text>' in picture.markup
    assert "<title>e &amp; f</title>" in picture.markup


def test_a_reference_of_the_older_kind_is_written_as_the_newer() -> None:
    text = drawn('<g id="a"/><use xmlns:l="http://www.w3.org/1999/xlink" l:href="#a"/>')
    picture, _ = clean_picture(text.encode(), FILE)
    assert picture is not None
    assert '<use href="#d-bulb-a">' in picture.markup


@pytest.mark.parametrize(
    "inside",
    [
        "<script>x</script>",
        "<style>* {fill: red}</style>",
        "<image href='#a'/>",
        "<foreignObject/>",
        "<a href='#a'/>",
        "<animate/>",
        "<set/>",
        "<p xmlns='http://www.w3.org/1999/xhtml'/>",
        "<g xmlns=''/>",
        "<filter/>",
        "<metadata/>",
    ],
)
def test_an_element_that_is_not_named_is_refused(inside: str) -> None:
    (said,) = refusals(drawn(inside))
    assert said.startswith("the element “")
    assert said.endswith("” may not stand in a drawing")


@pytest.mark.parametrize(
    "attributes",
    [
        "onload='x'",
        "style='fill: red'",
        "xml:base='x'",
        "xmlns:q='urn:x' q:y='z'",
        "tabindex='0'",
        "href='http://example.org/'",
        "href='javascript:x'",
        "href='other.svg#a'",
        "href=' #a'",
        "fill='url(#a)'",
        "fill='url(http://example.org/)'",
        "fill='red&#1234;'",
        "fill='a\\b'",
        "id='Tip'",
        "id='a b'",
    ],
)
def test_an_attribute_or_value_that_is_not_named_is_refused(attributes: str) -> None:
    assert len(refusals(drawn(f"<g {attributes}/>"))) == 1


def test_an_id_stands_once() -> None:
    assert refusals(drawn("<g id='a'/><g id='a'/>")) == [
        "the id “a” is repeated or not lower-case words with hyphens"
    ]


@pytest.mark.parametrize(
    "text",
    [
        "<!DOCTYPE svg [<!ENTITY a 'b'>]>" + drawn("<text>&a;</text>"),
        "<!DocType svg>" + drawn(""),
        "<?xml-stylesheet href='a.css'?>" + drawn(""),
    ],
)
def test_what_comes_before_the_drawing_is_looked_at(text: str) -> None:
    assert refusals(text) == ["a drawing may hold no DOCTYPE, ENTITY or style sheet"]


def test_what_is_no_drawing_is_said_with_its_place() -> None:
    _, problems = clean_picture(b"<svg>\n<g></svg>", FILE)
    assert [each.place.mark for each in problems] == [(2, 6)]
    assert refusals("<g/>") == ["the outermost element must be svg in the SVG name space"]
    assert refusals("<svg/>") == ["the outermost element must be svg in the SVG name space"]
    assert refusals("x" * 200_001) == ["the drawing is larger than 200 kB"]
    assert refusals(drawn("<g>" * 40 + "</g>" * 40)) == [
        "the drawing has too many or too deeply nested elements; simplify it"
    ]


SPOKEN = {"role", "aria-label"}  # text to a screen reader, whatever it says
NAMES = st.sampled_from([*sorted(ELEMENTS), "script", "image", "style", "a"])
ATTRS = st.dictionaries(
    st.sampled_from([*sorted(ATTRIBUTES), "onclick", "style"]),
    st.sampled_from(["red", "0 0 1 1", "a", "#a", "url(#a)", "M0 0L1 1", "javascript:x", "é"]),
    max_size=3,
)


def element(name: str, attributes: dict[str, str], inside: list[str]) -> str:
    written = "".join(f' {key}="{value}"' for key, value in attributes.items())
    return f"<{name}{written}>{''.join(inside)}</{name}>"


TREES = st.recursive(
    st.builds(element, NAMES, ATTRS, st.just([])),
    lambda inner: st.builds(element, NAMES, ATTRS, st.lists(inner, max_size=3)),
    max_leaves=8,
)


@given(TREES)
def test_only_what_is_allowed_leaves(inside: str) -> None:
    picture, problems = clean_picture(drawn(inside).encode(), FILE)
    assert (picture is None) == bool(problems)
    if picture is None:
        return
    for node in ElementTree.fromstring(picture.markup).iter():
        assert node.tag in ELEMENTS
        assert set(node.attrib) <= ATTRIBUTES
        assert not [
            value
            for key, value in node.attrib.items()
            if key not in SPOKEN and ("url(" in value or "script" in value)
        ]
        assert node.get("id", "d-bulb-").startswith("d-bulb-")
        assert node.get("href", "#d-bulb-").startswith("#d-bulb-")
    again, _ = clean_picture(
        picture.markup.replace("<svg", f'<svg xmlns="{SVG}"', 1).encode(), FILE
    )
    assert again is not None
    assert len(again.ids) == len(picture.ids)
