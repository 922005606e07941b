"""Inside one file an id stands once, and days stand in their order."""

import pytest

from tests.plain.clinic import patched, read

SOAK = "content/procedures/bulb-soak.yaml"
CARD = "content/handbook.yaml"


@pytest.mark.parametrize(
    ("file", "old", "new", "line"),
    [
        (SOAK, "- step: look", "- step: wash",
         "there are two steps “wash” here; give one an id of its own, or delete it [repeated-id]"),
        ("content/instruments/bulb.yaml", "- part: tip", "- part: body",
         "there are two parts “body” here; give one an id of its own, or delete it [repeated-id]"),
        (CARD, "- vessel: weighted", "- vessel: tall",
         ("there are two vessels “tall” here; give one an id of its own, or delete it"
         " [repeated-id]")),
        (CARD, "review_by: 2027-03-01", "review_by: 2025-03-01",
         "review_by is 2025-03-01, before issued, which is 2026-03-01 [bad-value]"),
        (SOAK, "instrument: bulb\n", "",
         ("a procedure with a route names its instrument; this one names none [missing-key]")),
        (SOAK, "route: chlorine-bath\n", "",
         ("a procedure without a route has nothing to be called by; write its title"
          " [missing-key]")),
        (SOAK, "instrument: bulb\nroute: chlorine-bath\n", "title: Task\nparts: [tip]\n",
         "parts are those of an instrument; this procedure names none [missing-key]"),
    ],
)  # fmt: skip
def test_what_does_not_agree(file: str, old: str, new: str, line: str) -> None:
    looked = read(patched({"replace": [{"file": file, "old": old, "new": new}]}))
    said = [each.split(": ", 1)[1] for each in looked.lines if each.startswith(f"{file}:")]
    assert line in said
