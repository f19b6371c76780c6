"""Listens to a page: what it asks for, and what its Content Security Policy refuses it."""

from __future__ import annotations

from dataclasses import dataclass, field

from playwright.sync_api import ConsoleMessage, Page

_LISTEN = (
    "document.addEventListener('securitypolicyviolation', (e) => broken(`${e.violatedDirective} ${e.blockedURI}`));"
)


@dataclass
class Watched:
    """A page, and what was heard of it since it was new."""

    page: Page
    asked: list[str] = field(default_factory=list)
    """Every address, in order."""
    refused: list[str] = field(default_factory=list)


def watch(page: Page) -> Watched:
    """Listens to a new page from now on."""
    watched = Watched(page)

    def heard(what: str) -> None:
        watched.refused.append(what)

    def note(message: ConsoleMessage) -> None:
        if "Content Security Policy" in message.text:
            watched.refused.append(message.text)

    page.expose_function("broken", heard)
    page.add_init_script(_LISTEN)
    page.on("console", note)
    page.on("request", lambda request: watched.asked.append(request.url))
    return watched
