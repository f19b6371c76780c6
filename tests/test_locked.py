"""The packages the program is developed and tested with: each of one version, held by its hashes, as others may have it."""

from __future__ import annotations

import re
import tomllib
from importlib.metadata import version

from packaging.requirements import Requirement
from packaging.utils import canonicalize_name
from project import ROOT

PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text("utf-8"))["project"]
LOCK = (ROOT / "tests/locked.txt").read_text("utf-8")
LOCKED = [Requirement(one.partition("\\")[0].strip()) for one in re.split(r"\n(?=\S)", LOCK.strip())]


def test_each_has_one_version_and_its_hashes_and_names_no_address() -> None:
    assert all(re.fullmatch(r"==[\w.]+", str(one.specifier)) for one in LOCKED)
    assert [part.split("==")[0] for part in re.split(r"\n(?=\S)", LOCK.strip()) if "--hash=sha256:" not in part] == []
    assert "://" not in LOCK
    assert "--index" not in LOCK


def test_they_are_what_those_who_install_it_may_have_and_what_the_tests_ask_for() -> None:
    by_name = {canonicalize_name(one.name): str(one.specifier).removeprefix("==") for one in LOCKED}
    for line in (*PROJECT["dependencies"], *PROJECT["optional-dependencies"]["test"]):
        asked = Requirement(line)
        assert asked.specifier.contains(by_name[canonicalize_name(asked.name)]), f"make tests/locked.txt again: {line}"


def test_what_those_who_install_it_may_have_ends_at_what_was_not_tried() -> None:
    assert [one for one in PROJECT["dependencies"] if "<" not in one or ">=" not in one] == []


def test_these_tests_run_with_what_is_locked() -> None:
    here = [one for one in LOCKED if one.marker is None or one.marker.evaluate()]
    wrong = [f"{one.name} {version(one.name)}" for one in here if not one.specifier.contains(version(one.name))]
    assert wrong == [], "install tests/locked.txt again"
