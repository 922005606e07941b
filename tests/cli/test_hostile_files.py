"""Whatever a file holds that somebody hands in: an answer or a refusal, never a traceback."""

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from basinside.pipeline.desk import Scorer
from basinside.pipeline.examining import examine_file
from basinside.pipeline.forms import sound_clinic
from basinside.pipeline.machine_files import read_object
from basinside.pipeline.refusal import RefusedError
from tests.cli.run import basinside, evidence, phrases

STRANGE = st.one_of(
    st.none(),
    st.booleans(),
    st.integers(min_value=-(2**53) + 1, max_value=2**53 - 1),
    st.text(max_size=20),
    st.sampled_from(
        ["2026-02-31", "0000-01-01", "9999-12-31", "did:key:zDn1", "\x1b[2J", "A" * 43]
    ),
    st.lists(st.integers(min_value=-3, max_value=99), max_size=4),
    st.just({}),
)


def places(value: Any, path: tuple[Any, ...] = ()) -> list[tuple[Any, ...]]:
    """Every place inside a JSON value."""
    found = [path] if path else []
    pairs = (
        value.items()
        if isinstance(value, dict)
        else enumerate(value)
        if isinstance(value, list)
        else ()
    )
    for key, each in pairs:
        found += places(each, (*path, key))
    return found


def with_strange(data: st.DataObject, value: Any) -> Any:
    """A copy with something strange in one to three places, or with a place taken away."""
    for _ in range(data.draw(st.integers(1, 3))):
        known = places(value)
        if not known:
            break
        path = data.draw(st.sampled_from(known))
        inner = value
        for key in path[:-1]:
            inner = inner[key]
        if isinstance(inner, dict) and data.draw(st.booleans()):
            del inner[path[-1]]
        else:
            inner[path[-1]] = data.draw(STRANGE)
    return value


@pytest.fixture(scope="module")
def scorer(clinic: Path) -> Scorer:
    return Scorer(clinic, phrases(clinic)["Marking phrase"], sound_clinic(clinic))


FUZZ = settings(
    max_examples=120,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)


@FUZZ
@given(st.data())
def test_a_strange_attempt_or_observation_is_scored_or_refused(
    clinic: Path, scorer: Scorer, tmp_path: Path, data: st.DataObject
) -> None:
    path = data.draw(st.sampled_from(evidence(clinic)[-2:]))
    strange = tmp_path / path.name
    strange.write_text(json.dumps(with_strange(data, read_object(path))), encoding="utf-8")
    try:
        scorer.score(strange)
    except RefusedError as error:
        assert str(error).isprintable()


@FUZZ
@given(st.data())
def test_a_strange_record_or_trust_list_is_examined_or_refused(
    clinic: Path, record: Path, tmp_path: Path, data: st.DataObject
) -> None:
    plain, trust = read_object(record), read_object(clinic / "content/trust.json")
    if data.draw(st.booleans()):
        plain = with_strange(data, plain)
    else:
        trust = with_strange(data, trust)
    (tmp_path / "trust.json").write_text(json.dumps(trust), encoding="utf-8")
    path = tmp_path / "strange.record.json"
    path.write_text(json.dumps(plain), encoding="utf-8")
    try:
        examine_file(path, folder=tmp_path)
    except RefusedError as error:
        assert str(error).isprintable()


@settings(FUZZ, max_examples=25)
@given(st.data())
def test_a_strange_key_file_or_sealed_form_is_refused(
    clinic: Path, tmp_path: Path, data: st.DataObject
) -> None:
    key = with_strange(data, read_object(clinic / "quizzes/sample-evidence/S-01.key.json"))
    path = tmp_path / "strange.key.json"
    path.write_text(json.dumps(key), encoding="utf-8")
    ran = basinside(
        "sign", "--folder", clinic, "--scope", "bag-masks", "--learner", "M-12", "--key", path,
        "--phrase", phrases(clinic)["Key phrase of S-01"], "--on", "2026-11-20",
        "--into", tmp_path / "records",
    )  # fmt: skip
    assert ran.code == 1
