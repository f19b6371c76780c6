"""A file written aside, put in the place of another in one step; and that again while another program holds it open.

Windows refuses to replace a file that is open elsewhere (ERROR_SHARING_VIOLATION and ERROR_ACCESS_DENIED; Microsoft, System
Error Codes): a virus scanner, a search index or a program that copies files to a server has it for a moment after each save.
"""

from __future__ import annotations

import os
import time
from pathlib import Path

_TRIES, _BETWEEN = 20, 0.1


def move_in_place(aside: Path, place: Path) -> None:
    """Puts a file in its place, over what is there. Raises ``OSError``, where Windows has refused it for two seconds."""
    for tried in range(1, _TRIES + 1):
        try:
            aside.replace(place)
        except PermissionError:
            if os.name != "nt" or tried == _TRIES:
                raise
            time.sleep(_BETWEEN)
        else:
            return
