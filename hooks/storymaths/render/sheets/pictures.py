"""Drawings for paper: those of the content, if they can be used as they are, and figures with their styles put in."""

from __future__ import annotations

import base64
import io
import re

from PIL import Image

from ...parse.drawing import read_drawing

LARGEST = 400_000
"""Characters of a drawing. A whole context takes some ten thousand."""
_STYLE = """
.fig-line,.fig-soft,.fig-fill{stroke:#2b2a33;stroke-width:2.5;fill:none}.fig-soft{fill:#fff}.fig-fill{fill:#ccc}
.fig-mark{stroke:#2b2a33;stroke-width:3;fill:none}circle.fig-mark{fill:#2b2a33}
.fig-tick{stroke:#565463;stroke-width:2;fill:none}.fig-faint{stroke:#b5b3bd;stroke-width:1.5}
.fig-hidden{stroke:#565463;stroke-width:2;stroke-dasharray:5 6}.fig-hand-hour{stroke-width:6}
.fig-hand-minute{stroke-width:4}.fig-mirror{stroke-dasharray:9 6}.fig-yes,.fig-no{stroke:#2b2a33;stroke-width:4}
.fig-text{fill:#2b2a33;font-family:'ABeeZee','Lexend'}.fig-mark-text{font-weight:600}
"""
"""As the stylesheet has them for print: ink on white."""


_WIDEST = 480
"""Dots across a photograph on paper: it is printed no larger than a card."""


def photograph(data: bytes) -> str:
    """A photograph as a drawing that holds it, small enough for a card. Raises ``OSError`` where it cannot be read."""
    with Image.open(io.BytesIO(data)) as image:
        small = image.convert("RGB")
        small.thumbnail((_WIDEST, _WIDEST))
        written = io.BytesIO()
        small.save(written, "JPEG", quality=85)
    wide, high = small.size
    return (
        f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {wide} {high}"><image width="{wide}" height="{high}" '
        f'href="data:image/jpeg;base64,{base64.b64encode(written.getvalue()).decode()}"/></svg>'
    )


_FILTER = re.compile(r"\bfilter(?:: |=\")url\(#[\w.:-]+\)")


def for_paper(svg: str) -> str | None:
    """A drawing for paper; None for one that the rule ``drawing-unusable`` refuses: a last look before paper.

    It is what is served but for blurs and shadows: what sets sheets works a filter out dot by dot, for as far as it may
    reach, and a hundred of them take it a quarter of a minute.
    """
    served = read_drawing(svg).served if len(svg) <= LARGEST else None
    return served and _FILTER.sub(lambda found: found.group().partition("url")[0] + "none", served)


_LETTERS, _WIDTH = re.compile(r'font-size="([\d.]+)"'), re.compile(r'viewBox="\S+ \S+ ([\d.]+)')


def least_letters(figure: str) -> float:
    """How high the least letters of a figure are, as a part of its width; 0 where it has none."""
    sizes = [float(size) for size in _LETTERS.findall(figure)]
    wide = _WIDTH.search(figure)
    return round(min(sizes) / float(wide[1]), 4) if sizes and wide else 0


def standing_alone(figure: str) -> str:
    """A figure drawn for a page, with what it takes from the page written into it."""
    opened = figure.replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1)
    return opened.replace(">", f"><style>{_STYLE}</style>", 1)
