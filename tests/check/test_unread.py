"""While a file cannot be read, nobody says that something is nowhere."""

from basinside.check.registry import RULES
from basinside.problem import Level
from tests.check.clinic import base_files, look_at

NOT_YAML = b"figures:\n  bath.hold: {is: [\n"


def rules_said(files: dict[str, bytes]) -> set[str]:
    return {each.rule for each in look_at(files).problems if each.level != Level.INFO}


def test_a_lost_file_of_figures_brings_its_own_line_and_no_gap() -> None:
    files = base_files()
    for lost in ("content/figures/all.yaml", "content/figures/care.yaml"):
        assert rules_said({**files, lost: NOT_YAML}) & {each.id for each in RULES} == set(), lost


def test_what_is_nowhere_is_said_again_when_all_can_be_read() -> None:
    extra = b"figures:\n  spare.one: {is: spare, value: 1 h, basis: from memory}\n"
    files = {**base_files(), "content/figures/extra.yaml": extra}
    assert rules_said(files) == {"figure-unused"}
    assert "figure-unused" not in rules_said({**files, "content/words.yaml": b"words: {\n"})


def test_a_waiver_may_have_an_effect_once_all_can_be_read() -> None:
    waived = (
        b"figures:\n  spare.one:\n    is: spare\n    value: 1 h\n    basis: from memory\n"
        b"    waive:\n      - {rule: source-missing, because: The book is away., by: lead,"
        b" second: midwife, on: 2026-01-10, until: 2027-01-09}\n"
    )
    files = {**base_files(), "content/figures/extra.yaml": waived}
    assert "waiver-without-effect" in rules_said(files)
    assert "waiver-without-effect" not in rules_said({**files, "content/words.yaml": b"words: {\n"})
