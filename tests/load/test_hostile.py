"""Whatever bytes the files hold, reading and checking them gives lines, never a traceback."""

import json
import random
from collections.abc import Iterator, Mapping
from itertools import islice

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from basinside.check.explain import FORM_IDS
from basinside.problem import Problem, any_stop
from tests.check.clinic import look_at
from tests.plain.clinic import CLOSED, Looked, base_files, closed, closed_edition

ROUNDS = 250  # random mutations; about 4 s
AGAIN = "content/procedures/again-soak.yaml"
ALWAYS = ("content/instruments/bulb.yaml", "content/procedures/bulb-soak.yaml", CLOSED)

BOMB = b"a: &a [x,x,x,x,x,x,x,x,x]\n" + b"".join(
    b"%c: &%c [*%c,*%c,*%c,*%c,*%c,*%c,*%c,*%c,*%c]\n" % ((n, n) + (n - 1,) * 9)
    for n in range(ord("b"), ord("z"))
)
DEEP = 100_000
TEXTS: dict[str, bytes] = {
    "nothing": b"",
    "alias bomb": BOMB,
    "alias to itself": b"part: &a [*a]\n",
    "merge key": b"a: &a {b: c}\nd:\n  <<: *a\n",
    "brackets": b"[" * DEEP,
    "closed brackets": b"[" * DEEP + b"]" * DEEP,
    "braces": b"{a: " * DEEP,
    "dashes": b"- " * DEEP + b"x",
    "questions": b"? " * DEEP,
    "stairs": b"\n".join(b" " * n + b"a:" for n in range(2_000)),
    "UTF-16": "instrument: bulb\n".encode("utf-16"),
    "UTF-16 without a mark": "instrument: bulb\n".encode("utf-16-le"),
    "Latin 1": "name: 121 °C\n".encode("latin-1"),
    "NUL": b"instrument: bu\0lb\n",
    "only NULs": bytes(5_000),
    "escape": b"instrument: \x1b[31mbulb\n",
    "huge": b"# " + b"x" * 100_000_000,
    "many keys": b"".join(b"k%d: v\n" % n for n in range(5_000)),
    "one key often": b"instrument: bulb\n" * 1_000,
    "tabs": b"instrument:\tbulb\n\tname: x\n",
    "two documents": b"a: b\n---\nc: d\n",
    "tag": b"!!python/object/apply:os.system [x]\n",
    "directive": b"%YAML 9.9\n---\na: b\n",
    "a number": b"1\n",
    "a list": b"- a\n- b\n",
    "odd keys": b"{a: b}: c\n[d]: e\n~: f\n1: g\n'@': h\n",
    "lists where words stand": b"instrument: [a, {b: c}]\nvariant_of: {a: b}\nparts: x\n",
    "maps where lists stand": b"instrument: {a: b}\nparts: {part: a}\nwithout: {a: b}\n",
    "maps in lists": b"instrument: bulb\nparts: [[a], {part: {b: c}}, x]\nwithout: [{a: b}]\n",
    "long scalar": b"name: " + b"a" * 1_900_000,
    "braces in a sentence": b"name: '{{ a.b in {{ c }}'\ninstrument: '}}'\n",
    "surrogate": b"name: \xed\xa0\x80\n",
    "JSON": b'{"format": "basinside/edition/1"}',
    "JSON nested": b'{"a":' * DEEP,
    "JSON numbers": b'{"a": 1e999, "b": NaN, "c": ' + b"9" * 10_000 + b"}",
    "SVG of entities": b'<!DOCTYPE a [<!ENTITY b "c">]><svg>&b;</svg>',
    "SVG nested": b"<g>" * DEEP,
    "SVG with script": b'<svg xmlns="http://www.w3.org/2000/svg"><script>x</script></svg>',
}


