"""What ``check --unread`` lists: each stretch that may be a number sentence and was left alone, where, and why."""

from __future__ import annotations

from collections.abc import Iterator

from ..activities.on_pages import texts_of
from ..parse.number_sentence import find_unread
from ..reading import Reading
from .terminal import spell_out


def list_unread(reading: Reading) -> Iterator[tuple[str, str]]:
    """The path of a page, and a line with the place, the words and the reason."""
    for page in reading.collection.documents if reading.collection else ():
        told = (text for activity in reading.activities[page.path] for text in texts_of(activity))
        for text in (*page.placed_texts, *told):
            for left in find_unread(text.text):
                line = f"{text.place(left.start, left.text)}  {left.text}  ({left.why})"
                yield page.path, spell_out(line)
