"""The pages of a made-up book as an author would write them: record, sessions, a home activity."""

from __future__ import annotations

import json
from dataclasses import dataclass
from random import Random

from storymaths.model.concept import Concept
from storymaths.model.fields import year_name
from storymaths.model.reference import Reference

from .many_words import DOINGS, FOLK, MOODS, THINGS, name, place

Codes = dict[str, list[str]]
_CHECKED_OUT = ("counter", "interlocking-cube")
_PRINTED = ("recording-sheet", "number-card", "cast-card", "balance-mat", "sign-card")
_PLAIN = ("whiteboard", "whiteboard-pen", "pencil", "plain-paper", "tray", "paper-plate", "sticky-notes", "sugar-paper")
_KITCHEN = ("plain-paper", "plastic-cup", "spoon", "socks", "paper-strip", "bowl", "pencil", "tray")
_NOTE = "Count them out and count them back, and keep them from children under three."


@dataclass(frozen=True)
class Tale:
    """What a made-up book is about."""

    number: int
    year: int
    where: str
    hero: str
    friend: str
    folk: str
    things: str
    concepts: list[Concept]
    themes: list[str]


def a_tale(number: int, reference: Reference) -> Tale:
    """The tale of that number; always the same one."""
    chance = Random(number)
    year = chance.choice((0, 1, 1, 2, 2, 2, 3, 3, 4, 4, 5, 6))
    living = [idea for idea in reference.concepts.values() if codes_of(idea, year, reference)]
    return Tale(
        number, year, place(number), name(number * 2), name(number * 2 + 1), chance.choice(FOLK), chance.choice(THINGS),
        chance.sample(living, min(6, len(living))), chance.sample(list(reference.themes), chance.randint(2, 4)),
    )  # fmt: skip


def codes_of(idea: Concept, year: int, reference: Reference) -> Codes:
    """The codes of a year that teach an idea, by framework."""
    found: Codes = {}
    for framework, codes in idea.objectives.items():
        fitting = [code for code in codes if getattr(reference.objectives.get((framework, code)), "year", None) == year]
        if fitting and year in idea.grows:
            found[framework] = fitting[:2]
    return found


def _claims(codes: Codes, year: int, reference: Reference) -> dict[str, list[object]]:
    """The codes with those of their parts that need leave no trace in a lesson; where all need one, another of the year."""
    wanted = [(framework, code) for framework, listed in codes.items() for code in listed]
    others = [key for key, objective in reference.objectives.items() if objective.year == year]
    found: dict[str, list[object]] = {}
    for number, (framework, code) in enumerate([*wanted, *others]):
        if number >= len(wanted) and found:
            break
        objective = reference.objectives[framework, code]
        parts = [part.id for part in objective.parts if not part.trace]
        if parts or not objective.parts:
            found.setdefault(framework, []).append({code: parts} if objective.has_parts else code)
    return found


def book_page(tale: Tale) -> str:
    """A book's record."""
    themes, seen = tale.themes, [idea.id for idea in tale.concepts]
    return f"""---
kind: book
title: The {tale.things.title()} of {tale.where}
story_by: the bench
pictures_by: the bench
rights: own
rights_note: Made up to measure with.
pages: 16
themes: {_list(themes)}
years: {{best: {_year(tale.year)}}}
summary: {_q(f"{tale.hero} the {tale.folk} and {tale.friend} look after the {tale.things} of {tale.where}.")}
cover: {{picture: cover.svg, alt: {_q(f"{tale.hero} stands beside the {tale.things}.")}}}
maths_on_pages:
  - {{pages: 2-6, see: {_q(f"The {tale.things} stand in groups.")}, concepts: {_list(seen[:3])}}}
  - {{pages: 8-14, see: {_q(f"{tale.friend} puts the {tale.things} in order.")}, concepts: {_list(seen[3:] or seen)}}}
cast:
  - {{id: hero, name: {tale.hero}, picture: cover.svg, alt: {_q(f"{tale.hero} waves.")}, facts: {{legs: 2}}}}
---

{_told(tale, Random(-tale.number), 6)}
"""


