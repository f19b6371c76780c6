"""Mutation testing of the activities: ``python tests/bench/mutate_activities.py [KIND…] [--every N] [--children N]``.

mutmut makes the mutants in a copy of the project and tries each against the tests that reach it, with Hypothesis held to
few examples, since every test runs thousands of times. All kinds together have some twenty thousand mutants; by default a
sample is tried: every Nth in the order of their names, the same each time. ``--every 1`` tries all, which takes a night.
"""

from __future__ import annotations

import argparse
import json
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Mapping, Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
KINDS = ROOT / "hooks" / "storymaths" / "activities"
SAMPLE = 400
KILLED, LIVED = (1, 3), (0, 5, 33)
"""mutmut's exit codes; whatever else ends a mutant is time running out."""
_NEEDED = ("tests", "site_data", "content", "mkdocs.yml", "pyproject.toml", "README.md", "DEVELOPERS.md")
_FEW_EXAMPLES = """
from hypothesis import settings

def pytest_collection_modifyitems(items):
    for item in items:
        asked = getattr(item.obj, "_hypothesis_internal_use_settings", None)
        if asked is not None:
            few = settings(asked, max_examples=min(20, asked.max_examples), database=None, derandomize=True, deadline=None)
            item.obj._hypothesis_internal_use_settings = few
"""


def main() -> None:
    """Runs what is asked for, and prints a row a kind, what lived, and the whole."""
    parser = argparse.ArgumentParser(description=__doc__)
    every = sorted(folder.name for folder in KINDS.iterdir() if (folder / "__init__.py").is_file())
    every.remove("rule_language")
    parser.add_argument("kinds", nargs="*", default=every, metavar="KIND")
    parser.add_argument("--every", type=int, default=0, help=f"try every Nth mutant (default: about {SAMPLE} in all)")
    parser.add_argument("--children", type=int, default=2, help="processes at once (default: 2)")
    asked = parser.parse_args()
    made, codes = mutated(asked.kinds, asked.every, asked.children)
    for kind in asked.kinds:
        mine = {name: code for name, code in codes.items() if f".{kind}." in name}
        print(row(kind, sum(f".{kind}." in name for name in made), mine))
    print(row("all", len(made), codes))
    print("lived:", *sorted(name for name, code in codes.items() if code in LIVED), sep="\n  ")


def row(kind: str, made: int, codes: Mapping[str, int | None]) -> str:
    """How a kind's mutants ended: made, tried, killed, of which by time, and the share killed."""
    tried = [code for code in codes.values() if code is not None]
    dead = [code for code in tried if code not in LIVED]
    late = sum(code not in KILLED for code in dead)
    share = f"{len(dead) / len(tried):.0%}" if tried else "-"
    return f"{kind:24} {made:>6} made {len(tried):>5} tried {len(dead):>5} killed ({late} by time) {share:>5}"


def mutated(kinds: Sequence[str], every: int, children: int) -> tuple[list[str], dict[str, int | None]]:
    """The names of all mutants, and how each that was tried ended, by mutmut's exit codes."""
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder)
        _lay_out(copy, kinds)
        _mutmut(copy, "nothing-by-this-name", children=children)  # only makes the mutants
        names = sorted(_codes(copy))
        chosen = names[:: every or max(1, len(names) // SAMPLE)]
        _mutmut(copy, *chosen, children=children)
        codes = _codes(copy)
        return names, {name: codes[name] for name in chosen}


def _lay_out(copy: Path, kinds: Sequence[str]) -> None:
    # mutmut knows code by its place under ``src``.
    shutil.copytree(ROOT / "hooks", copy / "src", ignore=shutil.ignore_patterns("__pycache__"))
    (copy / "hooks").symlink_to("src")
    for name in _NEEDED:
        source = ROOT / name
        if source.is_dir():
            shutil.copytree(source, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
        else:
            shutil.copy(source, copy / name)
    (copy / "tests" / "few_examples.py").write_text(_FEW_EXAMPLES, encoding="utf-8")
    wanted = [f"tests/{room}{kind}.py" for kind in kinds for room in ("activities/test_", "outside/test_published_")]
    tests = [name for name in wanted if (copy / name).exists()]
    approved = "tests/activities/test_approved_words.py::test_words_are_those_approved"
    tests += [f"{approved}[{kind.replace('_', '-')}]" for kind in kinds]
    mutated = [f"src/storymaths/activities/{kind}/*" for kind in kinds]
    settings = (copy / "pyproject.toml").read_text(encoding="utf-8")
    settings = settings.replace('pythonpath = ["hooks", "tests"]', 'pythonpath = ["src", "tests"]')
    settings += (
        f'\n[tool.mutmut]\nsource_paths = ["src"]\nonly_mutate = {json.dumps(mutated)}\n'
        f"also_copy = {json.dumps([name for name in _NEEDED if name != 'tests'])}\n"
        f"pytest_add_cli_args_test_selection = {json.dumps(tests)}\n"
        'pytest_add_cli_args = ["-p", "few_examples", "-p", "no:cacheprovider"]\n'
    )
    (copy / "pyproject.toml").write_text(settings, encoding="utf-8")


def _mutmut(copy: Path, *names: str, children: int) -> None:
    command = [sys.executable, "-m", "mutmut", "run", "--max-children", str(children), *names]
    subprocess.run(command, cwd=copy, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL, check=False)


def _codes(copy: Path) -> dict[str, int | None]:
    codes: dict[str, int | None] = {}
    for meta in (copy / "mutants").rglob("*.meta"):
        codes.update(json.loads(meta.read_text(encoding="utf-8"))["exit_code_by_key"])
    return codes


if __name__ == "__main__":
    main()
