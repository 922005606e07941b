"""Figures and names that several rooms share: each has one home, a unit and a source."""

from __future__ import annotations

from typing import Final
from uuid import UUID

LARGEST_INTEGER: Final = 2**53 - 1
"""The largest integer in any file of ours: what every JSON reader keeps exactly (RFC 8259, 6)."""

NAMESPACE: Final = UUID("6fb36111-0ee6-4a4a-8ac2-31d7b881538d")
"""The name space of every UUIDv5 that Basinside makes. Drawn once; never to be changed."""

KDF: Final = "PBKDF2-SHA-256"
KDF_ROUNDS: Final = 600_000
"""Rounds of PBKDF2-SHA-256 in the envelopes we write (OWASP Password Storage Cheat Sheet, 2023)."""
KDF_ROUNDS_LEAST: Final = 600_000
KDF_ROUNDS_MOST: Final = 5_000_000
"""Rounds that a reader accepts: fewer would be weak, more would only stall it (our own bounds)."""
SALT_BYTES: Final = 16
"""Octets of salt (NIST SP 800-132, section 5.1: at least 128 bits)."""
IV_BYTES: Final = 12
"""Octets of the AES-GCM initialisation vector (NIST SP 800-38D, section 5.2.1.1: 96 bits)."""
CONTENT_KEY_BYTES: Final = 32
"""Octets of an AES-256 key (FIPS 197)."""

SLIP_ALPHABET: Final = "23456789ABCDEFGHJKLMNPQRSTUVWXYZ"
"""The 32 symbols of codes: no 0 and O, no 1 and I, which hands and phones confuse."""
OPENING_CODE_SYMBOLS: Final = 9
"""Symbols of an opening code: 9 x 5 = 45 bits; it guards a form for one session."""
PHRASE_WORDS: Final = 6
"""Words of a phrase, a marking code and a root fingerprint: 6 x 11 = 66 bits."""

CREDENTIALS_CONTEXT: Final = "https://www.w3.org/ns/credentials/v2"
"""First context of a record (W3C Verifiable Credentials Data Model 2.0, section 4.3). A name only:
nothing is ever fetched from it."""
OPEN_BADGES_CONTEXT: Final = "https://purl.imsglobal.org/spec/ob/v3p0/context-3.0.3.json"
"""Second context of a record (Open Badges 3.0, appendix on contexts). A name only."""

CRYPTOSUITE: Final = "ecdsa-jcs-2019"
"""How records and the trust list are secured (W3C Data Integrity ECDSA Cryptosuites 1.0, 3.3)."""
P256_MULTIKEY_PREFIX: Final = b"\x80\x24"
"""Marks a compressed P-256 point (W3C Controlled Identifiers 1.0, section 2.2.2: varint 0x1200)."""
SIGNATURE_BYTES: Final = 64
"""Octets of a raw P-256 signature, r then s (IEEE P1363)."""

RECORD_TERMS: Final = (
    "edition", "scope", "steps", "level", "limits", "evidenceDigest", "override"
)  # fmt: skip
"""Members of a record that neither of the two contexts knows; a third maps them to urn:uuid."""
RECORD_TERMS_AS_JSON: Final = frozenset({"scope"})
"""Those of them whose value is an object (JSON-LD 1.1, section 4.2.2, JSON literals)."""

LOOK_UP_AGAIN_DAYS: Final = 2 * 366
"""Days after which a value is looked up in its source again: two years; nothing published says
how often (our own)."""
