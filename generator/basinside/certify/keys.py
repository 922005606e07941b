"""Private keys, in memory only: made, written as the bytes an envelope holds, and read back."""

from __future__ import annotations

from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.serialization import (
    Encoding,
    NoEncryption,
    PrivateFormat,
    load_der_private_key,
)

from basinside.certify.multikey import did_key


class KeyContentError(ValueError):
    """The bytes are not the private key that the file says it is."""


def new_private_key() -> ec.EllipticCurvePrivateKey:
    """Return a fresh P-256 private key, from the operating system's randomness."""
    return ec.generate_private_key(ec.SECP256R1())


def private_key_bytes(private: ec.EllipticCurvePrivateKey) -> bytes:
    """Return the unencrypted PKCS #8 DER that goes into an envelope and nowhere else."""
    return private.private_bytes(Encoding.DER, PrivateFormat.PKCS8, NoEncryption())


def private_key(pkcs8: bytes, did: str) -> ec.EllipticCurvePrivateKey:
    """Return the private key of ``did`` from PKCS #8 DER.

    Raises ``KeyContentError`` when the bytes are no P-256 key, or another one than ``did`` names.
    """
    try:
        private = load_der_private_key(pkcs8, password=None)
    except (ValueError, TypeError):
        raise KeyContentError("The envelope does not hold a private key.") from None
    if not isinstance(private, ec.EllipticCurvePrivateKey) or private.curve.name != "secp256r1":
        raise KeyContentError("The envelope holds a key of another kind.")
    if did_key(private.public_key()) != did:
        raise KeyContentError("The envelope holds another key than the file names.")
    return private
