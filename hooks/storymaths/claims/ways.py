"""How many ways a section says there are, which it lists, and what it says of a statement: always, sometimes, never.

It reads paragraphs that open with "there are five ways" or rides, "five ways and no more", "all five ways" and "both
ways"; sums listed straight after; "it is sometimes true". It leaves what is asked, supposed or denied, and ways of
something named (ways to pay with two coins). Source: the activities of the section, worked out.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from ..model.body import Block, Body, Fence, Heading, Run, Runs
from .form import Form
from .number_words import NUMBER_IN_WORDS, number_in_words
from .sentences import leaves_open

_N = rf"(?P<count>\d+|{NUMBER_IN_WORDS})"
_WAYS = r"(?:ways?|answers?|solutions?)"
_OPENS = Form(
    rf"(?:for the (?:adult|grown-up)s?: ?)?there (?:are|is) (?:only |just |exactly )?{_N} (?:different )?"
    rf"(?:{_WAYS}(?P<alone>,? and no (?:more|others)| in all| altogether|)|[a-z]+(?:,? and no (?:more|others)| in all|"
    rf" altogether))(?P<end>[.:])"
)
_NO_MORE = Form(rf"\b{_N} {_WAYS},? and no (?:more|others)\b")
_ALL = Form(
    rf"\b(?:all (?:of )?(?:the )?{_N} {_WAYS}|(?:find|finds|found|have) (?P<both>both ways))\b(?! of| to| round)"
)
_LIST = Form(r" ?(?:they|these|the ways|the answers|the rides) are (?P<list>[^.]*=[^.]*)\.")
_VERDICT = Form(
    r"(?:^(?:for the (?:adult|grown-up)s?: ?)?|\b(?:it|this|that|the statement|the answer) is"
    r" )(?P<verdict>always|sometimes|never)(?: true)?(?=[.,;:]| and | because | since )"
)


class Told(NamedTuple):
    """A count, or a verdict, that a section tells: its line, its words and what they say."""

    line: int
    words: str
    says: int | str
    listed: int | None = None
    """How many are listed straight after, where some are."""


def told_ways(blocks: Sequence[Block]) -> Iterator[Told]:
    """The counts of ways that a section tells."""
    for runs in _paragraphs(blocks):
        text = _text(runs)
        plain = text.lower()
        opening = _OPENS.match(plain)
        if opening and not leaves_open(plain[: opening.end()]):
            listed = _LIST.match(plain, opening.end()) if opening["end"] == "." else None
            yield _told(runs, text, opening, listed["list"].count("=") if listed else None)
        for match in (*_NO_MORE.finditer(plain), *_ALL.finditer(plain)):
            if (opening is None or match.start() > opening.end()) and not leaves_open(_sentence(plain, match)):
                yield _told(runs, text, match)


def told_verdicts(blocks: Sequence[Block]) -> Iterator[Told]:
    """What a section says of its statement: that it is always true, or sometimes, or never."""
    for runs in _paragraphs(blocks):
        text = _text(runs)
        for match in _VERDICT.finditer(text.lower()):
            sentence = _sentence(text.lower(), match).replace("never", "")
            if not leaves_open(sentence):
                yield Told(_line(runs, match.start()), text[match.start() : match.end()], match["verdict"])


def _paragraphs(blocks: Sequence[Block]) -> Iterator[Runs]:
    return (runs for runs in Body(tuple(b for b in blocks if not isinstance(b, (Fence, Heading)))).lines if runs)


def _text(runs: Runs) -> str:
    return "".join(_shown(run) for run in runs)


def _shown(run: Run) -> str:
    return " " if run.kind == "break" else "" if run.kind == "html" else run.text


def _sentence(plain: str, match: re.Match[str]) -> str:
    start = max(plain.rfind(mark, 0, match.start()) for mark in (". ", "? ", "! ")) + 1
    end = Form(r"[.?!]").search(plain, match.end())
    return plain[start : end.end() if end else None]


def _told(runs: Runs, text: str, match: re.Match[str], listed: int | None = None) -> Told:
    count = match["count"]
    said = 2 if count is None else int(count) if count.isdigit() else number_in_words(count)
    start = match.start()
    words = text[start : match.end()]
    if words.lower().startswith("for the"):
        start += words.index(":") + 1
        words = text[start : match.end()]
    start += len(words) - len(words.lstrip())
    return Told(_line(runs, start), words.strip(" .:"), said, listed)


def _line(runs: Runs, at: int) -> int:
    for run in runs:
        at -= len(_shown(run))
        if at < 0:
            return run.line
    return runs[-1].line
