"""The site of the frozen collection, built once a run, and what a build keeps: letterforms, sheets set in type."""

from __future__ import annotations

import os
import shutil
import subprocess
import sys
from pathlib import Path

from project import PROJECT, copy_of_project
from run_folder import made_once
from storymaths.pipeline import build_site

OLD_CLOCK = """\
import time
now, here, away, away_from = time.time, time.localtime, time.gmtime, 1e9
time.time = lambda: now() - away_from
time.localtime = lambda moment=None: here(time.time() if moment is None else moment)
time.gmtime = lambda moment=None: away(time.time() if moment is None else moment)
"""
"""A ``sitecustomize.py``, which a Python loads before all else: this one sets its clock back by some thirty years."""


def built_site() -> Path:
    """The folder of the finished site."""
    return made_once("site", lambda folder: build_site(PROJECT, folder))


def kept() -> Path:
    """What a build of the frozen collection keeps for the next."""
    built_site()
    return PROJECT / ".cache"


def copy_that_was_built(folder: Path) -> Path:
    """A copy of the project that has been built before: its sheets are kept, its site is not there."""
    project = copy_of_project(folder)
    shutil.copytree(kept(), project / ".cache")
    return project


def mkdocs_build(project: Path, *more: str, **variables: str) -> subprocess.CompletedProcess[str]:
    """``mkdocs build`` in a project's folder, with more words and variables if wished."""
    command = [sys.executable, "-m", "mkdocs", "build", *more]
    environment = {**os.environ, **variables}
    return subprocess.run(command, cwd=project, env=environment, capture_output=True, text=True, check=False)
