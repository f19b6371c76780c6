"""Files into one zip, the same bytes every time and everywhere.

Times, permissions and the order of the files are fixed, and the files are stored as they are: how small a file can be
pressed depends on the library that does it, and print sheets and pictures, which are most of a pack, are pressed already.
"""

from __future__ import annotations

import stat
import zipfile
from collections.abc import Mapping
from typing import IO

_WHEN = (1980, 1, 1, 0, 0, 0)
"""The earliest time a zip can tell."""
_PERMISSIONS = stat.S_IFREG | 0o644
_UNIX = 3
_LOCAL_HEADER, _CENTRAL_HEADER, _END = 30, 46, 22


def write_zip(files: Mapping[str, bytes], out: IO[bytes]) -> None:
    """Writes the files in the order given."""
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as zipped:
        for name, content in files.items():
            entry = zipfile.ZipInfo(name, _WHEN)
            entry.create_system = _UNIX
            entry.external_attr = _PERMISSIONS << 16
            zipped.writestr(entry, content)


def size_of(files: Mapping[str, bytes]) -> int:
    """The bytes that ``write_zip`` will write: known before it is done, since nothing is pressed."""
    heads = sum(_LOCAL_HEADER + _CENTRAL_HEADER + 2 * len(name.encode("utf-8")) for name in files)
    return heads + _END + sum(map(len, files.values()))
