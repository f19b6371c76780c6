"""The README's commands are the ones that are run."""

from __future__ import annotations

import re

from project import ROOT


def test_ci_runs_the_test_command_word_for_word() -> None:
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    commands = re.findall(r"```sh\n(.*?)\n```", readme, re.DOTALL)
    assert len(commands) == 2
    assert commands[1] in (ROOT / ".ci" / "run").read_text(encoding="utf-8").splitlines()


def test_the_readme_opens_with_one_paragraph_and_then_the_two_commands() -> None:
    blocks = (ROOT / "README.md").read_text(encoding="utf-8").split("\n\n")
    assert blocks[0].startswith("# ")
    assert not blocks[1].startswith(("#", "`", "*"))
    assert blocks[2].startswith("**See it**")
