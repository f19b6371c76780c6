"""The figures of a page as pictures for a word processor: PNGs, which every one of them shows."""

from __future__ import annotations

import io
import json
from collections.abc import Mapping
from functools import cache
from pathlib import Path

import typst
from PIL import Image

from ..sheets.letters import typefaces

DOTS_AN_INCH = 144
_SOURCE = Path(__file__).parent / "figures.typ"
_COLOURS = 32


def as_pictures(figures: Mapping[str, str]) -> dict[str, bytes]:
    """PNGs of figures that stand alone (SVG), by the same names; none where the typesetter cannot read one."""
    if not figures:
        return {}
    drawn = json.dumps(list(figures.values()), ensure_ascii=False)
    try:
        pages = _compiler().compile(format="png", ppi=DOTS_AN_INCH, sys_inputs={"data": drawn})
    except typst.TypstError:
        return {}
    found = pages if isinstance(pages, list) else [pages]
    return {name: _small(page) for name, page in zip(figures, found, strict=True) if isinstance(page, bytes)}


@cache
def _compiler() -> typst.Compiler:
    return typst.Compiler(input=str(_SOURCE), font_paths=typefaces(), ignore_system_fonts=True)


def _small(png: bytes) -> bytes:
    drawn = Image.open(io.BytesIO(png)).convert("RGB")
    few = drawn.quantize(_COLOURS, method=Image.Quantize.FASTOCTREE, dither=Image.Dither.NONE)
    out = io.BytesIO()
    few.save(out, "PNG", dpi=(DOTS_AN_INCH, DOTS_AN_INCH))
    return out.getvalue()
