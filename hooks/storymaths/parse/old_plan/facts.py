"""What the words of an old plan give for the head of a session: title, year, minutes, objectives, words, things."""

from __future__ import annotations

import re
from collections.abc import Sequence

from ...model.fields import year_name
from ...model.old_plans import PlanPart
from ...model.reference import Reference
from .as_markdown import as_text
from .sections import PlanSection, texts
from .times import minutes_in, without_times

_YEAR = re.compile(r"\b(?:years?|yr|y)\s*(?:group)?\s*[:.\t]?\s*(\d)\b", re.IGNORECASE)
_AGES = re.compile(r"\bage[sd]?\W*(\d{1,2})\s*(?:-|–|to)\s*(\d{1,2})\b", re.IGNORECASE)
_AGE_BEFORE_YEARS = 4
"""A child is five when Year 1 begins, and six when it ends (England's school years)."""
_COUNT = re.compile(r"\b(\d{1,3})\b")
_CODE = re.compile(r"[A-Z0-9]+(?:-[A-Z0-9]+)*[a-z]?")
_PIECES = re.compile(r"[,;\n•]| and ")
_SENTENCE = re.compile(r"(?:[^.?!]|\.(?=\d))*\?")


def title_in(sections: Sequence[PlanSection], reference: Reference) -> str:
    """What the plan says it is called, else its first heading that names no part, else its first line; may be empty."""
    named = [section.lines[0].text for section in sections if section.part == "title" and section.lines]
    headings = [section.heading for section in sections if section.part in (None, "title") and section.heading]
    lines = [text for text in texts(sections) if text]
    known = (text.partition("\t")[0] for text in (*named, *headings, *lines))
    return next((text for text in known if _named(text) not in ("", *reference.old_plans.passed_over)), "")


def _named(text: str) -> str:
    return " ".join(re.sub(r"[\W\d_]+", " ", text).lower().split())


def year_in(sections: Sequence[PlanSection], reference: Reference) -> int | None:
    """The first school year that is named."""
    labelled = re.compile(r"\s*(\d)\b")
    for text in _of("year", sections):
        if (found := labelled.match(text)) and int(found[1]) in reference.years:
            return int(found[1])
    for text in texts(sections):
        found = _YEAR.search(text)
        if found and int(found[1]) in reference.years:
            return int(found[1])
        ages = _AGES.search(text)
        if ages and int(ages[2]) == int(ages[1]) + 1 and (year := int(ages[1]) - _AGE_BEFORE_YEARS) in reference.years:
            return year
        for year in reference.years:
            if not year and re.search(rf"\b{year_name(year)}\b", text):
                return year
    return None


def minutes_of_all(sections: Sequence[PlanSection]) -> int | None:
    """How long the whole lesson takes, where the plan says so outside its steps."""
    rest = [section for section in sections if section.part not in ("step", "exit")]
    first = [section for section in rest if section.part == "minutes"]
    return next((found for text in texts([*first, *rest]) if (found := minutes_in(text))), None)


def objectives_in(sections: Sequence[PlanSection], reference: Reference) -> dict[str, list[dict[str, str]]]:
    """Official codes that are typed anywhere, by framework, each once: the whole of the objective."""
    typed = dict.fromkeys(code for text in texts(sections) for code in _CODE.findall(text))
    found: dict[str, list[dict[str, str]]] = {}
    for code in typed:
        framework = next((framework for framework, known in reference.objectives if known == code), None)
        if framework:
            found.setdefault(framework, []).append({code: "all"})
    return found


def words_in(sections: Sequence[PlanSection], reference: Reference) -> list[str]:
    """Words of the word bank among those listed."""
    listed = {piece.strip(" .").lower() for text in _of("words", sections) for piece in _PIECES.split(text)}
    return [
        entry.word for entry in reference.words.values() if {entry.word.lower(), *map(str.lower, entry.also)} & listed
    ]


def things_in(sections: Sequence[PlanSection], reference: Reference) -> list[dict[str, str | int]]:
    """Things of the list of materials among those to get ready, with the number that is typed beside them."""
    found: dict[str, dict[str, str | int]] = {}
    for piece in (piece.lower() for text in _of("materials", sections) for piece in _PIECES.split(text)):
        names = [
            (len(name), material.id)
            for material in reference.materials.values()
            for name in (material.name, material.plural, *material.also)
            if re.search(rf"\b{re.escape(name.lower())}\b", piece)
        ]
        if names:
            count = _COUNT.search(without_times(piece))
            item = max(names)[1]
            found.setdefault(item, {"item": item, "count": max(1, int(count[1])) if count else 1, "per": "class"})
    return list(found.values())


def lines_of_part(part: PlanPart, sections: Sequence[PlanSection]) -> list[str]:
    """What stands under the headings of a part, as Markdown, a line each."""
    return [as_text(text) for text in _of(part, sections)]


def question_in(sections: Sequence[PlanSection]) -> str:
    """The last question of what ends the lesson, as Markdown; may be empty."""
    asked = [found.strip() for text in _of("exit", sections) for found in _SENTENCE.findall(text)]
    return as_text(asked[-1]) if asked else ""


def _of(part: PlanPart, sections: Sequence[PlanSection]) -> list[str]:
    return [line.text for section in sections if section.part == part for line in section.lines]
