"""Mutation testing of the activities: small faults put into each kind, to see whether its own tests notice.

``python tests/bench/mutate_activities.py [KIND…]`` takes a sample of every kind’s mutants (of the kinds named, or all)
and prints how many were killed. Kinds are named by their folder, such as ``number_sentence``; ``shared`` is what lies
beside the folders. A second run goes on where the first one stopped, and tries anew what has been changed.

``--each N``  how many mutants of each kind, spread evenly over all of its functions (80); 0 is every mutant
``--again``   tries those that survived once more, for when tests have been added
``--show``    prints the survivors of the sample as differences

mutmut wants a package to lie where it is imported from, so each kind gets a project of its own in ``.cache/mutation/``:
the package, the tests and the data they read, with Hypothesis held to a few cases (``few_examples.py``).
"""

from __future__ import annotations

import argparse
import json
import os
import shutil
import subprocess
import sys
from collections import Counter
from collections.abc import Sequence
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
ACTIVITIES = ROOT / "hooks/storymaths/activities"
CACHE = ROOT / ".cache/mutation"
MUTMUT = str(Path(sys.executable).parent / "mutmut")
SHARED = "shared"
OTHER_TESTS = {
    SHARED: (
        *("another_country", "bending", "block", "choices", "claims", "effort", "exit_shown", "fit", "memory", "noun"),
        *("other_numbers", "page_bends", "signs_at_choice", "slips_of_reception", "solve_command", "told_claims"),
        *("told_ways", "work_out"),
    ),
    "rule_language": ("rule_reader", "sort", "always_sometimes_never"),
}
"""Where the tests are not named after the folder."""
APPROVED = "tests/activities/test_approved_words.py::test_words_are_those_approved"
APPROVED_OF = {
    SHARED: ("balance", "money", "clock", "bonds", "fraction", "sequence", "sort"),
    "rule_language": ("sort", "always-sometimes-never"),
}
"""Whose approved words are told again, where it is not the kind of the folder."""
STATES = {0: "survived", 1: "killed", 3: "killed", 33: "no tests", 5: "no tests", 36: "timeout", 24: "timeout",
          -24: "timeout", 152: "timeout", 255: "timeout", None: "not tried"}  # fmt: skip
"""What mutmut 3 notes of a mutant, by exit code; anything else is ``odd``."""
PROJECT = """\
[tool.mutmut]
source_paths = ["src"]
only_mutate = [{only}]
do_not_mutate = [{beside}]
also_copy = ["site_data", "content", "hooks", "mkdocs.yml", "LICENSE"]
pytest_add_cli_args = ["-p", "bench.few_examples", "-p", "no:cacheprovider"]
pytest_add_cli_args_test_selection = [{tests}]
timeout_multiplier = 6.0
use_git_change_detection = false

[tool.pytest.ini_options]
pythonpath = ["src", "tests"]
"""
GENERATE = """\
from pathlib import Path
from mutmut.__main__ import copy_also_copy_files, copy_src_dir, create_mutants
Path("mutants").mkdir(exist_ok=True)
copy_src_dir()
copy_also_copy_files()
create_mutants(1)
"""


def kinds() -> list[str]:
    """Every folder of the activities, and what lies beside them."""
    return [*sorted(path.parent.name for path in ACTIVITIES.glob("*/__init__.py")), SHARED]


def tests_of(kind: str) -> list[str]:
    """The tests of a kind: its own, the published examples of it, and the words it was approved with."""
    found: list[Path] = []
    for name in OTHER_TESTS.get(kind, (kind,)):
        found += [
            *ROOT.glob(f"tests/activities/test_{name}*.py"),
            *ROOT.glob(f"tests/outside/test_published_{name}.py"),
        ]
    approved = [f"{APPROVED}[{name}]" for name in APPROVED_OF.get(kind, (kind.replace("_", "-"),))]
    return [*sorted(str(path.relative_to(ROOT)) for path in found), *approved]


def laid_out(kind: str) -> Path:
    """The project of a kind, with the newest sources and tests; what mutmut knows of it is kept."""
    place = CACHE / kind
    for name in ("src", "tests", "site_data", "content", "hooks"):
        shutil.rmtree(place / name, ignore_errors=True)
    (place / "mutants/mutmut-stats.json").unlink(
        missing_ok=True
    )  # which test tries what is not the same after a change
    unread = shutil.ignore_patterns("__pycache__")
    shutil.copytree(ROOT / "hooks/storymaths", place / "src/storymaths", ignore=unread)
    for name in ("tests", "site_data", "content"):
        shutil.copytree(ROOT / name, place / name, ignore=unread)
    shutil.copytree(ROOT / "hooks", place / "hooks", ignore=shutil.ignore_patterns("__pycache__", "storymaths"))
    for name in ("mkdocs.yml", "LICENSE"):
        shutil.copy(ROOT / name, place)
    here = "src/storymaths/activities"
    only, beside = (f"{here}/*", [f"{here}/*/*"]) if kind == SHARED else (f"{here}/{kind}/*", [])
    quoted = {"only": [only], "beside": beside, "tests": tests_of(kind)}
    (place / "pyproject.toml").write_text(
        PROJECT.format(**{name: ", ".join(f'"{text}"' for text in texts) for name, texts in quoted.items()}), "utf-8"
    )
    return place


