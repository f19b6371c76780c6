"""Builds the tests' collection and a pack of it by several Pythons, each in other surroundings, and compares every byte.

``python tests/bench/build_twice.py [PYTHON …]``: each a Python in which the packages of storymaths are installed; without
any, this one. Each builds twice, in two folders, time zones, locales, umasks and hash seeds, with clocks thirty years
apart. Ends with 1 if a file differs, and names it.
"""

from __future__ import annotations

import hashlib
import os
import subprocess
import sys
import tempfile
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parent.parent))

from built import OLD_CLOCK
from project import ROOT, copy_of_project

SERIES = "a-term-on-plover-quay"
HERE = {"TZ": "UTC", "LC_ALL": "C.UTF-8", "PYTHONHASHSEED": "1"}
THERE = {"TZ": "Pacific/Kiritimati", "LC_ALL": "C", "PYTHONHASHSEED": "77", "SOURCE_DATE_EPOCH": "86400"}


def main() -> int:
    """Builds and compares; 0 if all is the same."""
    pythons = sys.argv[1:] or [sys.executable]
    with tempfile.TemporaryDirectory() as made:
        built = {
            f"{python} {name}": built_by(python, Path(made) / f"{n} {name} é", variables, umask)
            for n, python in enumerate(pythons)
            for name, variables, umask in (("here", HERE, 0o022), ("there", THERE, 0o077))
        }
    first, *others = built.items()
    print(f"{first[0]}: {len(first[1])} files")
    wrong = [
        f"{name}: {file}"
        for name, sums in others
        for file in sorted(first[1].keys() | sums.keys())
        if sums.get(file) != first[1].get(file)
    ]
    print("\n".join(wrong) or f"The same bytes {len(built)} times.")
    return bool(wrong)


def built_by(python: str, folder: Path, variables: dict[str, str], umask: int) -> dict[str, str]:
    """The sum of each file of the site, and of the pack."""
    project = copy_of_project(folder)
    paths = [str(ROOT / "hooks")]
    if variables is THERE:
        (folder / "clock").mkdir()
        (folder / "clock/sitecustomize.py").write_text(OLD_CLOCK, encoding="utf-8")
        paths.append(str(folder / "clock"))
    environment = {**os.environ, **variables, "PYTHONPATH": os.pathsep.join(paths), "PYTHONDONTWRITEBYTECODE": "1"}
    for command in (["build"], ["pack", SERIES]):
        subprocess.run(
            [python, "-m", "storymaths", *command],
            cwd=project,
            env=environment,
            umask=umask,
            check=True,
            stdout=subprocess.DEVNULL,
        )
    files = [*(path for path in (project / "site").rglob("*") if path.is_file()), *project.glob("*.zip")]
    return {path.relative_to(project).as_posix(): hashlib.sha256(path.read_bytes()).hexdigest() for path in files}


if __name__ == "__main__":
    sys.exit(main())
