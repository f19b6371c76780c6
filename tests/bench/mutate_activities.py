"""Mutation testing of the activities: ``python tests/bench/mutate_activities.py [KIND…] [--every N] [--children N]``.

Each kind is mutated by mutmut in a copy of the project and tried against that kind's own tests and words, with Hypothesis held to
few examples, since every test runs thousands of times. A kind has some thousand mutants; by default a sample is tried:
every Nth in mutmut's own order, so that the sample is the same each time. Results are kept in ``.cache/mutation`` and a
kind that is already there is not run again; delete its file to run it afresh.
"""

from __future__ import annotations

import argparse
import json
import shutil
import subprocess
import sys
import tempfile
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
KINDS = ROOT / "hooks" / "storymaths" / "activities"
KEPT = ROOT / ".cache" / "mutation"
SAMPLE = 40
KILLED = (1, 3)
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
    """Runs what is asked for and prints a table of all results kept."""
    parser = argparse.ArgumentParser(description=__doc__)
    every = sorted(folder.name for folder in KINDS.iterdir() if (folder / "__init__.py").is_file())
    parser.add_argument("kinds", nargs="*", default=every, metavar="KIND")
    parser.add_argument("--every", type=int, default=0, help=f"try every Nth mutant (default: about {SAMPLE} a kind)")
    parser.add_argument("--children", type=int, default=1, help="processes at once (default: 1)")
    asked = parser.parse_args()
    KEPT.mkdir(parents=True, exist_ok=True)
    for kind in asked.kinds:
        result = KEPT / f"{kind}.json"
        if not result.exists():
            result.write_text(json.dumps(mutated(kind, asked.every, asked.children), indent=1), encoding="utf-8")
        print(line(kind, json.loads(result.read_text(encoding="utf-8"))), flush=True)
    totals = [json.loads(file.read_text(encoding="utf-8")) for file in sorted(KEPT.glob("*.json"))]
    print(line("all", {"mutants": sum(one["mutants"] for one in totals), "codes": _joined(totals)}))


def line(kind: str, result: dict[str, object]) -> str:
    """A kind's row: mutants, tried, killed, of which by time, lived, and the share killed."""
    codes: dict[str, int | None] = result["codes"]  # type: ignore[assignment]
    counted = Counter(_ended(code) for code in codes.values())
    tried = sum(counted.values()) - counted["not tried"]
    dead = counted["killed"] + counted["time"]
    share = f"{dead / tried:.0%}" if tried else "-"
    return f"{kind:24} {result['mutants']:>6} {tried:>5} tried {dead:>5} killed ({counted['time']} by time) {share:>5}"


def _ended(code: int | None) -> str:
    if code is None:
        return "not tried"
    return "killed" if code in KILLED else "lived" if code in (0, 5, 33) else "time"


def _joined(results: list[dict[str, dict[str, int | None]]]) -> dict[str, int | None]:
    return {name: code for one in results for name, code in one["codes"].items()}


def mutated(kind: str, every: int, children: int) -> dict[str, object]:
    """A kind's mutants and how each that was tried ended, by mutmut's exit codes."""
    with tempfile.TemporaryDirectory() as made:
        copy = Path(made)
        _lay_out(copy, kind)
        _mutmut(copy, "nothing-by-this-name", children=children)  # only makes the mutants
        names = sorted(_codes(copy))
        step = every or max(1, len(names) // SAMPLE)
        chosen = names[::step]
        _mutmut(copy, *chosen, children=children)
        codes = _codes(copy)
        return {"mutants": len(names), "codes": {name: codes[name] for name in chosen}}


def _lay_out(copy: Path, kind: str) -> None:
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
    wanted = [f"tests/activities/test_{kind}.py", f"tests/outside/test_published_{kind}.py"]
    tests = [name for name in wanted if (copy / name).exists()]
    words = kind.replace("_", "-")
    tests.append(f"tests/activities/test_approved_words.py::test_words_are_those_approved[{words}]")
    settings = (copy / "pyproject.toml").read_text(encoding="utf-8")
    settings = settings.replace('pythonpath = ["hooks", "tests"]', 'pythonpath = ["src", "tests"]')
    settings += (
        f'\n[tool.mutmut]\nsource_paths = ["src"]\nonly_mutate = ["src/storymaths/activities/{kind}/*"]\n'
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
