"""A school year as people type it after a command."""

from __future__ import annotations

import argparse

from ..model.fields import RECEPTION, YEARS

SAYS = "Reception, or a year from 1 to 6"


def read_year(text: str) -> int:
    """Reception, or 1 to 6. Raises what ``argparse`` shows for anything else."""
    if text == "Reception":
        return RECEPTION
    if text.isdecimal() and int(text) in YEARS and int(text) != RECEPTION:
        return int(text)
    raise argparse.ArgumentTypeError(f"{text} is not Reception, 1, 2, 3, 4, 5 or 6")
