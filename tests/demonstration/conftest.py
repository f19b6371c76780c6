"""The demonstration's site, built once a run without print sheets, and served to this machine only."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from project import ROOT
from run_folder import made_once
from storymaths.pipeline import build_site

from ..browser.server import serving


@pytest.fixture(scope="session")
def site() -> Path:
    """The folder of the finished site."""
    return made_once("demonstration", _build)


@pytest.fixture(scope="session")
def base(site: Path) -> Iterator[str]:
    """The address of the site, with a closing slash."""
    with serving(site) as address:
        yield address


def _build(folder: Path) -> None:
    project = folder.with_name("demonstration-project")
    for name in ("content", "site_data"):
        shutil.copytree(ROOT / name, project / name)
    settings = project / "site_data" / "site.yaml"
    settings.write_text(settings.read_text("utf-8").replace("print_sheets: true", "print_sheets: false"), "utf-8")
    build_site(project, folder)
