"""Every answer to the number sentences of an activity, found line by line within one budget of cases."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import islice, pairwise, product
from typing import NoReturn, get_args

from ...expression.gapped import GappedSentence, NotASentence, read_gapped, sentences_of, written_out
from ...expression.number import Rational
from ...expression.tokens import Token
from ...expression.tree import NOUGHT, Node, Number, Operation, quantity_of
from ...model.activity import CastMember, Context
from ...model.quantity import UnlikeQuantities
from ..kind import Unsolvable, whole_fact
from ..saying import written
from .filled import Filled, fill_in
from .gap_filling import MOST_TRIED, Allowed, NeedsRange, TooManyCases, fillings, is_filled_truly
from .tasks import Judged, SentencesTask, Sign

_SIGNS_IN_ORDER: Sequence[str] = get_args(Sign)


def _values_of(task: SentencesTask, context: Context) -> dict[str, int]:
    """What each character is worth, by id; empty without a fact. Raises ``Unsolvable``."""
    if task.fact is None:
        if task.gaps == "cast":
            message = "The cast is to stand in the gaps, and no fact gives their numbers."
            raise Unsolvable(("gaps",), message, "add fact, such as fact: mass.", "activity-fact-missing")
        return {}
    values = whole_fact(context, task.fact)
    if not values:
        raise Unsolvable(("cast",), "There is nobody in the cast.", "name some characters.", "activity-fact-missing")
    return values


def read_lines(task: SentencesTask, context: Context) -> list[tuple[Token, ...]]:
    """The tokens of each sentence; characters by id or by name. Raises ``Unsolvable`` for one that cannot be read."""
    values, lines = _values_of(task, context), []
    names = {
        way: Token("name", character.name, values[character.id], number=written(values[character.id]))
        for character in context.characters
        for way in (character.id, character.name)
        if values
    }
    for at, text in enumerate(task.sentences):
        try:
            lines.append(read_gapped(text, names))
            list(sentences_of(lines[-1], signs_for(task, context)))
        except NotASentence as error:
            _unreadable(at, text, str(error))
    return lines


def _unreadable(at: int, text: str, why: str) -> NoReturn:
    shown = text if len(text) <= 60 else f"{text[:60]}…"
    raise Unsolvable(
        ("sentences", at),
        f'"{shown}" cannot be read as a number sentence: {why}.',
        "write it like 7 + ___ = 12, with signs from + − × ÷ = ≠ < >.",
        "activity-broken",
    )


def signs_for(task: SentencesTask, context: Context) -> Sequence[str]:
    """The signs that may stand in a gap for a sign: the author's, or those the year has met."""
    year = context.year
    relations = ("<", "=", ">") if year.knows("<") else ("=", "≠")
    return task.signs or (*(sign for sign in "+−×÷" if year.knows(sign)), *relations)


def known_numbers(task: SentencesTask, context: Context) -> Iterator[Number]:
    """The numbers that stand in the sentences as they are asked."""
    for tokens in read_lines(task, context):
        for sentence in islice(sentences_of(tokens, signs_for(task, context)), 1):
            for side in sentence.sides:
                yield from _known_in(side)


def _known_in(node: Node) -> Iterator[Number]:
    """The numbers in a side; one with digits missing is not known."""
    if isinstance(node, Number):
        yield node
    elif isinstance(node, Operation) and node.sign != "&":
        yield from () if node.left is NOUGHT else _known_in(node.left)
        yield from _known_in(node.right)


def judge_lines(task: SentencesTask, context: Context) -> list[Judged]:
    """Whether each sentence without gaps is true."""
    judged = []
    for line, tokens in enumerate(read_lines(task, context), start=1):
        sentence = next(sentences_of(tokens, signs_for(task, context)), None)
        if sentence and not sentence.gaps and not sentence.signs:
            judged.append(Judged(line, sentence, is_filled_truly(sentence, ())))
    return judged


