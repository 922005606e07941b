"""Each component's examples are views of the declared types, render strictly and are sound HTML."""

from __future__ import annotations

import dataclasses
import types
import typing
from pathlib import Path
from typing import Any

import html5lib
import pytest
import yaml
from jinja2 import Environment, FileSystemLoader, UndefinedError
from markupsafe import Markup

from basinside.render import view_types
from basinside.render.environment import engine, prose

THEME = Path(__file__).parents[2] / "site_theme"
COMPONENTS = sorted(each.parent for each in THEME.glob("components/*/macro.html"))


@pytest.fixture(scope="module")
def environment() -> Environment:
    return engine(FileSystemLoader(THEME))


def view_from(kind: Any, given: Any) -> Any:
    """Build what a field's type asks for out of an example's plain YAML."""
    if kind == view_types.Prose and isinstance(given, str):
        return view_types.plain(given)
    origin = typing.get_origin(kind)
    if origin in (typing.Union, types.UnionType):
        inner = [each for each in typing.get_args(kind) if each is not types.NoneType]
        return None if given is None else view_from(inner[0], given)
    if origin is tuple:
        return tuple(view_from(typing.get_args(kind)[0], each) for each in given)
    if origin is typing.Literal:
        assert given in typing.get_args(kind)
        return given
    if dataclasses.is_dataclass(kind):
        fields = typing.get_type_hints(kind)
        assert isinstance(kind, type)
        return kind(**{key: view_from(fields[key], each) for key, each in given.items()})
    if kind is Markup:
        return Markup(given)  # noqa: S704 - an example of what a view has made safe
    assert isinstance(given, kind), (kind, given)
    return given


def argument_from(given: Any) -> Any:
    if isinstance(given, list):
        return tuple(argument_from(each) for each in given)
    if isinstance(given, dict):
        fields = dict(given)
        return view_from(getattr(view_types, fields.pop("is")), fields)
    return given


def examples() -> list[Any]:
    return [
        pytest.param(folder.name, example, id=f"{folder.name}: {example['says']}")
        for folder in COMPONENTS
        for example in yaml.safe_load((folder / "examples.yaml").read_text(encoding="utf-8"))
    ]


def rendered(environment: Environment, component: str, example: dict[str, Any]) -> str:
    macro = getattr(
        environment.get_template(f"components/{component}/macro.html").module, example["macro"]
    )
    return str(macro(**{key: argument_from(each) for key, each in example["with"].items()}))


@pytest.mark.parametrize(("component", "example"), examples())
def test_an_example_renders_as_sound_html(
    environment: Environment, component: str, example: dict[str, Any]
) -> None:
    html = rendered(environment, component, example)
    for each in example["finds"]:
        assert each in html, html
    parser = html5lib.HTMLParser()
    parser.parseFragment(html)
    assert [name for _, name, _ in parser.errors] == []


def test_every_macro_has_an_example(environment: Environment) -> None:
    for folder in COMPONENTS:
        shown = {
            each["macro"]
            for each in yaml.safe_load((folder / "examples.yaml").read_text(encoding="utf-8"))
        }
        module = environment.get_template(f"components/{folder.name}/macro.html").module
        own = {
            name
            for name in vars(module)
            if not name.startswith("_")
            and f"macro {name}(" in (folder / "macro.html").read_text(encoding="utf-8")
        }
        assert own - {"basin", "sign"} <= shown, folder.name


def test_a_missing_field_is_refused(environment: Environment) -> None:
    with pytest.raises(UndefinedError):
        rendered(environment, "figure", {"macro": "figure", "with": {"view": ""}})


def test_a_sentence_is_placed_with_its_values_and_its_markup_shown() -> None:
    span = view_types.SpanView
    placed = prose(
        (
            span(text="Boil for "),
            span(kind="value", text="20 min", machine="1200 s", href="../values.html#boil.hold"),
            span(text=" & no <b onclick=x>less</b> "),
            span(kind="link", text="see the step", href="#start-timing"),
        )
    )
    assert placed == (
        'Boil for <a class="to-value" href="../values.html#boil.hold"><data value="1200 s">20 min'
        "</data></a> &amp; no &lt;b onclick=x&gt;less&lt;/b&gt; "
        '<a href="#start-timing">see the step</a>'
    )
