"""HTML among an author's words beyond the few tags and attributes that are on the list."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.markup import ANYWHERE, TAGS
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .html_found import Tag, Text, attributes_listed_in, tags_in, texts_of

RULE = Rule(
    name="html-not-on-list",
    says="HTML in a page is limited to a few tags, and to attributes that only say something: no script, no frame, no style.",
    why="A page of lessons shows words and pictures; what can run or load something can hurt the class that opens it.",
    source=HOUSE_RULE,
    wrong='<b onclick="…">six</b>',
    right="**six**",
)
_LIST = ", ".join(sorted(TAGS))
_LISTABLE = ANYWHERE.union(*TAGS.values(), {"start"})


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each tag and each attribute that is not on the list, in front matter and body."""
    for page in collection.documents:
        for text in texts_of(page):
            for tag in tags_in(text.content):
                yield from _in_tag(text, tag)
            for name, line in attributes_listed_in(text.content):
                if name.lower() not in _LISTABLE:
                    yield _attribute(text, name.lower(), line, name)


def _in_tag(text: Text, tag: Tag) -> Iterator[Problem]:
    if tag.name not in TAGS:
        yield RULE.problem(
            text.place(tag.line, tag.written),
            f"{_shown(tag.written)} is not on the list of HTML that a page may hold.",
            f"take it out, or say it in Markdown; the list is {_LIST}. "
            "To show such a thing as words, put it between backticks.",
        )
        return
    for name in tag.attributes:
        if name not in TAGS[tag.name] | ANYWHERE:
            yield _attribute(text, name, tag.line, tag.written)


def _attribute(text: Text, name: str, line: int, written: str) -> Problem:
    could = "could run a script" if name.startswith("on") else "is not on the list"
    return RULE.problem(
        text.place(line, written),
        f'The attribute "{_shown(name)}" {could}.',
        f"take it out; the attributes a page may set are {', '.join(sorted(_LISTABLE))}.",
    )


def _shown(written: str) -> str:
    line = " ".join(written.split())
    return f"{line[:40]}…" if len(line) > 40 else line