def whole_clinic() -> dict[str, bytes]:
    """Return the valid clinic with variants and a closed edition."""
    files = dict(base_files())
    files["content/instruments/pump.yaml"] = b"instrument: pump\nvariant_of: bulb\nname: Pump\n"
    files[AGAIN] = (
        b"procedure: again-soak\nvariant_of: bulb-soak\nwithout: [look]\n"
        b"changes:\n  - step: look-twice\n    after: wash\n    action: inspect\n    do: Look.\n"
    )
    card = "content/handbook.yaml"
    hangs = b"posted:\n"
    hung = hangs + b"  - {print: wall-chart, of: again-soak, at: sink 1}\n"
    files[card] = files[card].replace(hangs, hung)
    files[CLOSED] = closed(files)
    return files


def assert_only_lines(files: Mapping[str, bytes]) -> Looked:
    """Return what was found; assert that each problem has a line of its file, and prints as one."""
    looked = look_at(files)
    for problem, text in zip(looked.problems, looked.lines, strict=True):
        assert text == " ".join(text.split())
        assert text.isprintable()
        if problem.place.mark is not None:
            line, column = problem.place.mark
            count = files.get(problem.place.file, b"").count(b"\n") + 1
            assert 1 <= line <= count + 1
            assert column >= 1
    return looked


def of_form(looked: Looked) -> list[Problem]:
    """Return what reading itself objected to; the plain clinic breaks many a rule anyway."""
    return [each for each in looked.problems if each.rule in FORM_IDS]


def test_the_clinic_that_is_spoiled_is_good() -> None:
    assert look_at(whole_clinic(), rules=False).lines == []


@pytest.mark.parametrize("name", TEXTS)
@pytest.mark.parametrize("ending", [".yaml", ".json", ".svg"])
def test_a_file_of(name: str, ending: str) -> None:
    for file in [each for each in whole_clinic() if each.endswith(ending)]:
        if TEXTS[name].startswith(b"# xxx") and file not in ALWAYS:
            continue
        files = whole_clinic()
        files[file] = TEXTS[name]
        assert any_stop(of_form(assert_only_lines(files)))


@pytest.mark.parametrize("mark", [b"", b"\xef\xbb\xbf"])
@pytest.mark.parametrize("ending", [b"\n", b"\r\n", b"\r"])
def test_line_ends_and_byte_order_marks_are_no_problem(mark: bytes, ending: bytes) -> None:
    files = {
        file: mark + raw.replace(b"\n", ending) if file.endswith(".yaml") else raw
        for file, raw in whole_clinic().items()
    }
    assert look_at(files, rules=False).lines == []


def test_every_file_alone_and_every_file_missing() -> None:
    for file, raw in whole_clinic().items():
        assert_only_lines({file: raw})
        assert_only_lines({each: text for each, text in whole_clinic().items() if each != file})
    assert_only_lines({})


def test_a_long_chain_of_variants_is_a_line() -> None:
    files = whole_clinic()
    for n in range(3_000):
        above = f"variant_of: v{n - 1}\n" if n else "variant_of: bulb\n"
        files[f"content/instruments/v{n}.yaml"] = f"instrument: v{n}\n{above}name: V\n".encode()
    assert_only_lines(files)


def test_variants_in_a_circle_are_lines() -> None:
    files = whole_clinic()
    for one, other in (("x", "y"), ("y", "z"), ("z", "x")):
        text = f"instrument: {one}\nvariant_of: {other}\nname: V\n"
        files[f"content/instruments/{one}.yaml"] = text.encode()
    assert_only_lines(files)
    assert any_stop(of_form(look_at(files)))


def seeded(number: int) -> random.Random:
    return random.Random(number)  # the same changes in every run


