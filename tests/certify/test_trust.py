"""The trust list: what may be changed, who signs it, and what a forger would try."""

from typing import Any

import pytest

from basinside.certify.multikey import both_forms, did_key
from basinside.certify.secure import secure
from basinside.certify.trust import (
    TrustError,
    add_signer,
    lose,
    retire,
    sign_trust_list,
    verify_trust_list,
)
from basinside.model.finding import Verdict
from tests.certify.made import OTHER, ROOT, SUPERVISOR, SUPERVISOR_DID, listed, trusted

OTHER_DID = did_key(OTHER.public_key())


def reason(plain: object) -> str:
    _, found = verify_trust_list(plain)
    return "holds" if found.verdict is Verdict.HOLDS else found.data["reason"]


def test_a_signed_list_holds_and_is_the_same_each_time() -> None:
    assert reason(trusted()) == "holds"
    assert trusted() == trusted()
    trust, found = verify_trust_list(trusted())
    assert trust is not None
    assert [(each.staff_code, each.from_) for each in trust.signers] == [("S-01", "2026-10-01")]
    assert found.data["issued"] == "2026-11-01"


def test_a_list_that_nobody_signed_does_not_hold() -> None:
    assert reason(listed().plain()) == "no-proof"


def test_a_change_takes_the_signature_away() -> None:
    trust, _ = verify_trust_list(trusted())
    assert trust is not None
    assert retire(trust, "S-01", on="2026-12-01").proof is None


def test_only_the_root_key_signs() -> None:
    with pytest.raises(TrustError, match="not the root key"):
        sign_trust_list(listed(), SUPERVISOR, issued="2026-11-01")
    forged = secure(listed().plain(), SUPERVISOR, created="2026-11-01T00:00:00Z")
    assert reason(forged) == "not-by-root"


def altered(place: tuple[str | int, ...], value: object, *, resign: bool) -> dict[str, Any]:
    plain: Any = trusted()
    inside = plain
    for step in place[:-1]:
        inside = inside[step]
    inside[place[-1]] = value
    if resign:
        plain = secure(plain, ROOT, created="2026-11-01T00:00:00Z")
    signed: dict[str, Any] = plain
    return signed


@pytest.mark.parametrize(
    ("place", "value"),
    [
        (("signers", 0, "staff_code"), "S-02"),
        (("signers", 0, "from"), "2020-01-01"),
        (("signers", 0, "role"), "lead"),
        (("issued",), "2027-01-01"),
        (("handbook",), "lowfell"),
        (("later",), None),
    ],
)
def test_an_altered_list_does_not_hold(place: tuple[str | int, ...], value: object) -> None:
    assert reason(altered(place, value, resign=False)) == "altered-or-other-key"


def test_two_forms_of_a_key_must_be_one_key() -> None:
    # Pages of older browsers read the JWK: it must not be another key than the did:key.
    jwk = both_forms(OTHER.public_key()).jwk.plain()
    assert reason(altered(("signers", 0, "jwk"), jwk, resign=True)) == "key-forms-differ"
    assert reason(altered(("root", "jwk"), jwk, resign=True)) == "key-forms-differ"


def test_a_key_stands_once() -> None:
    signers = [*listed().plain()["signers"], *listed().plain()["signers"]]  # type: ignore[misc]
    assert reason(altered(("signers",), signers, resign=True)) == "key-listed-twice"


@pytest.mark.parametrize("plain", [None, [], {}, "x", 1, {"format": "basinside/trust/1"}])
def test_what_is_no_trust_list_is_said_to_be_none(plain: object) -> None:
    assert reason(plain) == "not-a-trust-list"


def test_whoever_has_a_key_in_use_gets_no_second() -> None:
    with pytest.raises(TrustError, match="S-01 has a key in use"):
        add_signer(listed(), OTHER_DID, staff_code="S-01", role="lead", from_="2026-11-01")
    ended = retire(listed(), "S-01", on="2026-11-30")
    both = add_signer(ended, OTHER_DID, staff_code="S-01", role="lead", from_="2026-12-01")
    assert [each.retired for each in both.signers] == ["2026-11-30", None]


def test_a_retired_key_can_still_be_lost() -> None:
    ended = lose(retire(listed(), "S-01", on="2026-11-30"), "S-01", on="2026-12-05")
    assert (ended.signers[0].retired, ended.signers[0].lost) == ("2026-11-30", "2026-12-05")
    with pytest.raises(TrustError, match="no key in use"):
        lose(ended, "S-01", on="2026-12-06")


def test_what_a_list_does_not_take() -> None:
    with pytest.raises(TrustError, match="listed already"):
        add_signer(listed(), SUPERVISOR_DID, staff_code="S-02", role="x", from_="2026-11-01")
    with pytest.raises(TrustError, match="root key"):
        did = did_key(ROOT.public_key())
        add_signer(listed(), did, staff_code="S-02", role="x", from_="2026-11-01")
    with pytest.raises(TrustError, match="P-256"):
        add_signer(listed(), "did:key:z1", staff_code="S-02", role="x", from_="2026-11-01")
    with pytest.raises(TrustError, match="S-09 has no key"):
        retire(listed(), "S-09", on="2026-11-30")
    with pytest.raises(TrustError, match="counts from 2026-10-01"):
        retire(listed(), "S-01", on="2026-09-30")
