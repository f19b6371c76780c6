"""Lists of links to sessions, as tables of coverage are full of them: each session's link is made once a page."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from html import escape

from markupsafe import Markup

from ..covers.taught import SessionPage
from ..model.address import link

SessionName = Callable[[SessionPage], tuple[str, str]]
"""What a session is called: words that the sessions of one book share, and its number."""

MOST = 6
"""More are counted and left to the page of the objective."""


class SessionLinks:
    """Makes the lists of one page, which stands at source ``here``."""

    def __init__(self, here: str, name: SessionName) -> None:
        self._here, self._name = here, name
        self._made: dict[str, tuple[str, str, str]] = {}

    def __call__(self, pages: Sequence[SessionPage], more: str) -> Markup:
        """Links with commas between; where a book has been named, its next sessions are numbers to the eye."""
        parts: list[str] = []
        before = ""
        for page in pages[:MOST]:
            address, lead, number = self._of(page)
            if lead == before:
                parts.append(f', <a href="{address}"><span class="only-heard">{lead} </span>{number}</a>')
            else:
                parts.append(f'{"; " if parts else ""}<a href="{address}">{lead} {number}</a>')
            before = lead
        if len(pages) > MOST:
            parts.append(f' <a href="{link(more, self._here)}">and {len(pages) - MOST} more</a>')
        return Markup("".join(parts))

    def _of(self, page: SessionPage) -> tuple[str, str, str]:
        if page.path not in self._made:
            lead, number = self._name(page)
            self._made[page.path] = (escape(link(page.source, self._here)), escape(lead), escape(number))
        return self._made[page.path]
