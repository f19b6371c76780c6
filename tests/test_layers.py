"""The shape of the code: stages in one direction, MkDocs in one file, modules one can read."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

from project import ROOT
from storymaths.activities.rules import RULES
from storymaths.check.rules import rules
from storymaths.commands.command import Command
from storymaths.commands.table import COMMANDS, load
from storymaths.release.trial import RULES as RELEASE_RULES

CORE = ROOT / "hooks" / "storymaths"
STAGES = (
    "model", "expression", "scripts", "parse", "claims", "check", "activities", "naming", "reading", "weeks", "covers", "ideas",
    "edits", "propose", "render", "publish", "build", "pipeline", "live", "release", "upgrade", "desk", "commands",
)  # fmt: skip
MODULES = sorted(path for path in CORE.rglob("*.py"))
LONGEST = 300


def imported(path: Path) -> Iterator[str]:
    """Every module a file imports, in full: relative ones from the core's root."""
    package = path.relative_to(CORE).parts[:-1]
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = package[: len(package) - node.level + 1] if node.level else ()
            name = ".".join((*(("storymaths", *base) if node.level else ()), *((node.module or "").split("."))))
            yield name.rstrip(".")
            yield from (f"{name.rstrip('.')}.{alias.name}" for alias in node.names if node.level and not node.module)


def stage_of(module: str) -> str | None:
    parts = module.split(".")
    return parts[1] if len(parts) > 1 and parts[0] == "storymaths" and parts[1] in STAGES else None


def name_of(path: Path) -> str:
    return path.relative_to(CORE).as_posix()


def test_a_stage_imports_only_itself_and_earlier_stages() -> None:
    wrong = []
    for path in MODULES:
        own = path.relative_to(CORE).parts[0].removesuffix(".py")
        if own not in STAGES:
            wrong += [f"{name_of(path)} is in no stage"] if own not in ("__init__", "__main__") else []
            continue
        for module in imported(path):
            stage = stage_of(module)
            if module.startswith("storymaths.") and (stage is None or STAGES.index(stage) > STAGES.index(own)):
                wrong.append(f"{name_of(path)} imports {module}, which is {'a later stage' if stage else 'no stage'}")
    assert wrong == []


def test_a_module_says_what_it_is_for_and_can_be_read_in_one_go() -> None:
    texts = {name_of(path): path.read_text(encoding="utf-8") for path in MODULES}
    assert [name for name, text in texts.items() if not ast.get_docstring(ast.parse(text))] == [], "no opening sentence"
    assert [name for name, text in texts.items() if text.count("\n") > LONGEST] == [], "too long"


def test_the_rooms_of_the_house() -> None:
    tracked = {
        path.name
        for path in ROOT.iterdir()
        if not path.name.startswith(".") and path.suffix not in (".egg-info", ".zip")
    }
    made = {"site", "mutants"}
    assert tracked - made == {
        "README.md", "DEVELOPERS.md", "mkdocs.yml", "pyproject.toml", "content", "hooks", "tests", "site_data", "LICENSE",
    }  # fmt: skip


def test_only_the_frame_names_mkdocs() -> None:
    endings = (".py", ".html", ".js", ".css", ".typ", ".md")
    files = (path for path in (ROOT / "hooks").rglob("*") if path.suffix in endings)
    naming = sorted(path.name for path in files if "mkdocs" in path.read_text("utf-8").lower())
    assert naming == ["site_build.py"]


def test_every_rule_has_a_row_in_the_developers_guide() -> None:
    guide = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    names = [*rules(), *(rule.name for rule in (*RULES, *RELEASE_RULES))]
    assert [name for name in names if f"`{name}`" not in guide] == []


def test_every_command_of_the_table_has_its_module() -> None:
    assert [name for name in COMMANDS if not isinstance(load(name), Command)] == []
