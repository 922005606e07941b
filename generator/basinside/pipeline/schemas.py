"""JSON Schemas of every kind of file, from the same types that read them."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any, Final

from pydantic import BaseModel

from basinside import files
from basinside.model.attempt import Attempt
from basinside.model.entry import PLACE_KEY
from basinside.model.equipment import Agent, EquipmentFile, IncidentFile, Route, WordFile
from basinside.model.figure import FigureFile, SourceFile
from basinside.model.handbook import Handbook
from basinside.model.instrument import Instrument
from basinside.model.key_file import KeyFile
from basinside.model.observed import Observation as ObservedRun
from basinside.model.procedure import Procedure
from basinside.model.quiz import Assessment, Observation, QuestionFile
from basinside.model.record import CompletionRecord
from basinside.model.sealed import SealedForm
from basinside.model.standard import Standard
from basinside.model.trust_list import TrustList

Schema = dict[str, Any]

AUTHORED_KINDS: Final[Mapping[str, type[BaseModel]]] = {
    "handbook": Handbook,
    "sources": SourceFile,
    "equipment": EquipmentFile,
    "incidents": IncidentFile,
    "words": WordFile,
    "figures": FigureFile,
    "agent": Agent,
    "route": Route,
    "instrument": Instrument,
    "procedure": Procedure,
    "questions": QuestionFile,
    "assessment": Assessment,
    "observation": Observation,
    "standard": Standard,
}
MACHINE_KINDS: Final[Mapping[str, type[BaseModel]]] = {
    "machine/attempt": Attempt,
    "machine/observation": ObservedRun,
    "machine/record": CompletionRecord,
    "machine/trust": TrustList,
    "machine/key": KeyFile,
    "machine/sealed": SealedForm,
}
DIALECT: Final = "https://json-schema.org/draft/2020-12/schema"
_NAMES: Final[Schema] = {"type": "array", "items": {"type": "string"}}
_NAMED = frozenset({"properties", "$defs"})


def schemas() -> dict[str, Schema]:
    """Return the schema of every kind of file, by the file's name below ``schemas/``."""
    kinds = {**AUTHORED_KINDS, **MACHINE_KINDS}
    return {f"{name}.schema.json": schema_of(kind) for name, kind in kinds.items()}


def schema_of(kind: type[BaseModel]) -> Schema:
    """Return one schema, as JSON Schema 2020-12 and without what only a program would read."""
    plain = _schema(kind.model_json_schema(by_alias=True))
    if kind is Instrument:
        plain = _or_variant(plain, {"without": _NAMES}, "Part", "part")
    elif kind is Procedure:
        plain = _or_variant(plain, _procedure_differences(plain), "", "")
    known = plain.get("$defs", {})
    if known:
        plain["$defs"] = {name: each for name, each in known.items() if _is_used(name, plain)}
    return {"$schema": DIALECT, **plain}


def schema_text(schema: Schema) -> str:
    """Return a schema as its file has it."""
    return json.dumps(schema, ensure_ascii=False, indent=1) + "\n"


def write_schemas(into: Path) -> int:
    """Write all schemas into a folder; return how many.

    Raises:
        FolderError: when one cannot be written.
    """
    made = schemas()
    for name, schema in made.items():
        files.write_file(into / name, schema_text(schema))
    return len(made)


def _schema(value: Schema) -> Schema:
    out: Schema = {}
    for key, each in value.items():
        if key in {"title", "discriminator"} or (key == "default" and each in (None, (), [], {})):
            continue
        if key in _NAMED:
            out[key] = {name: _schema(inner) for name, inner in each.items() if name != PLACE_KEY}
        elif key == "required":
            out[key] = [name for name in each if name != PLACE_KEY]
        elif key == "description":
            out[key] = " ".join(str(each).split())
        elif isinstance(each, dict):
            out[key] = _schema(each)
        elif isinstance(each, list):
            out[key] = [_schema(inner) if isinstance(inner, dict) else inner for inner in each]
        else:
            out[key] = each
    return _without_null(out)


def _without_null(schema: Schema) -> Schema:
    """What may be left out is never written as null."""
    choices = schema.get("anyOf")
    if not isinstance(choices, list) or {"type": "null"} not in choices:
        return schema
    left = [each for each in choices if each != {"type": "null"}]
    rest = {key: each for key, each in schema.items() if key != "anyOf"}
    return {**rest, **(left[0] if len(left) == 1 else {"anyOf": left})}


def _or_variant(schema: Schema, differences: Schema, inner: str, inner_id: str) -> Schema:
    """An entry is whole, or it is a variant that writes only its differences.

    Args:
        schema: that of the whole entry.
        differences: the keys that only a variant has.
        inner: the entry below it that is merged by its id, if there is one.
        inner_id: the key that holds that id.
    """
    needed = schema.pop("required")
    variant = [needed[0], "variant_of"]
    schema["anyOf"] = [{"required": needed}, {"required": variant}]
    if inner in schema.get("$defs", {}):
        schema["$defs"][inner] = _partial(schema, inner, [inner_id])
    schema["properties"] = {
        **schema["properties"],
        "variant_of": {"type": "string"},
        **differences,
    }
    return schema


def _partial(schema: Schema, name: str, needed: list[str]) -> Schema:
    """An entry that is merged key by key: what it holds may be partial too, but not its lists."""
    whole = schema["$defs"][name]
    properties = dict(whole["properties"])
    for key, each in properties.items():
        below = str(each.get("$ref", "")).rpartition("/")[2]
        if below:
            part = f"{below}Difference"
            schema["$defs"][part] = {
                key: value for key, value in schema["$defs"][below].items() if key != "required"
            }
            properties[key] = {"$ref": f"#/$defs/{part}"}
    return {**whole, "properties": properties, "required": needed}


def _procedure_differences(schema: Schema) -> Schema:
    """The keys of a procedure's differences; a change is a step of which little is needed."""
    step = _partial(schema, "Step", ["step"])
    keys = {"after": {"type": "string"}, "in_stage": {"type": "string"}, "drop": _NAMES}
    schema["$defs"]["Change"] = {**step, "properties": {**step["properties"], **keys}}
    reasons = {"type": "object", "additionalProperties": {"type": ["string", "number"]}}
    return {
        "without": _NAMES,
        "not_applicable": reasons,
        "changes": {"type": "array", "items": {"$ref": "#/$defs/Change"}},
    }


def _is_used(name: str, schema: Schema) -> bool:
    return f'"#/$defs/{name}"' in json.dumps(schema)
