"""A form meets its blueprint, is the same for the same secret, and gives nothing away."""

from collections import Counter
from functools import cache
from itertools import pairwise
from math import sqrt

import pytest
from hypothesis import given
from hypothesis import strategies as st

from basinside.derive.forms import (
    DrawnItem,
    UnfillableError,
    draw_form,
    form_documents,
    shown_text,
)
from basinside.load.content import load
from basinside.marking import quotas
from basinside.model.content import Content
from basinside.model.quiz import Assessment
from basinside.model.words import THINKING
from tests.built import CHECKOUT
from tests.derive.clinic import demo

SECRETS = tuple(number.to_bytes(32, "big") for number in range(200))


@pytest.mark.parametrize(
    ("shares", "items", "wanted"),
    [
        # assessment science, section 11: largest remainder, a tie goes to the first.
        ((40, 30, 20, 10), 25, (10, 8, 5, 2)),
        ((25, 25, 25, 25), 12, (3, 3, 3, 3)),
        ((20, 30, 30, 20), 12, (2, 4, 4, 2)),
        ((100,), 7, (7,)),
        ((50, 50), 1, (1, 0)),
    ],
)
def test_worked_quotas(shares: tuple[int, ...], items: int, wanted: tuple[int, ...]) -> None:
    assert tuple(quotas(dict(zip("abcd", shares, strict=False)), items).values()) == wanted


def test_three_equal_shares_of_twenty() -> None:
    # assessment science, section 11: 1/1/1 of 20 gives 7 7 6; in whole percent 34/33/33 is nearest
    assert tuple(quotas({"a": 34, "b": 33, "c": 33}, 20).values()) == (7, 7, 6)


def split(cuts: set[int]) -> list[int]:
    """Return whole shares of 100 between the cuts."""
    ends = sorted({*cuts, 100})
    return [high - low for low, high in pairwise([0, *ends])]


SHARES = st.sets(st.integers(1, 100), min_size=1, max_size=8).map(split)


@given(SHARES, st.integers(0, 120))
def test_quotas_add_up_and_stay_within_one_of_the_share(shares: list[int], items: int) -> None:
    named = {str(n): share for n, share in enumerate(shares)}
    wanted = quotas(named, items)
    assert sum(wanted.values()) == items
    assert all(abs(wanted[name] - named[name] * items / 100) < 1 for name in named)


def core() -> Assessment:
    return demo().assessments["core"]


@cache
def drawn(secret: bytes) -> tuple[DrawnItem, ...]:
    return draw_form(demo(), core(), secret)


def test_the_demonstrations_forms_meet_their_blueprint() -> None:
    blueprint = core().blueprint
    wanted = Counter(quotas(blueprint.topics, core().items))
    for secret in SECRETS:
        form = drawn(secret)
        assert Counter(each.asked.topic for each in form) == wanted
        assert len({each.asked.item.item for each in form}) == core().items
        assert {each.asked.pool for each in form} == {"assessment"}
        for thinking, share in blueprint.at_least.items():
            deep = THINKING[THINKING.index(thinking) :]
            have = sum(each.asked.item.thinking in deep for each in form)
            assert have * 100 >= share * core().items
        assert all(sorted(each.order) == list(range(len(each.order))) for each in form)


def test_the_same_secret_gives_the_same_form_and_another_gives_another() -> None:
    assert draw_form(demo(), core(), SECRETS[7]) == drawn(SECRETS[7])
    forms = {tuple((each.asked.item.item, each.order) for each in drawn(s)) for s in SECRETS}
    assert len(forms) == len(SECRETS)


def test_items_of_a_scenario_stand_together_in_their_order() -> None:
    written = [asked.item.item for asked in demo().items("assessment")]
    for secret in SECRETS:
        form = [each.asked for each in drawn(secret)]
        names = [each.scenario.scenario if each.scenario else each.item.item for each in form]
        runs = [name for n, name in enumerate(names) if not n or name != names[n - 1]]
        assert len(runs) == len(set(runs))
        for scenario in set(names):
            members = [
                written.index(each.item.item)
                for each, name in zip(form, names, strict=True)
                if name == scenario
            ]
            assert members == sorted(members)


def test_no_place_among_the_options_gives_the_key_away() -> None:
    counts: dict[int, Counter[int]] = {}
    for secret in SECRETS:
        for each in drawn(secret):
            options = each.asked.item.options
            if each.asked.item.kind == "choice":
                (key,) = [n for n, at in enumerate(each.order) if options[at].is_right]
                counts.setdefault(len(options), Counter())[key] += 1
    assert counts
    for size, places in counts.items():
        total = sum(places.values())
        fair = total / size
        # Four standard deviations of a fair draw; the secrets are fixed, so this never flickers.
        allowed = 4 * sqrt(total * (1 / size) * (1 - 1 / size))
        assert all(abs(places[n] - fair) <= allowed for n in range(size)), (size, places)


def test_the_written_order_is_no_more_likely_than_another() -> None:
    orders = Counter(each.order for s in SECRETS for each in drawn(s) if len(each.order) == 3)
    assert len(orders) == 6
    total = sum(orders.values())
    assert abs(orders[(0, 1, 2)] - total / 6) <= 4 * sqrt(total * (1 / 6) * (5 / 6))


def test_the_form_holds_no_key_and_its_keys_follow_its_order() -> None:
    form, keys = form_documents(demo(), core(), "A", SECRETS[3])
    assert form["format"] == "basinside/form/1"
    assert keys["pass_percent"] == core().pass_.percent
    for shown, key, each in zip(form["items"], keys["items"], drawn(SECRETS[3]), strict=True):
        assert set(shown) == {"item", "kind", "topic", "situation", "stem", "options", "scenario"}
        options = [each.asked.item.options[n] for n in each.order]
        assert shown["options"] == [shown_text(option.text, demo()) for option in options]
        right = [n for n, option in enumerate(options) if option.is_right]
        assert [n for n, rule in enumerate(key["plan"]["pass_all"]) if "has" in rule] == right
        assert "{{" not in "".join((shown["stem"], shown["situation"], *shown["options"]))


def test_a_pool_that_cannot_fill_the_blueprint_says_what_is_short() -> None:
    few = Content(handbook=demo().handbook, figures=demo().figures, questions=())
    with pytest.raises(UnfillableError, match=r"needs \d+ items but the pool has 0"):
        draw_form(few, core(), SECRETS[0])


def test_a_kind_that_a_form_cannot_hold_is_refused_by_name() -> None:
    written = (CHECKOUT / "tests" / "check" / "kinds.yaml").read_bytes()
    raw = {"quizzes/questions/kinds.yaml": written.replace(b"pool: practice", b"pool: assessment")}
    content, _ = load(raw)
    with pytest.raises(UnfillableError, match="bath-order is of kind order"):
        draw_form(content, core(), SECRETS[0])
