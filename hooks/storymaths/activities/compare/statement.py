"""One statement of a comparison: its sides and signs, the names in it, and the one gap it may have."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import takewhile

from ...expression.grammar import Reader, Unreadable
from ...expression.signs import COMPARED
from ...expression.tokens import Token, read_tokens
from ...expression.tree import Node, Number, Operation, fill_gap, gaps_in, operations_in, quantity_of
from ...model.document import Loc
from ...model.quantity import UNITS, Quantity
from ...parse.suggestion import did_you_mean
from ..arithmetic import signs_of
from ..kind import Unsolvable

GAP = "___"
SIGN_GAP = "?"
_LONGEST = 120
_GAPS = ("gap", "sign-gap")


@dataclass(frozen=True, slots=True)
class Statement:
    """A statement as shown, each side with the names' values put in, and the same as trees."""

    shown: tuple[str, ...]
    sides: tuple[str, ...]
    signs: tuple[str, ...]
    loc: Loc
    trees: tuple[Node, ...]
    operators: tuple[tuple[str, ...], ...]
    """The signs of calculation that stand in each side."""

    @property
    def text(self) -> str:
        """As a pupil sees it; every gap is ``___``."""
        return joined(self.shown, [GAP if sign == SIGN_GAP else sign for sign in self.signs])

    @property
    def gap_side(self) -> int | None:
        """Which side has a gap for a number."""
        return next((index for index, tree in enumerate(self.trees) if gaps_in(tree)), None)

    @property
    def sign_gap(self) -> int | None:
        """Which sign is missing."""
        return self.signs.index(SIGN_GAP) if SIGN_GAP in self.signs else None

    @property
    def calculations(self) -> int:
        """How many signs of calculation it has."""
        return sum(map(operations_in, self.trees))

    def value(self, side: int, gap: Number | None = None) -> Quantity:
        """What a side is worth, with a number in its gap. Raises ``ValueError`` or ``ArithmeticError``."""
        tree = self.trees[side]
        return quantity_of(fill_gap(tree, gap) if gap else tree)


def joined(sides: Sequence[str], signs: Sequence[str]) -> str:
    """Sides with the signs between them."""
    return sides[0] + "".join(f" {sign} {side}" for sign, side in zip(signs, sides[1:], strict=True))


def read_statement(text: str, names: Mapping[str, Token], limit: int, loc: Loc) -> Statement:
    """The statement in a text. ``names`` are what characters are worth, by name; ``limit`` the largest number."""
    plain = " ".join(text.split())
    if len(plain) > _LONGEST:
        raise Unsolvable(loc, "This statement is too long to read.", f"write at most {_LONGEST} letters and signs.")
    tokens = tuple(_as_meant(token, plain) for token in read_tokens(plain, COMPARED, names))
    sides, signs = _sides(tokens)
    shown = tuple(_text(side, plain, named=True) for side in sides)
    if not signs or not all(shown):
        raise Unsolvable(
            loc, f'"{plain}" does not compare two sides.', "write a side, one of = ≠ < > or ?, and another side."
        )
    if any(token.kind == "digits" for token in tokens):
        raise Unsolvable(loc, "The gap stands for a digit.", "use the kind number-sentence for missing digits.")
    gaps = sum(token.kind in _GAPS or token.text == SIGN_GAP for token in tokens)
    if gaps > 1:
        raise Unsolvable(loc, f'"{plain}" has {gaps} gaps.', "leave one gap; for more use the kind number-sentence.")
    _check_words(tokens, names, loc)
    if any(token.kind in ("number", "name") and token.amount > limit for token in tokens):
        raise Unsolvable(loc, "A number here is too large.", f"write numbers of at most {limit:,}.")
    in_numbers = tuple(_text(side, plain, named=False) for side in sides)
    line = joined(shown, [GAP if sign == SIGN_GAP else sign for sign in signs])
    # A side with a gap is read last: what is amiss elsewhere is the plainer thing to say.
    order = sorted(range(len(sides)), key=lambda at: any(token.kind in _GAPS for token in sides[at]))
    trees = {at: _tree(sides[at], in_numbers[at], line, loc) for at in order}
    operators = tuple(tuple(signs_of(side)) for side in sides)
    statement = Statement(shown, in_numbers, signs, loc, tuple(trees[at] for at in range(len(sides))), operators)
    _check(statement, limit)
    return statement


