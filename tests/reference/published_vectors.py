"""Test vectors from outside: those that packages ship, and those of a folder when one is named.

`BASINSIDE_VECTORS` names a folder with published vectors that are not copied here. Without it
the lists are empty and the shipped vectors alone are run.
"""

import json
import os
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import cryptography_vectors


def folder() -> Path | None:
    named = os.environ.get("BASINSIDE_VECTORS")
    return Path(named) if named else None


def canonical_pairs() -> list[tuple[str, bytes, bytes]]:
    """Name, input and canonical output of each RFC 8785 pair."""
    home = folder()
    if home is None:
        return []
    found = [
        (
            path.name,
            path.read_bytes(),
            path.with_name(path.name.replace(".in.", ".out.")).read_bytes(),
        )
        for path in sorted((home / "jcs").glob("*.in.json"))
    ]
    assert found, f"{home} holds no RFC 8785 pairs"
    return found


@dataclass(frozen=True, kw_only=True)
class Signed:
    name: str
    x: int
    y: int
    message: bytes
    signature: bytes
    good: bool


def wycheproof() -> list[Signed]:
    """The P-256, SHA-256 cases of Project Wycheproof in P1363 form."""
    home = folder()
    if home is None:
        return []
    data: Any = json.loads((home / "ecdsa_p256_sha256_p1363.json").read_bytes())
    return [
        Signed(
            name=f"{each['tcId']} {each['comment']}",
            x=int(group["publicKey"]["wx"], 16),
            y=int(group["publicKey"]["wy"], 16),
            message=bytes.fromhex(each["msg"]),
            signature=bytes.fromhex(each["sig"]),
            good=each["result"] == "valid",
        )
        for group in data["testGroups"]
        for each in group["tests"]
    ]


def nist() -> list[Signed]:
    """The P-256, SHA-256 cases of NIST's SigVer.rsp (FIPS 186-3), as cryptography ships them."""
    with cryptography_vectors.open_vector_file(
        "asymmetric/ECDSA/FIPS_186-3/SigVer.rsp", "r"
    ) as file:
        lines = file.read().splitlines()
    start = lines.index("[P-256,SHA-256]") + 1
    found: list[Signed] = []
    case: dict[str, str] = {}
    for line in lines[start:]:
        if line.startswith("["):
            break
        name, _, value = line.partition(" = ")
        if value:
            case[name] = value.strip()
        if name == "Result":
            found.append(
                Signed(
                    name=f"{len(found)} {value.strip()}",
                    x=int(case["Qx"], 16),
                    y=int(case["Qy"], 16),
                    message=bytes.fromhex(case["Msg"]),
                    signature=bytes.fromhex(case["R"].zfill(64) + case["S"].zfill(64)),
                    good=value.startswith("P"),
                )
            )
    return found


def deterministic() -> tuple[bytes, list[tuple[bytes, bytes]]]:
    """RFC 6979 A.2.5: the P-256 private key as PEM, and (message, DER signature) with SHA-256."""
    with cryptography_vectors.open_vector_file(
        "asymmetric/ECDSA/RFC6979/evppkey_ecdsa_rfc6979.txt", "r"
    ) as file:
        text = file.read()
    pem = text.split("PrivateKey=P-256_PRIV\n")[1].split("\n\n")[0]
    found = []
    for block in text.split("\n\n"):
        members = dict(line.split(" = ", 1) for line in block.splitlines() if " = " in line)
        if members.get("DigestSign") == "SHA256" and members.get("Key") == "P-256_PRIV":
            found.append((members["Input"].strip('"').encode(), bytes.fromhex(members["Output"])))
    return pem.encode(), found
