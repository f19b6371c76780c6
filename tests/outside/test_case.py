"""The curricula in the shape of CASE against its published schema, and against the curricula themselves.

Source: ``case_package.yaml``, which names the published JSON Schema its table was read from. Dates and ids keep RFC
3339 and RFC 9562, as that schema's formats ask.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit
from uuid import UUID

import jsonschema
import pytest
from project import collection, reference
from storymaths.model.objective import Framework
from storymaths.model.site_settings import SiteSettings
from storymaths.publish.open_data.curriculum import address, curriculum
from storymaths.publish.open_data.files import open_data
from storymaths.publish.open_data.stable_ids import StableIds
from storymaths.render.site import Site
from yaml_files import read_yaml

TABLE = read_yaml(Path(__file__).parent / "case_package.yaml")
SETTINGS = SiteSettings("Plover Quay", url="https://ploverquay.example/")
FRAMEWORKS = [framework for framework in reference().frameworks.values() if framework.objectives]
_TYPES: dict[str, dict[str, Any]] = {
    "text": {"type": "string", "minLength": 1},
    "integer": {"type": "integer"},
    "uri": {"type": "string", "format": "uri"},
    "uuid": {"type": "string", "format": "uuid"},
    "date": {"type": "string", "format": "date"},
    "date-time": {"type": "string", "format": "date-time"},
}
FORMATS = jsonschema.FormatChecker(["date"])


@FORMATS.checks("uuid", raises=ValueError)
def _uuid(value: Any) -> bool:
    return str(UUID(value)) == value  # small letters, as the standard says


@FORMATS.checks("date-time")
def _moment(value: Any) -> bool:
    return re.fullmatch(r"\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d(Z|[+-]\d\d:\d\d)", value) is not None


@FORMATS.checks("uri")
def _uri(value: Any) -> bool:
    return urlsplit(value).scheme == "https" and " " not in value


def _schema(kind: Any) -> dict[str, Any]:
    """A type of the table as JSON Schema."""
    if isinstance(kind, list):
        return {"type": "array", "items": _schema(kind[0])}
    if isinstance(kind, dict):
        return kind
    return _TYPES.get(kind, {"$ref": f"#/$defs/{kind}"})


def published_schema() -> dict[str, Any]:
    """The table as a JSON Schema."""
    classes = {
        name: {
            "type": "object",
            "additionalProperties": False,
            "required": [key[:-1] for key in fields if key.endswith("!")],
            "properties": {key.rstrip("!"): _schema(kind) for key, kind in fields.items()},
        }
        for name, fields in TABLE.items()
    }
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", "$ref": "#/$defs/CFPackage", "$defs": classes}


VALIDATOR = jsonschema.Draft202012Validator(published_schema(), format_checker=FORMATS)


def package(framework: Framework) -> dict[str, Any]:
    return curriculum(framework, Site(collection(), settings=SETTINGS))


def test_the_schema_made_of_the_table_is_one() -> None:
    jsonschema.Draft202012Validator.check_schema(published_schema())


@pytest.mark.parametrize("framework", FRAMEWORKS, ids=lambda framework: framework.id)
def test_a_package_keeps_the_published_schema(framework: Framework) -> None:
    assert [error.message for error in VALIDATOR.iter_errors(package(framework))] == []


@pytest.mark.parametrize(
    ("part", "key", "value"),
    [
        ("CFDocument", "creator", None),
        ("CFDocument", "lastChangeDateTime", "2026-11-25"),
        ("CFItems", "humanCode", "2C4"),
        ("CFItems", "identifier", "2C4"),
        ("CFAssociations", "associationType", "isParentOf"),
    ],
)
def test_the_schema_refuses_what_is_not_so(part: str, key: str, value: Any) -> None:
    data = package(FRAMEWORKS[0])
    held = data[part][0] if isinstance(data[part], list) else data[part]
    if value is None:
        del held[key]
    else:
        held[key] = value
    assert list(VALIDATOR.iter_errors(data))


@pytest.mark.parametrize("framework", FRAMEWORKS, ids=lambda framework: framework.id)
def test_a_package_holds_each_objective_once_under_its_strand(framework: Framework) -> None:
    data = package(framework)
    items = {item["identifier"]: item for item in data["CFItems"]}
    assert (
        len(items)
        == len(data["CFItems"])
        == (
            len(framework.objectives)
            + len(framework.strands)
            + sum(len(it.parts) for it in framework.objectives if it.has_parts)
        )
    )
    above = {
        link["originNodeURI"]["identifier"]: link["destinationNodeURI"]["identifier"]
        for link in data["CFAssociations"]
        if link["associationType"] == "isChildOf"
    }
    assert set(above) == set(items), "an item without a place"
    told = {
        (item["humanCodingScheme"], item["educationLevel"][0], items[above[item["identifier"]]]["fullStatement"])
        for item in data["CFItems"]
        if item["CFItemType"] == "Objective"
    }
    assert told == {
        (it.code, "Reception" if it.year == 0 else f"Year {it.year}", framework.strands[it.strand])
        for it in framework.objectives
    }
    parts = {
        (item["fullStatement"], items[above[item["identifier"]]]["humanCodingScheme"])
        for item in data["CFItems"]
        if item["CFItemType"] == "Part"
    }
    assert parts == {(part.says, it.code) for it in framework.objectives if it.has_parts for part in it.parts}
    tops = [above[identifier] for identifier, item in items.items() if item["CFItemType"] == "Strand"]
    assert set(tops) == {data["CFDocument"]["identifier"]}


@pytest.mark.parametrize("framework", FRAMEWORKS, ids=lambda framework: framework.id)
def test_what_comes_before_what_is_told(framework: Framework) -> None:
    links = [link for link in package(framework)["CFAssociations"] if link["associationType"] == "precedes"]
    told = [(link["originNodeURI"]["title"], link["destinationNodeURI"]["title"]) for link in links]
    assert told == [(before, it.code) for it in framework.objectives for before in it.follows]


def test_no_two_things_have_one_id_and_every_link_leads_to_one() -> None:
    packages = [package(framework) for framework in FRAMEWORKS]
    named = [
        thing["identifier"]
        for data in packages
        for thing in (data["CFDocument"], *data["CFItems"], *data["CFAssociations"])
    ]
    assert [name for name, times in Counter(named).items() if times > 1] == []
    ends = {
        link[end]["identifier"] for data in packages for link in data["CFAssociations"] for end in link if "Node" in end
    }
    assert ends <= set(named)


def test_an_objective_that_is_replaced_says_by_which() -> None:
    ready = reference().frameworks["england-ready-to-progress"]
    old = ready.objectives[0].model_copy(update={"replaced_by": "england-content-domain:1N1a"})
    changed = ready.model_copy(update={"objectives": (old, *ready.objectives[1:])})
    data = package(changed)
    (link,) = [link for link in data["CFAssociations"] if link["associationType"] == "replacedBy"]
    other = next(
        it
        for it in package(reference().frameworks["england-content-domain"])["CFItems"]
        if it.get("humanCodingScheme") == "1N1a"
    )
    assert link["originNodeURI"]["title"] == old.code
    assert link["destinationNodeURI"]["identifier"] == other["identifier"]
    assert link["destinationNodeURI"]["uri"] == other["uri"]
    assert list(VALIDATOR.iter_errors(data)) == []


def test_dates_come_from_the_data() -> None:
    for framework in FRAMEWORKS:
        data = package(framework)
        moments = {
            thing["lastChangeDateTime"] for thing in (data["CFDocument"], *data["CFItems"], *data["CFAssociations"])
        }
        assert moments == {f"{framework.revised}T00:00:00Z"}
        assert data["CFDocument"]["statusStartDate"] == str(framework.taught_from)


def test_labels_of_our_own_are_said_to_be_ours() -> None:
    goals = package(reference().frameworks["england-early-years"])["CFItems"]
    assert all("ours" in item["notes"] for item in goals if item["CFItemType"] == "Objective")


def test_ids_hang_on_the_collection_and_the_name_alone() -> None:
    """Worked out once by ``uuid.uuid5`` at a prompt: should it ever change, every reader would lose what it knew."""
    name = ("objective", "england-content-domain", "2C4")
    assert str(StableIds("https://ploverquay.example/").of(*name)) == "6c980447-74da-5b0b-94bf-95c329515202"
    assert StableIds("https://elsewhere.example/").of(*name) != StableIds("https://ploverquay.example/").of(*name)
    moved = Site(collection(), settings=replace(SETTINGS, url="https://elsewhere.example/maths/"))
    there = curriculum(FRAMEWORKS[0], moved)["CFDocument"]
    assert there["identifier"] == package(FRAMEWORKS[0])["CFDocument"]["identifier"]
    assert there["uri"] == f"https://elsewhere.example/maths/{address(FRAMEWORKS[0].id)}"


def test_a_framework_without_objectives_is_no_file() -> None:
    files = open_data(Site(collection(), settings=SETTINGS))
    assert address("england-2028") not in files
    assert address("england-content-domain") in files