def _as_meant(token: Token, plain: str) -> Token:
    """A line between spaces is a sign of division, and not the line of a fraction."""
    spaced = token.text == "/" and plain[token.end : token.end + 1] == " "
    return token._replace(text="÷") if spaced else token


def _sides(tokens: Sequence[Token]) -> tuple[tuple[tuple[Token, ...], ...], tuple[str, ...]]:
    """The tokens of each side, and the signs between the sides."""
    cuts = [at for at, token in enumerate(tokens) if token.kind == "relation"]
    ends = [*cuts, len(tokens)]
    starts = [0, *(cut + 1 for cut in cuts)]
    sides = tuple(tuple(tokens[start:end]) for start, end in zip(starts, ends, strict=True))
    return sides, tuple(tokens[cut].text for cut in cuts)


def _text(side: Sequence[Token], plain: str, named: bool) -> str:
    """A side as its author spaced it: characters by name, or by what they are worth."""
    text, last = "", side[0].start if side else 0
    for token in side:
        own = plain[token.start : token.end]
        if token.kind in _GAPS:
            own = own.replace("_" * own.count("_"), GAP)
        elif token.kind == "sign" or (token.kind == "name" and not named):
            own = token.text
        text, last = text + plain[last : token.start] + own, token.end
    return text


def _check_words(tokens: Sequence[Token], names: Mapping[str, Token], loc: Loc) -> None:
    """That every word is a character, a unit or "of"."""
    for at, token in enumerate(tokens):
        if token.kind == "word" and token.text not in UNITS:
            words = [each.text for each in takewhile(lambda each: each.kind == "word", tokens[at:])]
            near = did_you_mean(" ".join(words), names)
            fix = (
                f"use one of {', '.join(names)}, or numbers."
                if names
                else "give the activity a cast and a fact, or use numbers."
            )
            raise Unsolvable(loc, f'"{" ".join(words)}" stands for nobody here.{near}', fix, "activity-fact-missing")


def _tree(side: Sequence[Token], text: str, line: str, loc: Loc) -> Node:
    reader = Reader(side)
    try:
        tree = reader.sum()
        reader.end()
    except Unreadable as error:
        if error.amiss == "broken":
            raise _divided_by_nought(loc) from None
        if any(token.kind in _GAPS for token in side):
            raise Unsolvable(
                loc, f'No number fits the gap in "{line}".', f"write sums such as 6 + {GAP} = 9."
            ) from None
        raise _not_worked_out(loc, line, f"{text} is not a sum") from None
    return tree


def _divided_by_nought(loc: Loc) -> Unsolvable:
    return Unsolvable(loc, "Nothing can be divided by 0.", "divide by another number.")


def _not_worked_out(loc: Loc, line: str, why: str) -> Unsolvable:
    message = f'"{line}" cannot be worked out ({why}).'
    return Unsolvable(loc, message, "write sums such as 6 + 3 or 4 × 2, with units that go together.")


def _check(statement: Statement, limit: int) -> None:
    """That the sides without a gap can be worked out and compared, and none comes to more than is met."""
    try:
        worth = [statement.value(at) for at in range(len(statement.sides)) if at != statement.gap_side]
    except ZeroDivisionError:
        raise _divided_by_nought(statement.loc) from None
    except (ValueError, ArithmeticError) as error:
        raise _not_worked_out(statement.loc, statement.text, str(error)) from None
    if len({value.kind for value in worth}) > 1:
        raise Unsolvable(statement.loc, "The sides are not amounts of the same sort.", "compare like with like.")
    if any(abs(Fraction(value.amount)) > limit * 1000 for value in worth):
        raise Unsolvable(statement.loc, "A side comes to too much.", f"keep to numbers of at most {limit:,}.")


def whole_terms(tree: Node) -> tuple[int, ...]:
    """The bare whole numbers that a side adds up; empty where it is anything else."""
    if isinstance(tree, Operation) and tree.sign == "+":
        left, right = whole_terms(tree.left), whole_terms(tree.right)
        return left + right if left and right else ()
    if isinstance(tree, Number) and not tree.unit and isinstance(tree.value, int) and "/" not in tree.shown:
        return (tree.value,) if tree.value >= 0 else ()
    return ()
