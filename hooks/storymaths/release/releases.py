"""Where a site is published: an address that is a link, and beside it the releases it can lead to.

``lessons`` is a symbolic link to ``lessons.releases/7``. The next site is made as ``lessons.releases/8``, and the link
is then replaced in one step, by ``rename`` (POSIX: at every moment there is the one or the other). Beside each release
stands its record, ``8.json``: written last, so a release without one was never finished. What the record says it
replaced is kept, and nothing else. Where an older publish made ``lessons.editions``, that folder goes on being used.
"""

from __future__ import annotations

import errno
import json
import os
import secrets
import shutil
from dataclasses import asdict, dataclass, field, replace
from pathlib import Path

from .on_disk import make_all_last, make_names_last
from .refused import Refused

MARK = "made-by-storymaths.txt"
_ABOUT = """\
The folders here are releases of a site, made by `storymaths publish`. The link beside this folder leads to the one
that is shown; the one before is kept so that `storymaths publish … --back` can show it again. Do not change them.
"""
_STAGING = "being-made-"
_NO_LINKS = (errno.EPERM, errno.ENOTSUP, errno.ENOSYS, errno.EINVAL)
"""What file systems without links answer, and Windows where a person may make none."""


@dataclass(frozen=True, slots=True)
class Record:
    """What is known of a release."""

    pages: dict[str, str] = field(default_factory=dict)
    """Each page's address, from the site's root, and its title."""
    replaces: int | None = None
    """The release that was shown before it."""


