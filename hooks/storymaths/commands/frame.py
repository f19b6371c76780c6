"""Starts the frame that builds and serves, with its documented settings made whole for one collection."""

from __future__ import annotations

import json
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

import yaml

from ..model.carried import carried


def run_frame(root: Path, *words: str) -> int:
    """Runs MkDocs for the collection at ``root``; gives what it leaves with."""
    command = [sys.executable, "-m", "mkdocs", words[0], "--config-file", str(_settings(root)), *words[1:]]
    return subprocess.run(command, cwd=root, check=False).returncode


def _settings(root: Path) -> Path:
    """The settings the program carries, with every path in full, kept with what else is made."""
    settings = yaml.safe_load(carried("mkdocs.yml").read_text(encoding="utf-8"))
    frame = carried("site_build.py")
    settings |= {"docs_dir": str(root / "content"), "site_dir": str(root / "site"), "hooks": [str(frame)]}
    settings["theme"]["custom_dir"] = str(carried("theme"))
    settings["watch"] = _watched(root, frame.parent)
    file = root / ".cache" / "mkdocs.yml"
    file.parent.mkdir(exist_ok=True)
    file.write_text(json.dumps(settings, indent=2), encoding="utf-8")  # what is JSON is YAML too
    return file


def _watched(root: Path, program: Path) -> Sequence[str]:
    """The collection's settings; and the program, where it stands in a repository of its own to be worked on."""
    return [str(root / "site_data"), *([str(program)] if (program / "storymaths").is_dir() else [])]
