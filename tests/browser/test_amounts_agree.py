"""Python and the page answer 4,500 random questions to the calculators alike, word for word."""

import json
from collections import Counter
from pathlib import Path

import pytest

from basinside.derive.amounts import answer
from tests.browser import script_lab
from tests.conftest import Opener
from tests.derive.amount_questions import EACH, GROUND, PUBLISHED, questions

pytestmark = pytest.mark.browser

RUN = """text => {
  const [ground, asked] = JSON.parse(text);
  const answered = ([kind, typed]) => Basinside.amounts.answer(ground, kind, typed);
  return JSON.stringify(asked.map(answered));
}"""


def test_both_sides_answer_alike(tmp_path: Path, open_page: Opener) -> None:
    asked = questions()
    ours = [answer(GROUND, kind, dict(typed)).data() for kind, typed in asked]
    answered = Counter(each["kind"] for each in ours if not each["refusal"])
    refused = Counter(each["refusal"][0] for each in ours if each["refusal"])
    # Each kind answers often, and every way of refusing comes up; else agreement says little.
    assert all(count > EACH // 5 for count in answered.values())
    assert len(answered) == 9
    assert len(refused) > 20
    assert len(asked) == 9 * EACH + len(PUBLISHED)

    folder = script_lab.lay(tmp_path, {"a.html": ("", {})})
    told = open_page(folder / "a.html").evaluate(RUN, json.dumps([GROUND.data(), asked]))
    theirs = json.loads(told)
    apart = [
        (asked[at], mine, yours)
        for at, (mine, yours) in enumerate(zip(ours, theirs, strict=True))
        if mine != yours
    ]
    assert apart[:3] == []
