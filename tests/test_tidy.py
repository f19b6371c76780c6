"""The tools that read the code itself: ruff's rules and form, and mypy in its strict mode on the core."""

from __future__ import annotations

import subprocess
import sys

import pytest
from project import ROOT


@pytest.mark.parametrize(
    "tool",
    [("ruff", "check", "."), ("ruff", "format", "--check", "."), ("mypy",)],
    ids=["ruff check", "ruff format", "mypy --strict"],
)
def test_the_code_is_tidy(tool: tuple[str, ...]) -> None:
    done = subprocess.run([sys.executable, "-m", *tool], cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout + done.stderr
