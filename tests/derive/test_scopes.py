"""What a record covers, and the policy for it: read downwards, a later match replaces its lines."""

from basinside.derive.meanings import scope_digest
from basinside.derive.scopes import find_scope, policy_for, procedure_scope_digest
from basinside.derive.steps import place_steps
from basinside.model.content import Content
from basinside.model.derived import Policy
from basinside.quantity import parse_quantity
from tests.derive.clinic import demo, loaded
from tests.plain.clinic import base_files

POLICY = """
scopes:
  all-baths: [bulb-soak]
policy:
  - scope: all
    practice: {runs: 3, of_which_real: 2}
    after_last_attempt: Teach again.
    lasts: 12 months
    lapses_if_not_done_for: 6 months
  - scope: %s
    lasts: 6 months
    practice: {runs: 1}
  - scope: all
    lapses_if_not_done_for: 3 months
"""


def ruled(scope: str) -> Content:
    files = dict(base_files())
    files["content/handbook.yaml"] += (POLICY % scope).encode()
    return loaded(files)


def policy(content: Content, scope: str) -> Policy:
    found = find_scope(content, scope)
    assert found is not None
    return policy_for(content, found)


def test_a_later_match_replaces_only_the_lines_it_writes() -> None:
    found = policy(ruled("bulb-soak"), "bulb-soak")
    assert found.lasts == parse_quantity("6 months")
    assert found.lapses_if_not_done_for == parse_quantity("3 months")
    assert found.after_last_attempt == "Teach again."
    assert found.practice is not None
    assert (found.practice.runs, found.practice.of_which_real) == (1, 0)
    assert (found.knowledge, found.way_back) == (None, None)


def test_a_line_matches_by_the_group_by_a_procedure_in_it_and_in_a_list() -> None:
    for scope in ("all-baths", "bulb-soak", "[bulb-soak]", "[all-baths, bulb-soak]"):
        assert policy(ruled(scope), "all-baths").lasts == parse_quantity("6 months")
    assert policy(ruled("all-baths"), "bulb-soak").lasts == parse_quantity("12 months")


def test_nothing_written_asks_nothing() -> None:
    assert policy(loaded(base_files()), "bulb-soak") == Policy()


def test_a_group_and_a_procedure_are_scopes_and_nothing_else_is() -> None:
    content = ruled("all")
    group, one = find_scope(content, "all-baths"), find_scope(content, "bulb-soak")
    assert group is not None
    assert one is not None
    assert (group.procedures, one.procedures) == (("bulb-soak",), ("bulb-soak",))
    assert group.digest == one.digest == procedure_scope_digest(content, "bulb-soak")
    assert find_scope(content, "all") is None
    assert find_scope(Content(), "bulb-soak") is None


def test_the_demonstrations_group_covers_its_four_procedures() -> None:
    content = demo()
    scope = find_scope(content, "bag-masks")
    assert scope is not None
    group = {each for each in content.procedures if each.startswith("bag-mask-")}
    assert set(scope.procedures) == group
    assert len(group) == 4
    wholes = [place_steps(content, content.procedures[each]) for each in scope.procedures]
    assert scope.digest == scope_digest(content, wholes) == scope_digest(content, wholes[::-1])


def test_the_demonstrations_steam_lapses_sooner() -> None:
    content = demo()
    boiled, steamed = (
        policy(content, "bag-mask-silicone-boil"),
        policy(content, "bag-mask-silicone-steam"),
    )
    assert boiled.lapses_if_not_done_for == parse_quantity("6 months")
    assert steamed.lapses_if_not_done_for == parse_quantity("3 months")
    assert steamed.practice == boiled.practice
    assert steamed.way_back is not None
    assert boiled.way_back is None
