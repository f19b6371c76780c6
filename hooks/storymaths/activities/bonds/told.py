"""Bonds put into words and drawings: the task, each way, and how one knows that these are all."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

from ...model.activity import Answer, Context, Figure, Solution, Task
from ..met import demands_met
from ..saying import capital, counted, listed, number_word, written
from .found import Bonds, Way
from .why import note_of, slip_in

if TYPE_CHECKING:
    from . import BondsFields

_WORDS = ("part", "whole", "pair", "altogether", "tens", "number bond", "share")
_MOST_STEPS_DRAWN = 21


def told(fields: BondsFields, context: Context, bonds: Bonds) -> Solution:
    """The solution. In Reception, which has met no signs, everything is said in words."""
    signs = context.year.year > 0
    answers = tuple(_answer(way, fields, bonds, signs) for way in bonds.ways)
    playing = bonds.pickers or bonds.holders
    shows = tuple(written(int(character.facts[fields.fact or ""])) for character in bonds.pickers)
    task = Task(
        ask=fields.ask or _ask(fields, bonds, signs),
        characters=playing,
        shows=shows,
        lines=_lines(bonds, len(bonds.ways[0].parts) if bonds.ways else fields.parts) if signs else (),
        figures=(_model(fields, bonds),),
    )
    demands = demands_met(task, answers, _WORDS)
    # Said without signs it is adding all the same.
    reckoned = {number for way in bonds.ways for number in (bonds.whole, *way.parts)}
    return Solution(
        task=task,
        answers=answers,
        demands=replace(demands, calculated=tuple(sorted({*demands.calculated, *map(Fraction, reckoned)}))),
        steps=max(1, bonds.missing - 1 if bonds.pickers or not bonds.known else bonds.missing) + (len(answers) > 1),
        note=note_of(fields, bonds),
        likely_error=slip_in(bonds, fields),
        answer_figures=_stairs(bonds),
    )


def _answer(way: Way, fields: BondsFields, bonds: Bonds, signs: bool) -> Answer:
    parts = [written(part) for part in way.parts]
    whole = written(bonds.whole)
    says = f"{listed(parts)} make {whole}"
    if bonds.pickers:
        says = f"{capital(listed([character.name for character in way.who]))} make {whole}"
    elif bonds.holders:
        has = [f"{p.name} has {counted(part, fields.things or '')}" for p, part in zip(way.who, way.parts, strict=True)]
        says = capital(listed(has))
    data = {"whole": bonds.whole, "parts": list(way.parts)} | ({"who": [p.id for p in way.who]} if way.who else {})
    return Answer(says, _worked(way, bonds, parts, whole) if signs else f"{listed(parts)} make {whole}.", data)


def _worked(way: Way, bonds: Bonds, parts: list[str], whole: str) -> str:
    if bonds.missing == 1 and bonds.known:
        return f"{' − '.join([whole, *parts[:-1]])} = {parts[-1]}."
    return f"{' + '.join(parts)} = {whole}."


def _lines(bonds: Bonds, parts: int) -> tuple[str, ...]:
    known = [written(part) for part in bonds.known]
    whole = written(bonds.whole) if bonds.missing else "___"
    return (f"{whole} = {' + '.join([*known, *['___'] * (parts - len(known))])}",)


def _ask(fields: BondsFields, bonds: Bonds, signs: bool) -> str:
    things = fields.things or ""
    whole = counted(bonds.whole, things)
    if bonds.missing == 0:
        end = "What is the whole?" if signs else "How many are there altogether?"
        return f"The parts are {listed([written(part) for part in bonds.known])}. {end}"
    if bonds.pickers:
        return f"Which {number_word(bonds.missing)} make {whole} together? Find every way."
    names = [character.name for character in bonds.holders]
    if bonds.known:
        known = (
            f"{'One part is' if len(bonds.known) == 1 else 'Parts are'} {listed([written(p) for p in bonds.known])}."
        )
        rest = "the other part" if bonds.missing == 1 else f"the other {number_word(bonds.missing)} parts"
        asked = f"What is {rest}?" if bonds.missing == 1 else f"What can {rest} be? Find every way."
        start = f"The whole is {whole}." if signs else f"There are {whole} altogether."
        return f"{start} {known} {asked}{_limits(fields)}"
    if names:
        return f"Share {whole} between {listed(names)}. Find every way.{_limits(fields)}"
    swaps = " The same parts in another order are another way." if fields.order == "counts" else ""
    return f"Make {whole} from {number_word(bonds.missing)} parts. Find every way.{_limits(fields)}{swaps}"


def _limits(fields: BondsFields) -> str:
    told = []
    if fields.step > 1:
        told.append(f"Count in steps of {written(fields.step)}.")
    if fields.smallest > 0:
        told.append(f"Each part is {written(fields.smallest)} or more.")
    if fields.largest is not None:
        told.append(f"No part is more than {written(fields.largest)}.")
    if fields.different:
        told.append("No two parts are the same.")
    return f" {' '.join(told)}" if told else ""


def _model(fields: BondsFields, bonds: Bonds) -> Figure:
    whole = written(bonds.whole) if bonds.missing else "?"
    parts = [written(part) for part in bonds.known] + ["?"] * bonds.missing
    said = listed([part.replace("?", "an empty box") for part in parts])
    shown = "is an empty box" if whole == "?" else f"is {whole}"
    return Figure(
        "part-whole",
        {"whole": whole, "parts": parts},
        f"A part–whole model: the whole {shown}, the parts are {said}.",
    )


def _stairs(bonds: Bonds) -> tuple[Figure, ...]:
    """The ways as bars of two colours under one another, when they are pairs and small enough to draw."""
    pairs = [list(way.parts) for way in bonds.ways]
    drawable = 1 < len(pairs) <= _MOST_STEPS_DRAWN and 0 < bonds.whole <= 20 and bonds.split is not None
    if not drawable or any(len(pair) != 2 for pair in pairs):
        return ()
    said = "; ".join(f"{a} and {b}" for a, b in pairs)
    return (Figure("bond-stairs", {"rows": pairs}, f"Bars of {bonds.whole} squares in two colours: {said}."),)
