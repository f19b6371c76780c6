"""What the program stands on: every package with its licence, as a bill that its standard takes, and in what is served."""

from __future__ import annotations

import json
import re
import tomllib

import pytest
from built import built_site
from command import storymaths
from cyclonedx.schema import SchemaVersion
from cyclonedx.validation.json import JsonStrictValidator
from project import ROOT
from storymaths.model.site_settings import Letterforms
from storymaths.publish.bill_of_materials import bill_of_materials
from storymaths.publish.stands_on import NOTICES, PROGRAM, needed_directly, notices, packages, plain_name

DEPENDENCIES = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]["dependencies"]


def test_the_bill_is_as_its_standard_has_it_and_lists_all_there_is() -> None:
    # CycloneDX 1.6 (ECMA-424), by the schema that its own library carries.
    written = bill_of_materials(packages())
    assert JsonStrictValidator(SchemaVersion.V1_6).validate_str(written) is None
    bill = json.loads(written)
    assert [one["name"] for one in bill["components"]] == [one.name for one in packages() if one.name != PROGRAM]
    assert bill["metadata"]["component"]["name"] == PROGRAM
    assert storymaths("licences", "--cyclonedx").stdout == written


def test_what_the_program_asks_for_is_listed_and_says_its_licence() -> None:
    asked = {plain_name(re.split(r"[\[<>=]", one)[0]) for one in DEPENDENCIES}
    assert {one.name for one in needed_directly()} == asked, "install storymaths again: pyproject.toml has changed"
    listed = storymaths("licences").stdout
    for one in packages():
        assert one.licence != "it does not say", one.name
        assert re.search(rf"^{one.name} +{re.escape(one.version)} +{re.escape(one.licence)}$", listed, re.MULTILINE)


@pytest.mark.parametrize(
    "words",
    [
        "Copyright (c) 2026 The storymaths authors",
        "Copyright 2022 CloudCannon",
        "SIL OPEN FONT LICENSE Version 1.1",
        "Letterforms made from Lexend",
        "Letterforms made from Abeezee",
    ],
)
def test_the_notices_of_what_is_served_are_served(words: str) -> None:
    assert words in (built_site() / NOTICES).read_text("utf-8")


def test_only_letterforms_that_are_served_are_named() -> None:
    assert "Abeezee" not in notices(Letterforms(text="lexend", child="lexend"))


def test_the_credits_name_each_package_and_lead_to_the_notices() -> None:
    credits = (built_site() / "credits.html").read_text("utf-8")
    assert f'href="{NOTICES}"' in credits
    for one in needed_directly():
        assert f"{one.name} ({one.licence})" in credits
