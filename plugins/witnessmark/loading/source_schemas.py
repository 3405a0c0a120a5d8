"""JSON Schema of every source file, made from the shapes that read them, so that an editor completes what we take."""

import json

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


def source_schema(name: str) -> dict:
    """The schema of one sort of source; `name` is a key of SOURCES."""
    files, shape = SOURCES[name]
    return {"$schema": DRAFT, "title": name.replace("_", " "), "description": files, **shape.schema()}


def schema_files() -> dict[str, str]:
    """Text of every schema by file name, such as procedure.schema.json."""
    return {f"{name}.schema.json": json.dumps(source_schema(name), ensure_ascii=False, indent=1) + "\n"
            for name in SOURCES}
