"""Cutting a typeface down to the signs we print.

Cutting makes a modified version, and the licence of one
(SIL Open Font License 1.1, clause 3) reserves its name, so each goes by a name of ours.
"""

from __future__ import annotations

import io
import logging
from pathlib import Path

from fontTools.pens.ttGlyphPen import TTGlyphPen  # type: ignore[import-untyped]
from fontTools.subset import Options, Subsetter  # type: ignore[import-untyped]
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from fontTools.varLib.instancer import instantiateVariableFont  # type: ignore[import-untyped]

SIGNS = frozenset((*range(0x20, 0x7F), *map(ord, "\N{NO-BREAK SPACE}£°·×÷é−≠≤≥½⅓⅔¼¾⅛–—‘’“”•…→←⁰ⁱ")))
"""English letters, and the signs of primary mathematics; where a face lacks one the next in the list serves."""
ACCENTS = frozenset(range(0xA1, 0x100)) - SIGNS
"""Letters of names and words from elsewhere, and rarer signs: a file of their own, fetched by pages that have one."""
_NAMED = (1, 3, 4, 6, 16)
"""Entries of a font's name table that name it; those that hold its copyright and licence stay as they are."""


def cut(file: Path, name: str, signs: frozenset[int] = SIGNS) -> bytes:
    """A typeface as WOFF2, with some signs only, under a name of ours."""
    logging.getLogger("fontTools").setLevel(logging.ERROR)
    font = TTFont(file, recalcTimestamp=False)  # the day of the face, not of the cutting
    if "glyf" in font and ord("≠") not in font.getBestCmap():
        _add_not_equal(font)
    options = Options(layout_features=["kern", "mark", "ccmp"], hinting=False, name_IDs=["*"], notdef_outline=True)
    cutter = Subsetter(options)
    cutter.populate(unicodes=signs)
    cutter.subset(font)
    if "fvar" in font:
        font = instantiateVariableFont(font, {"wght": (400, 700)})
    for record in font["name"].names:
        if record.nameID in _NAMED:
            record.string = name if record.nameID != 6 else name.replace(" ", "")
    font.flavor = "woff2"
    written = io.BytesIO()
    font.save(written)
    return written.getvalue()


def _add_not_equal(font: TTFont) -> None:
    """Draws ≠ from the face's own = and /, so that it looks like its neighbours."""
    names, drawn = font.getBestCmap(), font["glyf"]
    equal, slash = names[ord("=")], names[ord("/")]
    box, stroke = drawn[equal], drawn[slash]
    scale = 2 * (box.yMax - box.yMin) / (stroke.yMax - stroke.yMin)
    right = (box.xMin + box.xMax - scale * (stroke.xMin + stroke.xMax)) / 2
    up = (box.yMin + box.yMax - scale * (stroke.yMin + stroke.yMax)) / 2
    pen = TTGlyphPen(font.getGlyphSet())
    pen.addComponent(equal, (1, 0, 0, 1, 0, 0))
    pen.addComponent(slash, (scale, 0, 0, scale, right, up))
    font.setGlyphOrder([*font.getGlyphOrder(), "notequal"])
    font["glyf"]["notequal"] = pen.glyph()
    font["hmtx"]["notequal"] = font["hmtx"][equal]
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap[ord("≠")] = "notequal"
