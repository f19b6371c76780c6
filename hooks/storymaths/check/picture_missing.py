"""Pictures that are named and are not there."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import partial

from ..model.address import CONTENT, resolve, source_of
from ..model.book import Book
from ..model.collection import Collection
from ..model.document import Document
from ..model.page_fields import PageFields
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from ..model.session import Session
from ..parse.suggestion import did_you_mean
from .html_found import addresses_in, texts_of

RULE = Rule(
    name="picture-missing",
    says="A picture that is named is in the folder it is said to be in.",
    why="A broken picture on a card is found when thirty have been cut out.",
    source=HOUSE_RULE,
    wrong="picture: cast/oter.svg",
    right="picture: cast/otter.svg",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each picture of a cover, a cast, a question or a text that is no file of the collection."""
    files = {source_of(file) for file in collection.files}
    small = {file.lower() for file in files}
    reference = collection.reference
    if reference.site.mark and reference.site.mark not in files:
        yield RULE.problem(
            reference.locators["site.yaml"].place(("mark",)),
            f"There is no picture {CONTENT}{reference.site.mark}." + did_you_mean(reference.site.mark, files),
            "put the picture there, or take the line out: an open book then stands before the name.",
        )
    for page, picture, place in _pictures(collection):
        wanted = resolve(picture, page.source)
        # A file that only has a capital letter in its name is told by the rule on names, and mended by it.
        if ":" not in picture and wanted not in files and wanted not in small:
            yield RULE.problem(
                place(),
                f"There is no picture {CONTENT}{wanted}." + did_you_mean(wanted, files),
                "correct its name, or put the picture there.",
            )


def _pictures(collection: Collection) -> Iterator[tuple[Document[PageFields], str, Callable[[], Place]]]:
    for page in collection.documents:
        if isinstance(page.fields, Book):
            if page.fields.cover:
                yield page, page.fields.cover.picture, partial(page.place, "cover", "picture")
            for index, character in enumerate(page.fields.cast):
                if character.picture:
                    yield page, character.picture, partial(page.place, "cast", index, "picture")
        if isinstance(page.fields, Session) and (shown := page.fields.exit_question.picture):
            yield page, shown.picture, partial(page.place, "exit_question", "picture", "picture")
        for text in texts_of(page):
            for address in addresses_in(text.content):
                if address.picture:
                    yield page, address.to, partial(text.place, address.line, address.to or address.written)
