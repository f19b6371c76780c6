"""What the program stands on as a bill of materials for other programs. Source: CycloneDX 1.6 (ECMA-424), JSON."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from .stands_on import PROGRAM, Package

_SCHEMA = "http://cyclonedx.org/schema/bom-1.6.schema.json"


def bill_of_materials(packages: Sequence[Package]) -> str:
    """The packages as JSON, with no time and no number of its own: the same packages make the same bytes."""
    parts = {one.name: _component(one) for one in packages}
    bill = {
        "$schema": _SCHEMA,
        "bomFormat": "CycloneDX",
        "specVersion": "1.6",
        "version": 1,
        "metadata": {"component": parts.pop(PROGRAM, {"type": "application", "name": PROGRAM})},
        "components": list(parts.values()),
        "dependencies": [{"ref": _ref(one), "dependsOn": [_ref(need) for need in packages if need.name in one.needs]} for one in packages],
    }  # fmt: skip
    return json.dumps(bill, indent=2, ensure_ascii=False) + "\n"


def _component(one: Package) -> dict[str, Any]:
    licence = {"expression": one.licence} if one.spdx else {"license": {"name": one.licence}}
    return {
        "type": "application" if one.name == PROGRAM else "library",
        "bom-ref": _ref(one),
        "name": one.name,
        "version": one.version,
        "licenses": [licence],
        "purl": _ref(one),
    }


def _ref(one: Package) -> str:
    """Its package URL (https://github.com/package-url/purl-spec)."""
    return f"pkg:pypi/{one.name}@{one.version}"
