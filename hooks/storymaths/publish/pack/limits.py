"""What a pack may hold: names that lead nowhere else on any system, and sizes that cannot fill a disk."""

from __future__ import annotations

import re
import unicodedata

MOST_FILES = 20_000
LARGEST_FILE = 128_000_000
LARGEST_PACK = 512_000_000
"""Bytes of all its files together, and of the pack itself."""
LONGEST_NAME = 240
"""Bytes of a name with its folders."""
_ODD = re.compile(r'[\x00-\x1f\x7f-\x9f\\:*?"<>|\u200e\u200f\u202a-\u202e\u2066-\u2069]')
_RUNS = frozenset(
    "ade adp apk app application appref-ms appx appxbundle bat bin chm cmd com command cpl csh deb desktop dll dmg docm dotm exe "
    "gadget hta inf ins iso isp jar jnlp jse ksh lnk mde msc msh msi msix msp mst pif pkg potm ppam pptm ps1 psm1 py pyc pyw reg "
    "rpm run scf scr sct settingcontent-ms sh shb shs sys terminal tool url vb vbe vbs vhd vhdx webloc workflow ws wsc wsf wsh xbap "
    "xlam xll xlsm xltm".split()
)
"""Endings of files that a double click runs, or that lead to a program: common practice of mail programs, no source."""
_DEVICES = re.compile(r"(con|prn|aux|nul|conin\$|conout\$|com[\d¹²³]|lpt[\d¹²³])(\..*)?", re.IGNORECASE)
"""Names that Windows keeps for devices, with whatever ending."""


def fault_of_name(name: str) -> str | None:
    """What is wrong with a file's name in a pack; None if nothing is."""
    if _ODD.search(name):
        return "has signs in its name that no pack uses"
    if name.startswith("/"):
        return "has a name that begins at the root of the disk"
    parts = name.split("/")
    if ".." in parts:
        return "has a name that climbs out of the folder"
    if any(part in ("", ".") or part != part.strip(" ") or part.endswith(".") for part in parts):
        return "has a name with an empty or unfinished part"
    if any(_DEVICES.fullmatch(part) for part in parts):
        return "has a name that some systems keep for a device"
    if parts[-1].rpartition(".")[2].lower() in _RUNS:
        return "would be run by whoever opens it"
    return "has too long a name" if len(name.encode("utf-8", "replace")) > LONGEST_NAME else None


def same_place(name: str) -> str:
    """What two names share that would be one file on some system: case and the form of accents do not tell apart."""
    return unicodedata.normalize("NFC", name).casefold()


def make_printable(name: str) -> str:
    """A name fit to print, whatever it holds."""
    plain = "".join(sign if sign.isprintable() else "?" for sign in name)
    return plain if len(plain) <= 100 else f"{plain[:100]}…"