def session_page(tale: Tale, number: int, reference: Reference, taught: set[str]) -> str:
    """One session; the words it teaches are added to ``taught``."""
    chance = Random(tale.number * 100 + number)
    ideas = [tale.concepts[(number + k) % len(tale.concepts)] for k in range(chance.choice((1, 2, 2, 3)))]
    ideas = list(dict.fromkeys(idea.id for idea in ideas))
    main = [reference.concepts[idea] for idea in ideas]
    steps = [f"{doing} together" for doing in chance.sample(DOINGS, 4)]
    minutes = chance.choice(((8, 8, 20, 9), (10, 10, 15, 5), (12, 14, 24, 10), (5, 10, 12, 3), (15, 15, 25, 20)))
    if tale.year == 0:
        minutes = (3, 5, 4, 3)
    new = [
        w.word for w in reference.words.values() if w.year == tale.year and w.concept in ideas and w.word not in taught
    ]
    new = new[:2]
    taught.update(new)
    signs = f"symbols: {{new: {_list(['+', '−', '='])}}}\n" if tale.year == 1 and number == 1 else ""
    areas = list(reference.areas)[number % 3 : number % 3 + 3] if tale.year == 0 else []
    doing = DOINGS[(tale.number * 7 + number) % len(DOINGS)]
    things = [tale.things, *chance.sample(THINGS, 3)]
    summary = f"{tale.hero} and {tale.friend} {doing.lower()} the {chance.choice(MOODS)} {tale.things}. {_say(chance, things)}"
    ask = [f"What do you notice about the {t}? {_say(chance, things)}" for t in things]
    return f"""---
kind: session
book: book-{tale.number}
title: {_q(f"{doing} the {chance.choice(MOODS)} {things[1]} of {tale.where}")}
number: {number}
year: {_year(tale.year)}
minutes: {sum(minutes)}
summary: {_q(summary)}
objectives: {json.dumps(_claims(codes_of(main[0], tale.year, reference), tale.year, reference))}
concepts: {_list(ideas)}
themes: {_list(tale.themes[:1])}
reads:
  - pages: {number * 3 - 2}-{number * 3 + 1}
    stops:
{_stops(chance, number * 3 - 2, ask, things, tale.year)}
steps:
{chr(10).join(f"  - {{name: {_q(step)}, minutes: {m}}}" for step, m in zip(steps, minutes, strict=True))}
{_set_out(chance, areas, things)}words: {{new: {_list(new)}}}
{signs}task:
  objects: {_q(_say(chance, things))}
  pictures: {_q(_say(chance, things))}
  symbols: {_q(_sum(chance, tale.year))}
stem_sentences: [{_q(f"The {tale.things} are ___ because ___.")}]
misconceptions:
{_misconceptions(chance, things)}
easier: [{_q(_say(chance, things))}, {_q(_say(chance, things))}]
harder: [{_q(_say(chance, things))}, {_q(_say(chance, things))}, {_q(_say(chance, things))}]
access:
  - {_q(_say(chance, things))}
  - {_q(_say(chance, things))}
  - {_q(_say(chance, things))}
look_for: [{_q(_say(chance, things))}, {_q(_say(chance, things))}, {_q(_say(chance, things))}]
exit_question: {{ask: {_q(ask[2])}, answer: {_q(_sum(chance, tale.year))}}}
materials: {_materials(chance)}
cautions: [{{risk: small-parts, note: {_q(_NOTE)}}}]
next: {_q(_say(chance, things))}
{_bends(tale, main[0], reference, chance, things)}---

{chr(10).join(f"## {step}{chr(10)}{chr(10)}{_told(tale, chance, 8)}{chr(10)}" for step in steps)}"""


def _set_out(chance: Random, areas: list[str], things: list[str]) -> str:
    """What is set out for the week; nothing where there are no areas."""
    told = (
        f"  - {{area: {area}, put_out: {_q(_say(chance, things))}, "
        f"say: [{_q(_say(chance, things))}], notice: [{_q(_say(chance, things))}]}}"
        for area in areas
    )
    return "\n".join(["set_out:", *told, ""]) if areas else ""


def _stops(chance: Random, first: int, ask: list[str], things: list[str], year: int) -> str:
    """As many stops as the lessons of the demonstration have, each with two answers and what to listen for."""
    return "\n".join(
        f"      - page: {first + at}\n        ask: {_q(question)}\n        hear:\n          - {_q(_say(chance, things))}\n"
        f"          - {_q(_sum(chance, year))}\n        listen_for: {_q(_say(chance, things))}"
        for at, question in enumerate(ask)
    )