class Releases:
    """The releases of one published site."""

    def __init__(self, dest: Path) -> None:
        """``dest`` is where the site is to be seen. Nothing is touched yet. Raises ``Refused`` for a root."""
        self.dest = Path(os.path.abspath(dest))
        if not self.dest.name:
            raise Refused("The root of the disk is no place for a site: name a folder in it.")
        older = self.dest.with_name(f"{self.dest.name}.editions")
        self.folder = older if _is_ours(older) else self.dest.with_name(f"{self.dest.name}.releases")
        self._next_link = self.dest.with_name(f".{self.dest.name}.next")

    def open(self) -> None:
        """Makes the folder of releases if need be. Raises ``Refused`` where something of somebody else's stands."""
        self.look()
        if self.current is None:
            self._try_a_link()
        self.folder.mkdir(exist_ok=True)
        mark = self.folder / MARK
        if not mark.exists():
            mark.write_text(_ABOUT, encoding="utf-8")

    def look(self) -> None:
        """Raises ``Refused`` unless the site can be published here; changes nothing."""
        if not self.dest.parent.is_dir():
            raise Refused(f"There is no folder {self.dest.parent} to publish in: make it first.")
        if self.dest.is_symlink():
            if self.current is None:
                raise Refused(
                    f"{self.dest} is a link to {os.readlink(self.dest)}, which publish did not make. Take it away or name another place."
                )
        elif self.dest.exists() and not (self.dest.is_dir() and not any(self.dest.iterdir())):
            what = "a folder with files in it" if self.dest.is_dir() else "a file"
            raise Refused(
                f"{self.dest} is {what}, and publish did not make it, so it is left alone. "
                "Name another place, or move it away and publish again."
            )
        if self.folder.is_symlink() or (self.folder.exists() and not (_is_ours(self.folder) or self._is_unused())):
            raise Refused(f"{self.folder} is needed for the releases of the site, and something else stands there.")
        if os.path.lexists(self._next_link) and not self._next_link.is_symlink():
            raise Refused(f"{self._next_link} is needed while publishing, and something else stands there.")

    def _try_a_link(self) -> None:
        self._next_link.unlink(missing_ok=True)
        try:
            self._next_link.symlink_to(self.folder.name, target_is_directory=True)
        except (OSError, NotImplementedError) as error:
            if isinstance(error, OSError) and error.errno not in _NO_LINKS:
                raise
            raise Refused(
                f"{self.dest.parent} can hold no link, which is how a site on a server is shown. "
                "Publish a plain folder with --as folder, or a file to upload with --as zip."
            ) from None
        self._next_link.unlink()

    def _is_unused(self) -> bool:
        return self.folder.is_dir() and set(os.listdir(self.folder)) <= {"lock"}

    @property
    def current(self) -> int | None:
        """The release that is shown, by what the link says."""
        try:
            parent, name = os.path.split(os.readlink(self.dest))
        except OSError:
            return None
        return int(name) if parent == self.folder.name and name.isdecimal() else None

    def path_of(self, number: int) -> Path:
        """The folder of a release."""
        return self.folder / str(number)

    def record_of(self, number: int) -> Record | None:
        """What is known of a release; None if it was never finished."""
        try:
            return Record(**json.loads((self.folder / f"{number}.json").read_text(encoding="utf-8")))
        except (OSError, ValueError, TypeError):
            return None

    @property
    def last(self) -> int | None:
        """The release that was shown before the current one, if it is still there."""
        current = self.current
        record = self.record_of(current) if current is not None else None
        before = record.replaces if record else None
        return before if before is not None and self._whole(before) else None

    def _whole(self, number: int) -> bool:
        return self.path_of(number).is_dir() and self.record_of(number) is not None

    def known_pages(self) -> dict[str, str]:
        """Every page of the releases kept, with its title: addresses that somebody may have."""
        kept = [
            record for number in (self.last, self.current) if number is not None and (record := self.record_of(number))
        ]
        return {address: title for record in kept for address, title in record.pages.items()}

    def staging(self) -> Path:
        """A new, empty folder to make the next release in."""
        # A name of its own each time: what a killed run left behind may still be written to by a child of it.
        folder = self.folder / f"{_STAGING}{secrets.token_hex(4)}"
        folder.mkdir()
        return folder

    def keep(self, staging: Path, pages: dict[str, str]) -> int:
        """Makes a release of what was made there; returns its number. The link does not lead to it yet."""
        number = 1 + max((int(name) for name in self._names() if name.isdecimal()), default=0)
        make_all_last()
        staging.rename(self.path_of(number))
        self._write(number, Record(pages, self.current))
        return number

    def show(self, number: int) -> None:
        """Replaces the link in one step: before it the old release is shown, after it the new one."""
        self._next_link.unlink(missing_ok=True)
        self._next_link.symlink_to(f"{self.folder.name}/{number}", target_is_directory=True)
        if self.dest.is_dir() and not self.dest.is_symlink():
            self.dest.rmdir()  # refuses unless it is empty
        self._next_link.replace(self.dest)
        make_names_last(self.dest.parent)

    def go_back(self) -> int:
        """Shows the release before the current one, from which the current one is then one step back. Its number."""
        current, last = self.current, self.last
        if current is None or last is None:
            raise Refused(f"There is no earlier release of {self.dest} to go back to.")
        record = self.record_of(last)
        assert record is not None
        self._write(last, replace(record, replaces=current))
        self.show(last)
        return last

    def tidy(self) -> None:
        """Takes away what no run needs: what killed runs left, and releases older than the last."""
        kept = {str(number) for number in (self.current, self.last) if number is not None}
        for name in self._names():
            stem = name.removesuffix(".json")
            if name.startswith((_STAGING, ".")) or (stem.isdecimal() and stem not in kept):
                path = self.folder / name
                # A child of a killed run may still be writing; what is left then goes the next time.
                shutil.rmtree(path, ignore_errors=True) if path.is_dir() else path.unlink(missing_ok=True)
        if self._next_link.is_symlink():
            self._next_link.unlink(missing_ok=True)

    def _names(self) -> list[str]:
        return sorted(os.listdir(self.folder))

    def _write(self, number: int, record: Record) -> None:
        part = self.folder / f".{number}.json"
        with part.open("w", encoding="utf-8") as file:
            json.dump(asdict(record), file, ensure_ascii=False, sort_keys=True)
            file.flush()
            os.fsync(file.fileno())
        part.replace(self.folder / f"{number}.json")
        make_names_last(self.folder)


def _is_ours(folder: Path) -> bool:
    return not folder.is_symlink() and (folder / MARK).is_file()
