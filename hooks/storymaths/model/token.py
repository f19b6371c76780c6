"""What stands for a character without a picture: a shape, a pattern and letters, and how the cut card is told by touch."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal, get_args

Shape = Literal["circle", "square", "triangle", "arch", "hexagon", "flower", "diamond", "shield"]
Pattern = Literal["stripes", "dots", "plain", "squares", "waves", "rings"]
_SHAPES: tuple[Shape, ...] = get_args(Shape)
_TITLES = frozenset({"the", "mr", "mrs", "ms", "miss", "dr"})
_PATTERNS: tuple[Pattern, ...] = get_args(Pattern)


@dataclass(frozen=True, slots=True)
class Token:
    """One character's, unlike those of the others of its cast."""

    shape: Shape
    pattern: Pattern
    letters: str
    """The first letter of the name; more where others begin alike."""

    @property
    def says(self) -> str:
        """What it looks like."""
        pattern = "plain" if self.pattern == "plain" else f"with {self.pattern}"
        return f"A {self.shape}, {pattern}, and in it {self.letters}"


def token_of(names: Sequence[str], place: int) -> Token:
    """The token of the character at a place of a cast. Shapes come round after eight, with other patterns each time."""
    shape = _SHAPES[place % len(_SHAPES)]
    pattern = _PATTERNS[(place + place // (len(_SHAPES) * len(_PATTERNS) // 2)) % len(_PATTERNS)]
    return Token(shape, pattern, _letters(names, place))


def _letters(names: Sequence[str], place: int) -> str:
    """As many letters of the name as tell it from the others, three at most."""
    own, others = _bare(names[place]), [_bare(name) for at, name in enumerate(names) if at != place]
    start = next((n for n in (1, 2, 3) if not any(o[:n].casefold() == own[:n].casefold() for o in others)), 3)
    return own[:start].strip()


def _bare(name: str) -> str:
    """A name without what many names begin with."""
    first, _, rest = name.partition(" ")
    return rest if rest and first.casefold().rstrip(".") in _TITLES else name