def _misconceptions(chance: Random, things: list[str]) -> str:
    return "\n".join(
        f"  - says: {_q(_say(chance, things))}\n    shows: {_q(f'The {one} are taken for the {things[0]}.')}\n"
        f"    try: {_q(_say(chance, things))}"
        for one in things[1:]
    )


def home_page(tale: Tale) -> str:
    """A home activity in short words."""
    chance = Random(tale.number * 31)
    things = chance.sample(_KITCHEN, 3)
    return f"""---
kind: home
book: book-{tale.number}
title: {_q(f"{chance.choice(MOODS).title()} {chance.choice(THINGS)} from {tale.where}")}
number: 1
year: {_year(tale.year)}
minutes: {chance.choice((10, 12, 15))}
summary: {_q(f"Play {tale.hero} at the table. Help the {tale.folk} with the {tale.things}.")}
concepts: {_list([tale.concepts[0].id])}
themes: {_list(tale.themes[:1])}
pages: 4-6
things: {json.dumps([{"item": item, "count": chance.randint(1, 5)} for item in things])}
say_first: Look at this. What do you see?
ask: [{{ask: How do you know?, hear: I can see it.}}]
if_hard: Use less. Do it side by side.
if_easy: Use more. Ask why.
stop_when: Stop while it is fun.
what_it_is_for: It helps a child see what is the same.
cautions: [{{risk: small-parts, note: Keep it all from a baby.}}]
---

Read the page. Put the {things[0].replace("-", " ")} in a row. Now take turns. Say what you see. Move one. What is new? Put it back.
"""


def _sum(chance: Random, year: int) -> str:
    if year == 0:
        return "There are the same on each side."
    most = {1: 20, 2: 100, 3: 900}.get(year, 5000)
    a, b = chance.randint(1, most // 2), chance.randint(1, most // 2)
    return f"{a} + {b} = {a + b}, so {a + b} − {b} = {a}."


def _say(chance: Random, things: list[str]) -> str:
    one, two = chance.sample(things, 2)
    return chance.choice((
        f"The {chance.choice(MOODS)} {one} go beside the {two}, and nobody moves until the {chance.choice(FOLK)} says why.",
        f"Put the {one} where the {chance.choice(MOODS)} {two} were, and tell your partner what has changed.",
        f"Are there as many {one} as {two}? Show it with your hands before you say it.",
        f"The {chance.choice(FOLK)} wants the {one} in the {chance.choice(MOODS)} row, so the {two} must wait.",
        f"{chance.choice(DOINGS)} the {one}, then look again: which {two} are left over?",
        f"If the {one} were {chance.choice(MOODS)}, would the {two} still match? Talk about it in pairs.",
    ))  # fmt: skip


def _told(tale: Tale, chance: Random, sentences: int) -> str:
    things = [tale.things, *chance.sample(THINGS, 4)]
    said = [_say(chance, things) for _ in range(sentences)]
    who = name(chance.randint(0, 650))
    return " ".join([f"{who} and {tale.hero} come to {tale.where} in {chance.choice(MOODS)} weather.", *said])


def _materials(chance: Random) -> str:
    printed = chance.sample(_PRINTED, chance.choice((0, 0, 1, 2)))
    items = ["picture-book", *printed, *chance.sample(_PLAIN, 3), chance.choice(_CHECKED_OUT)]
    per = {"picture-book": "class"}
    rows = [
        {"item": item, "count": chance.randint(1, 4), "per": per.get(item) or chance.choice(("child", "pair", "group"))}
        for item in items
    ]
    return json.dumps(rows)


def _bends(tale: Tale, idea: Concept, reference: Reference, chance: Random, things: list[str]) -> str:
    lines = []
    for year in (tale.year - 1, tale.year + 1):
        codes = codes_of(idea, year, reference)
        if codes:
            lines.append(
                f"  {_year(year)}: {{objectives: {json.dumps(codes)}, numbers: {_q(_sum(chance, year))}, "
                f"recording: {_q(_say(chance, things))}, question: {_q(_say(chance, things))}, "
                f"why: {_q(f'It suits {year_name(year)}.')}}}"
            )
    return "bends:\n" + "\n".join(lines) + "\n" if lines else ""


def _year(year: int) -> str:
    return "Reception" if year == 0 else str(year)


def _q(words: str) -> str:
    return json.dumps(words, ensure_ascii=False)


def _list(words: list[str]) -> str:
    return json.dumps(words, ensure_ascii=False)