def find_fillings(task: SentencesTask, context: Context) -> list[Filled]:
    """Every filling of every sentence that has gaps, in order. Raises ``Unsolvable``."""
    found: list[Filled] = []
    allowed = _allowed(task, context)
    for at, tokens in enumerate(read_lines(task, context)):
        here: list[Filled] = []
        choices = list(sentences_of(tokens, signs_for(task, context)))
        most = MOST_TRIED // len(task.sentences) // max(1, len(choices))
        for sentence in choices:
            if sentence.gaps or sentence.signs:
                here += _filled(at, sentence, allowed, task, context, most)
            if len(found) + len(here) > context.caps.answers:
                _too_many(at, context)
        found += sorted(here, key=_in_order)
    return found


def _in_order(filled: Filled) -> tuple[list[Fraction], list[int], list[str]]:
    signs = [_SIGNS_IN_ORDER.index(sign) for sign in filled.sentence.signs]
    return [Fraction(n) for n in filled.numbers], signs, [p.id for p in filled.who]


def _allowed(task: SentencesTask, context: Context) -> Allowed | None:
    if task.gaps == "cast":
        return tuple(sorted(set(whole_fact(context, task.fact or "").values())))
    return task.gaps


def _filled(
    at: int,
    sentence: GappedSentence,
    allowed: Allowed | None,
    task: SentencesTask,
    context: Context,
    most: int,
) -> list[Filled]:
    _check_comparable(at, sentence)
    here: list[Filled] = []
    seen: set[tuple[object, ...]] = set()
    try:
        for numbers in fillings(sentence, allowed, most):
            if task.each_once and task.gaps != "cast" and len(set(numbers)) < len(numbers):
                continue
            if any(abs(Fraction(number)) > context.caps.number for number in numbers):
                message = f"A number in it would be beyond {context.caps.number:,}."
                raise Unsolvable(("sentences", at), message, "use smaller numbers.")
            for who in _who(numbers, sentence, task, context):
                key = tuple(sorted(p.id for p in who)) if who else tuple(sorted(numbers))
                if task.swapped == "counts" or key not in seen:
                    here.append(Filled(at + 1, sentence, numbers, who))
                seen.add(key)
            if len(here) > context.caps.answers:
                _too_many(at, context)
    except NeedsRange:
        message = f'In "{task.sentences[at]}" more than one number would do, and nothing says which may be used.'
        raise Unsolvable(("sentences", at), message, "say which, such as gaps: 0-20.") from None
    except TooManyCases:
        message = f'"{task.sentences[at]}" has more cases than can be looked at.'
        raise Unsolvable(("sentences", at), message, "allow fewer numbers in the gaps, or leave fewer gaps.") from None
    return here


def _too_many(at: int, context: Context) -> NoReturn:
    message = f"There are more than {context.caps.answers} answers."
    fix = "allow fewer numbers in the gaps, or leave fewer gaps."
    raise Unsolvable(("sentences", at), message, fix, "activity-too-many-answers")


def _who(
    numbers: Sequence[Rational], sentence: GappedSentence, task: SentencesTask, context: Context
) -> Iterator[tuple[CastMember, ...]]:
    """Who can stand in the gaps, nobody twice; one empty choice where the cast does not."""
    if task.gaps != "cast":
        yield ()
        return
    wanted = [number for number, kind in zip(numbers, sentence.gaps, strict=True) if kind == "number"]
    able = [[p for p in context.characters if p.facts[task.fact or ""] == number] for number in wanted]
    for who in product(*able):
        if len({character.id for character in who}) == len(who):
            yield who


def _check_comparable(at: int, sentence: GappedSentence) -> None:
    """Refuses metres beside kilograms: the measures are tried out with a number in every gap."""
    if any(token.unit for token in sentence.tokens) and not any(_compares(sentence, number) for number in (1, 2)):
        message = f'"{written_out(sentence.asked)}" puts amounts together that cannot be compared.'
        raise Unsolvable(("sentences", at), message, "use units of one kind, such as cm and m.")


def _compares(sentence: GappedSentence, number: int) -> bool:
    """Whether its sides can be set side by side with a number in every gap."""
    try:
        worths = [quantity_of(fill_in(side, [number] * len(sentence.gaps))) for side in sentence.sides]
        return all(one.compare(other) in (-1, 0, 1) for one, other in pairwise(worths))
    except (UnlikeQuantities, ZeroDivisionError):
        return False
