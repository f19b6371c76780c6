"""A folder made beside another and put in its place when it is whole: what is cut short leaves what was there."""

from __future__ import annotations

import os
import shutil
from pathlib import Path


class Staging:
    """Where the next content of a folder is made."""

    def __init__(self, out: Path) -> None:
        """``out`` need not be there yet. What a run that was cut short left beside it goes."""
        self.out = out.resolve()
        self.folder = self.out.with_name(f".{self.out.name}.being-made")
        self._last = self.out.with_name(f".{self.out.name}.last")
        if os.path.ismount(self.out) or not os.access(self._nearest_parent(), os.W_OK):
            self.folder = self.out  # it cannot be moved, only filled
        else:
            self.discard()
            self.folder.mkdir(parents=True)

    def _nearest_parent(self) -> Path:
        return next(folder for folder in self.out.parents if folder.is_dir())

    def clear(self) -> None:
        """Empties the folder, which is empty already unless it can only be filled. Raises ``OSError``."""
        for path in self.folder.iterdir() if self.folder.is_dir() else ():
            shutil.rmtree(path) if path.is_dir() and not path.is_symlink() else path.unlink()

    def put_in_place(self) -> None:
        """What was made takes the place of what was there. Raises ``OSError``, and then leaves that as it was."""
        if self.folder == self.out:
            return
        shutil.rmtree(self._last, ignore_errors=True)
        if self.out.exists():
            self.out.rename(self._last)
        try:
            self.folder.rename(self.out)
        except OSError:
            self._last.rename(self.out)
            raise
        shutil.rmtree(self._last, ignore_errors=True)

    def discard(self) -> None:
        """Takes away what was made and is not wanted."""
        if self.folder != self.out:
            shutil.rmtree(self.folder, ignore_errors=True)