def states_of(place: Path) -> dict[str, int | None]:
    """Every mutant with its exit code, function by function; None where it was not tried."""
    states: dict[str, int | None] = {}
    for noted in sorted(place.glob("mutants/src/storymaths/activities/**/*.meta")):
        states.update(json.loads(noted.read_text("utf-8"))["exit_code_by_key"])
    return dict(sorted(states.items(), key=lambda item: _in_order(item[0])))


def _in_order(name: str) -> tuple[str, int]:
    function, _, number = name.rpartition("_")
    return function, int(number)


def sampled(names: Sequence[str], each: int) -> list[str]:
    """So many of them, evenly spread; all of them for 0."""
    if not each or len(names) <= each:
        return list(names)
    return [names[index * len(names) // each] for index in range(each)]


def run(place: Path, *command: str) -> int:
    """Runs a command in a kind’s project, its report in ``log.txt``."""
    env = {**os.environ, "PYTHONPATH": str(place / "tests")}
    with (place / "log.txt").open("a", encoding="utf-8") as log:
        return subprocess.run(command, cwd=place, env=env, stdout=log, stderr=subprocess.STDOUT, check=False).returncode


def mutate(kind: str, each: int, again: bool, processes: int) -> tuple[Counter[str], int, list[str]]:
    """Tries a kind’s mutants. Gives how many of each state, how many there are in all, and the survivors."""
    place = laid_out(kind)
    if run(place, sys.executable, "-c", GENERATE):
        sys.exit(f"No mutants of {kind}: see {place.relative_to(ROOT)}/log.txt")
    sample = sampled(list(states_of(place)), each)
    for _ in range(2):  # where the tests of a kind are others than before, mutmut forgets what it knew in the first run
        states = states_of(place)
        to_try = [name for name in sample if states[name] is None or (again and STATES.get(states[name]) == "survived")]
        if to_try and run(place, MUTMUT, "run", "--max-children", str(processes), *to_try):
            print(f"{kind}: mutmut stopped early; see {place.relative_to(ROOT)}/log.txt", file=sys.stderr)
        again = False
    states = states_of(place)
    found = Counter(STATES.get(states[name], "odd") for name in sample)
    return found, len(states), [name for name in sample if STATES.get(states[name]) in ("survived", "no tests")]


def show(kind: str, survivors: Sequence[str]) -> None:
    """Prints what each survivor changed."""
    for name in survivors:
        subprocess.run([MUTMUT, "show", name], cwd=CACHE / kind, check=False)


def row(name: str, there: int, found: Counter[str]) -> str:
    """A line of the table. A mutant that never ends is noticed too."""
    tried = sum(found.values()) - found["not tried"]
    killed = found["killed"] + found["timeout"]
    columns = (there, tried, found["killed"], found["timeout"], found["survived"], found["no tests"], found["odd"])
    return f"{name:<24}" + "".join(f"{number:>10,}" for number in columns) + f"{100 * killed / max(tried, 1):>9.1f}"


def main() -> None:
    """Tries the kinds named and prints the table."""
    options = argparse.ArgumentParser(description="Mutation testing of the activities, kind by kind.")
    options.add_argument("kinds", nargs="*", metavar="KIND", help="folders of activities, or shared; all if left out")
    options.add_argument("--each", type=int, default=80, help="mutants of each kind; 0 for all")
    options.add_argument("--again", action="store_true", help="try survivors once more")
    options.add_argument("--show", action="store_true", help="print what each survivor changed")
    options.add_argument("--processes", type=int, default=2)
    told = options.parse_args()
    os.nice(19)
    heads = ("there are", "tried", "killed", "timeout", "survived", "no tests", "odd")
    print(f"{'kind':<24}" + "".join(f"{head:>10}" for head in heads) + f"{'%':>9}", flush=True)
    total: Counter[str] = Counter()
    all_there = 0
    for kind in told.kinds or kinds():
        found, there, survivors = mutate(kind, told.each, told.again, told.processes)
        total, all_there = total + found, all_there + there
        print(row(kind, there, found), flush=True)
        if told.show:
            show(kind, survivors)
    print(row("in all", all_there, total))


if __name__ == "__main__":
    main()