def spoiled(raw: bytes, chance: random.Random) -> bytes:
    """Return bytes with one to six random changes."""
    out = bytearray(raw)
    for _ in range(chance.randint(1, 6)):
        at = chance.randrange(len(out) + 1)
        size = chance.choice((1, 1, 2, 8, 60))
        match chance.randrange(6):
            case 0:
                del out[at : at + size]
            case 1:
                out[at:at] = chance.randbytes(size)
            case 2:
                out[at : at + 1] = chance.choice(b":-{}[]#&*!|>'\"%@`,? \n\t\0\xff").to_bytes()
            case 3:
                start = chance.randrange(len(out) + 1)
                out[at:at] = out[start : start + size * 4]
            case 4:
                out[at:] = out[at:].replace(b"  ", b" " * chance.randint(0, 4), 1)
            case _:
                words = chance.choice((b": {a: b}", b": [x]", b" yes", b": 9", b"{{ a.b }}", b"~"))
                out[at:at] = words
    return bytes(out)


def spoiled_clinics(chance: random.Random) -> Iterator[dict[str, bytes]]:
    while True:
        files = whole_clinic()
        for file in chance.sample(sorted(files), chance.randint(1, 3)):
            files[file] = spoiled(files[file], chance)
        yield files


def test_random_changes_of_bytes() -> None:
    for files in islice(spoiled_clinics(seeded(20)), ROUNDS):
        assert_only_lines(files)


def swapped(value: object, chance: random.Random) -> object:
    """Return a JSON value with one or more of its parts replaced by something of another shape."""
    if chance.random() < 0.02:
        return chance.choice(([], {}, "", "x", 0, True, ["x"], {"x": "y"}, [["x"]]))
    if isinstance(value, dict):
        return {key: swapped(each, chance) for key, each in value.items()}
    if isinstance(value, list):
        return [swapped(each, chance) for each in value]
    return value


def test_random_shapes_in_a_closed_edition() -> None:
    chance, whole = seeded(21), json.loads(closed_edition())
    for _ in range(150):
        files = whole_clinic()
        files[CLOSED] = json.dumps(swapped(whole, chance)).encode()
        assert_only_lines(files)


PLAIN = st.sampled_from(["yes", "no", "", "bulb", "tip", "steam", "20 min", "2026.1", "2026-02-30"])
SHAPES = st.recursive(
    PLAIN | st.text(max_size=8),
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(PLAIN, inner, max_size=3),
    max_leaves=6,
)
KEYS = st.sampled_from(
    "instrument variant_of name label parts without survives reaches take_apart at_use waive "
    "procedure route stages vessel figures choices value source_says items options rests_on "
    "changes not_applicable step after in_stage drop words built_on see".split()
)


@settings(max_examples=150, suppress_health_check=[HealthCheck.too_slow])
@given(
    st.sampled_from([file for file in sorted(base_files()) if file.endswith(".yaml")]),
    st.dictionaries(KEYS, SHAPES, max_size=5),
)
def test_right_keys_with_wrong_shapes(file: str, entry: dict[str, object]) -> None:
    files = whole_clinic()
    files[file] = json.dumps(entry, ensure_ascii=False).encode("utf-8", "replace")
    assert_only_lines(files)


DIFFERENCES = st.sampled_from("without not_applicable changes title parts stages".split())
CHANGES = st.dictionaries(
    st.sampled_from("step after in_stage drop do hold wear".split()), SHAPES, max_size=4
)


@settings(max_examples=150, suppress_health_check=[HealthCheck.too_slow])
@given(st.dictionaries(DIFFERENCES, SHAPES, max_size=3), st.lists(CHANGES, max_size=3))
def test_differences_of_wrong_shapes(entry: dict[str, object], changes: list[object]) -> None:
    files = whole_clinic()
    own = {"procedure": "again-soak", "variant_of": "bulb-soak", "changes": changes, **entry}
    files[AGAIN] = json.dumps(own, ensure_ascii=False).encode("utf-8", "replace")
    assert_only_lines(files)


@settings(max_examples=100)
@given(st.sampled_from(sorted(whole_clinic())), st.binary(max_size=400))
def test_any_bytes(file: str, raw: bytes) -> None:
    files = whole_clinic()
    files[file] = raw
    assert_only_lines(files)
