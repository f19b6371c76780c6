"""Reads the lists that tests go through: with the reader written in C, which takes far less time."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import yaml


def read_yaml(path: Path) -> Any:
    """What a YAML file of the tests says."""
    return yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
