"""The schema of the catalogue: what is always in it, and what each kind of page says of its own records."""

from __future__ import annotations

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

from ...model.book import Book
from ...model.page_fields import PageFields
from ..page_kinds.kind import InCatalogue, Record
from ..page_kinds.table import Row
from .catalogue import kinds_by_themselves, kinds_of_books

_SCHEMA = Path(__file__).parent / "catalogue.schema.json"


def catalogue_schema() -> Record:
    """The schema, ready for JSON."""
    schema = _read(_SCHEMA)
    for kind, part in (*kinds_of_books(), *kinds_by_themselves()):
        schema["$defs"][kind.name] = _read(part.definition)
    _add_lists(schema["$defs"][Book.kind_name()], kinds_of_books())
    _add_lists(schema, kinds_by_themselves())
    return schema


def _add_lists(schema: Record, kinds: Iterable[tuple[Row, InCatalogue[PageFields]]]) -> None:
    for kind, part in kinds:
        schema["required"].append(part.list)
        items = {"$ref": f"#/$defs/{kind.name}"}
        schema["properties"][part.list] = {"description": part.says, "type": "array", "items": items}


def _read(path: Path) -> Record:
    read: Any = json.loads(path.read_text(encoding="utf-8"))
    assert isinstance(read, dict)
    return read
