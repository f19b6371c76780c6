"""Asks the desk as a browser would, or as one that means ill would: through its application, with no socket opened."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Awaitable, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from typing import Any
from urllib.parse import quote, urlencode

from starlette.types import ASGIApp, Message

Headers = Sequence[tuple[str, str]]


@dataclass(frozen=True)
class Answer:
    """What came back."""

    status: int
    headers: Mapping[str, str]
    data: bytes

    @property
    def text(self) -> str:
        """Its words."""
        return self.data.decode()

    def json(self) -> Any:
        """Its data."""
        return json.loads(self.data)


async def _done(answering: Awaitable[None]) -> None:
    await answering


def ask(
    app: ASGIApp, method: str, path: str, headers: Headers = (), data: bytes = b"", query: str = "", kind: str = "http"
) -> Answer:
    """One request. The path goes in as it is."""
    scope = {
        "type": kind,
        "asgi": {"version": "3.0"},
        "http_version": "1.1",
        "method": method,
        "scheme": "http",
        "path": path,
        "raw_path": quote(path).encode(),
        "root_path": "",
        "query_string": query.encode(),
        "headers": [(name.lower().encode("latin-1"), value.encode("latin-1")) for name, value in headers],
        "client": ("127.0.0.1", 50_000),
        "server": ("127.0.0.1", 80),
    }
    sent: list[Message] = []

    given = iter([{"type": "http.request", "body": data, "more_body": False}])

    async def receive() -> Message:
        for message in given:
            return message
        await asyncio.Event().wait()  # nobody goes away
        return {"type": "http.disconnect"}

    async def send(message: Message) -> None:
        sent.append(message)

    with ThreadPoolExecutor(1) as thread:  # the thread of a browser test has an event loop of its own
        thread.submit(asyncio.run, _done(app(scope, receive, send))).result()
    start = sent[0]
    told = {name.decode().lower(): value.decode("latin-1") for name, value in start.get("headers", ())}
    return Answer(start.get("status", 0), told, b"".join(one.get("body", b"") for one in sent[1:]))


@dataclass(frozen=True)
class Tab:
    """A page open at the desk, without its lock."""

    app: ASGIApp
    source: str

    def get(self, path: str, **query: str) -> Answer:
        """Asks about the page."""
        return ask(self.app, "GET", path, query=urlencode({"source": self.source, **query}))

    def post(self, path: str, asked: Mapping[str, Any], before: str | None = None) -> Answer:
        """Asks for a change to the page as it is now, or as it was ``before``."""
        mark = self.mark if before is None else before
        data = json.dumps({**asked, "source": self.source, "before": mark}).encode()
        return ask(self.app, "POST", path, [("content-type", "application/json")], data)

    @property
    def mark(self) -> str:
        """Of the page as it is now."""
        return str(self.get("/state").json()["mark"])
