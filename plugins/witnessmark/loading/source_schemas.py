"""JSON Schema of every source file, made from the shapes that read them, so that an editor completes what we take."""

import json
from collections.abc import Mapping

from ..core.working import Working
from .read_authority import AUTHORITY
from .read_equipment import EQUIPMENT
from .read_machine import MACHINE
from .read_procedure import PROCEDURE
from .scalars import map_of
from .shape import Shape

DRAFT = "http://json-schema.org/draft-07/schema#"        # the newest that every YAML editor knows

#: name of the schema -> (which files, their shape)
SOURCES: dict[str, tuple[str, Shape]] = {
    "procedure": ("procedures/*/*.yaml", PROCEDURE),
    "machine": ("site_data/machines/*.yaml", MACHINE),
    **{name: (f"site_data/{name}.yaml", map_of(shape)) for name, (shape, _) in {**EQUIPMENT, **AUTHORITY}.items()},
}


def source_schema(name: str, workings: Mapping[str, Working]) -> dict:
    """The schema of one sort of source; `name` is a key of SOURCES. Inputs are known by the working that takes them."""
    files, shape = SOURCES[name]
    schema = {"$schema": DRAFT, "title": name.replace("_", " "), "description": files, **shape.schema()}
    if name == "procedure":
        results = schema["properties"]["computed"]["anyOf"][0]
        schema["definitions"] = {"input": results["additionalProperties"]["additionalProperties"]}
        results["additionalProperties"] = _by_working(results["additionalProperties"], workings)
    return schema


def _by_working(result: dict, workings: Mapping[str, Working]) -> dict:
    """A computed result whose other keys are the inputs of its working, each with its words."""
    taken = [working for working in workings.values() if not working.for_reading_only]
    own, value = result["properties"], {"allOf": [{"$ref": "#/definitions/input"}]}     # words beside a bare $ref are not read
    own["working"] = {"description": own["working"]["description"], "enum": [working.id for working in taken]}
    return {**result, "properties": own, "additionalProperties": value, "allOf": [
        {"if": {"properties": {"working": {"const": working.id}}},
         "then": {"description": working.purpose, "additionalProperties": False, "properties": {
             **dict.fromkeys(own, {}),
             **{each.name: {"description": f"{each.kind}: {each.doc}", **value} for each in working.inputs},
             **{name: {"description": f"the id of one: stands for {', '.join(inputs)}", **value}
                for name, inputs in working.by_id().items()}}}}
        for working in taken]}


def schema_files(workings: Mapping[str, Working]) -> dict[str, str]:
    """Text of every schema by file name, such as procedure.schema.json."""
    return {f"{name}.schema.json": json.dumps(source_schema(name, workings), ensure_ascii=False, indent=1) + "\n"
            for name in SOURCES}
