"""A sealed form: each code opens its own half, and nothing of the form stands in the file."""

import json

import pytest

from basinside.canonical import digest
from basinside.model.sealed import SealedForm
from basinside.seal.codes import CodeError, new_phrase
from basinside.seal.envelope import AlteredFileError, WrongCodeError
from basinside.seal.forms import FormCodes, FormName, form_digest, open_form, open_keys, seal_form
from tests.seal.counted_bytes import counted_bytes

FORM: dict[str, object] = {"items": [{"item": "late-part", "stem": "A valve lies in the tray."}]}
KEYS: dict[str, object] = {"plans": [{"item": "late-part", "points": {"kind": "all-or-none"}}]}
NAME = FormName(handbook="highfell", assessment="core", version=1, form="A")
PHRASE = new_phrase(counted_bytes("phrase"))
OTHER = new_phrase(counted_bytes("other"))


@pytest.fixture(scope="module")
def made() -> tuple[SealedForm, FormCodes]:
    return seal_form(
        FORM, KEYS, name=NAME, marking_phrase=PHRASE.upper(), random_bytes=counted_bytes()
    )


def test_each_code_opens_its_half(made: tuple[SealedForm, FormCodes]) -> None:
    sealed, codes = made
    again = SealedForm.from_plain(json.loads(sealed.text()))
    assert again == sealed
    assert open_form(again, opening_code=codes.opening_code.lower()) == FORM
    assert open_form(again, phrase=PHRASE) == FORM
    assert open_keys(again, marking_code=codes.marking_code) == KEYS
    assert open_keys(again, phrase=" - ".join(word[:4] for word in PHRASE.split())) == KEYS


def test_the_marking_code_does_not_open_as_a_phrase(made: tuple[SealedForm, FormCodes]) -> None:
    sealed, codes = made
    with pytest.raises(WrongCodeError):
        open_keys(sealed, phrase=codes.marking_code)
    with pytest.raises(WrongCodeError):
        open_keys(sealed, marking_code=PHRASE)
    with pytest.raises(WrongCodeError):
        open_form(sealed, phrase=OTHER)
    with pytest.raises(CodeError):
        open_keys(sealed, marking_code=codes.opening_code)
    with pytest.raises(CodeError):
        open_form(sealed)


def test_nothing_of_the_form_stands_in_the_file(made: tuple[SealedForm, FormCodes]) -> None:
    sealed, codes = made
    text = sealed.text()
    for secret in ("late-part", "valve", "all-or-none", codes.opening_code, PHRASE):
        assert secret not in text
    assert codes.marking_code not in text


def test_envelopes_of_two_forms_do_not_mix(made: tuple[SealedForm, FormCodes]) -> None:
    sealed, codes = made
    other, _ = seal_form(
        FORM,
        KEYS,
        name=FormName(handbook="highfell", assessment="core", version=1, form="B"),
        marking_phrase=PHRASE,
        random_bytes=counted_bytes("b"),
    )
    plain = sealed.plain()
    envelopes = {**sealed.envelopes.plain(), "form": other.envelopes.form.plain()}
    mixed = SealedForm.from_plain({**plain, "envelopes": envelopes})
    with pytest.raises(AlteredFileError, match="different forms"):
        open_form(mixed, opening_code=codes.opening_code)
    renamed = SealedForm.from_plain({**plain, "form": "B"})
    with pytest.raises(AlteredFileError, match="different forms"):
        open_keys(renamed, phrase=PHRASE)


def test_the_digest_covers_the_forms_envelope_alone(made: tuple[SealedForm, FormCodes]) -> None:
    sealed, _ = made
    inside = sealed.plain()["envelopes"]
    assert isinstance(inside, dict)
    form = inside["form"]
    assert form_digest(sealed) == digest(
        "form", {"header": form["header"], "ciphertext": form["ciphertext"]}
    )
    without_keys = {**inside, "keys": form, "mark_keys": form}
    changed = SealedForm.from_plain({**sealed.plain(), "envelopes": without_keys})
    assert form_digest(changed) == form_digest(sealed)


def test_golden_form_digest(made: tuple[SealedForm, FormCodes]) -> None:
    # A later program seals nothing like this, but must read version 1 for ever.
    sealed, codes = made
    assert codes.opening_code == "GJU-DV3-9DP"
    assert form_digest(sealed) == "form-v1:Oseox4Ywde4oi0EMsyyLVQt-7VnNIz9CvejACydQBHQ"


def test_a_demo_form_says_so_where_it_cannot_be_removed() -> None:
    demo = FormName(handbook="highfell", assessment="core", version=1, form="A", demo=True)
    sealed, _ = seal_form(
        FORM, KEYS, name=demo, marking_phrase=PHRASE, random_bytes=counted_bytes()
    )
    assert sealed.envelopes.form.header.demo is True
    header = dict(sealed.envelopes.form.header.plain())
    del header["demo"]
    envelopes = sealed.envelopes.plain()
    envelopes["form"] = {**sealed.envelopes.form.plain(), "header": header}
    stripped = SealedForm.from_plain({**sealed.plain(), "envelopes": envelopes})
    with pytest.raises(AlteredFileError, match="altered"):
        open_form(stripped, phrase=PHRASE)
