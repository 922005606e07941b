"""Which page a problem stands on."""

import pytest

from basinside.pipeline.build import PageMemory, handbook_files, open_theme
from basinside.problem import Level, Place, Placed, Problem
from basinside.render.problem_pages import MOST_BANNERS, page_banners, page_of
from tests.render.pages_of_demo import demo


@pytest.mark.parametrize(
    ("file", "path", "page"),
    [
        ("content/procedures/speculum-boil.yaml", (), "procedures/speculum-boil.html"),
        ("content/instruments/speculum.yaml", (), "instruments/speculum.html"),
        ("content/agents/chlorine.yaml", (), "agents/chlorine.html"),
        ("content/figures/boiling.yaml", ("figures", "boil.hold"), "values.html"),
        ("content/figures/boiling.yaml", ("choices", "boil.altitude"), "choices.html"),
        ("content/routes/boil.yaml", ("name",), "routes.html"),
        ("content/sources.yaml", (), "sources.html"),
        ("content/words.yaml", (), "words.html"),
        ("content/incidents.yaml", ("incidents", 2), "incidents.html"),
        ("content/pictures/speculum.svg", (), "instruments/speculum.html"),
        ("content/pictures/boil-rolling.svg", (), "procedures/bag-mask-silicone-boil.html"),
        ("content/pictures/nobody.svg", (), ""),
        ("content/handbook.yaml", ("posted", 1), "print/index.html"),
        ("content/handbook.yaml", ("clinic",), ""),
        ("quizzes/questions/steam.yaml", ("items", 0), "self-tests/steam.html"),
        ("quizzes/assessments/core.yaml", (), ""),
        ("quizzes/observations/speculum-boil.yaml", (), "print/observation-speculum-boil.html"),
        ("content/nowhere.yaml", (), ""),
    ],
)
def test_a_place_has_its_page_and_the_page_is_there(
    file: str, path: tuple[str | int, ...], page: str
) -> None:
    assert page_of(Place(file, path), demo().content) == page
    assert not page or page in PAGES


PAGES = {path for path, _make in handbook_files(demo(), open_theme())}


def problem(file: str, level: Level = Level.STOP, waived_by: str = "", line: int = 1) -> Placed:
    found = Problem(
        place=Place(file), rule="some-rule", level=level, message="wrong", waived_by=waived_by
    )
    return Placed(problem=found, line=line, column=1)


def test_warnings_stand_there_too_and_what_is_waived_or_information_does_not() -> None:
    values = "content/figures/boiling.yaml"
    banners = page_banners(
        [
            problem(values, Level.WARN, line=1),
            problem(values, Level.INFO, line=2),
            problem(values, waived_by="two people", line=3),
        ],
        demo().content,
        PAGES,
    )
    (warned,) = banners.on("values.html")
    assert warned.word == "To look at"
    assert banners.on("sources.html") == ()
    (elsewhere,) = banners.on("index.html")
    assert elsewhere.link is not None
    assert elsewhere.link.href == "values.html"


def test_a_page_that_is_not_there_gives_its_problems_to_the_first() -> None:
    banners = page_banners([problem("content/procedures/new.yaml")], demo().content, PAGES)
    (found,) = banners.on("index.html")
    assert found.text[0].text.startswith("content/procedures/new.yaml:1:1: wrong")
    (older,) = banners.on("procedures/speculum-boil.html")
    assert older.link is not None
    assert older.link.href == "../index.html"


def test_many_problems_are_counted_and_what_stops_comes_first() -> None:
    many = [problem("content/words.yaml", Level.WARN, line=n + 1) for n in range(MOST_BANNERS)]
    banners = page_banners([*many, problem("content/words.yaml", line=999)], demo().content, PAGES)
    first, *_, last, _older = banners.on("words.html")
    assert ":999:" in first.text[0].text
    assert last.text[0].text == "and one more problem"


def test_only_pages_whose_problems_changed_are_made_again() -> None:
    memory, theme, made = PageMemory(), open_theme(), []
    warned = (problem("content/words.yaml", Level.WARN),)
    for problems in (warned, warned, ()):
        texts = dict(handbook_files(demo(), theme, memory=memory, problems=problems, preview=True))
        made.append({path: make() for path, make in texts.items() if path.endswith(".html")})
    for pages in made:
        del pages["examine.html"]  # its trust list is read anew each time
    first, second, third = made
    assert all(second[path] is first[path] for path in first)
    again = {path for path in first if third[path] is not first[path]}
    assert again == {"words.html", "index.html"}
