"""The desk as a web application: what is asked, what is answered. Who may ask is decided before (``lock.py``)."""

from __future__ import annotations

import json
from collections.abc import Awaitable, Callable, Mapping
from pathlib import Path
from typing import Any
from urllib.parse import quote

from pydantic import ValidationError
from starlette.applications import Starlette
from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import FileResponse, HTMLResponse, JSONResponse, PlainTextResponse, RedirectResponse, Response
from starlette.routing import Route

from ..edits.edit import EditRefused
from ..edits.save import ChangedOutside, hash_of
from ..publish import starters
from .asked import ASKED
from .asked_edits import edits_for
from .pages import Pages
from .states import difference

_MOST_SENT = 300_000
_TYPES: Mapping[str, str] = {
    ".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
    ".json": "application/json", ".svg": "image/svg+xml", ".png": "image/png", ".jpg": "image/jpeg",
    ".webp": "image/webp", ".woff2": "font/woff2", ".pdf": "application/pdf", ".xml": "text/xml; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
}  # fmt: skip
# A picture that is opened by itself must not run: SVG can hold scripts.
_STILL = {"content-security-policy": "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox"}
_PRINTED = {"content-security-policy": "frame-ancestors 'self'"}  # a browser shows PDF by a program of its own
Sent = dict[str, Any]


class _TooMuch(Exception):
    """More was sent than any page holds."""


class DeskApp:
    """The routes, each a method."""

    def __init__(self, pages: Pages) -> None:
        self._pages = pages

    def application(self) -> Starlette:
        """The application, for a server or a test."""
        return Starlette(
            routes=[
                Route("/", self._collection),
                Route("/page", self._page),
                Route("/problems", self._problems),
                Route("/work-out", self._work_out),
                Route("/states", self._states),
                Route("/sheets", self._sheets),
                Route("/offers", self._offers),
                Route("/ideas", self._ideas),
                Route("/state", self._state),
                Route("/own/{name}", self._own),
                Route("/site/{address:path}", self._site),
                Route("/edit", self._sent(self._edit), methods=["POST"]),
                Route("/step", self._sent(self._step), methods=["POST"]),
                Route("/restore", self._sent(self._restore), methods=["POST"]),
                Route("/take", self._sent(self._take), methods=["POST"]),
                Route("/rewrite", self._sent(self._rewrite), methods=["POST"]),
                Route("/new", self._sent(self._new), methods=["POST"]),
            ],
            exception_handlers={EditRefused: _refused, ChangedOutside: _changed_outside, _TooMuch: _too_much},
        )

    def _collection(self, request: Request) -> Response:
        return HTMLResponse(self._pages.collection())

    def _page(self, request: Request) -> Response:
        return HTMLResponse(self._pages.page(_source(request)))

    def _problems(self, request: Request) -> Response:
        return JSONResponse(self._pages.beside.problems(_source(request)))

    def _work_out(self, request: Request) -> Response:
        number = request.query_params.get("activity", "")
        if not number.isdecimal() or len(number) > 4:
            raise EditRefused("There is no such activity in the page.")
        return HTMLResponse(self._pages.beside.worked_out(_source(request), int(number)))

    def _states(self, request: Request) -> Response:
        return HTMLResponse(self._pages.beside.states(_source(request)))

    def _sheets(self, request: Request) -> Response:
        return HTMLResponse(self._pages.beside.sheets(_source(request)))

    def _offers(self, request: Request) -> Response:
        return HTMLResponse(self._pages.beside.offers(_source(request)))

    def _ideas(self, request: Request) -> Response:
        return HTMLResponse(self._pages.beside.ideas(_source(request), request.query_params.get("year", "")))

    def _state(self, request: Request) -> Response:
        """Whether a page is still as its tab has it; a tab that is open asks now and then, and keeps the desk going."""
        source = request.query_params.get("source")
        return JSONResponse({"mark": self._pages.desk.open(source).mark if source else ""})

    def _own(self, request: Request) -> Response:
        return _file(request.path_params["name"], self._pages.own(request.path_params["name"]))

    def _site(self, request: Request) -> Response:
        address = request.path_params["address"]
        return _file(address, self._pages.beside.drawn(address))

    def _edit(self, sent: Sent) -> Response:
        """One change. The form comes with the answer where it is another now."""
        source = str(sent.pop("source", ""))
        before = str(sent.pop("before", ""))
        asked = ASKED.validate_python(sent)
        opened = self._pages.read(source, before)
        saved = self._pages.desk.change(source, before, edits_for(asked, opened), self._pages.box(asked))
        return JSONResponse(self._pages.after(source, opened, saved))

    def _step(self, sent: Sent) -> Response:
        by = -1 if sent.get("by") == -1 else 1
        source = str(sent.get("source", ""))
        saved = self._pages.desk.step(source, str(sent.get("before", "")), by)
        return JSONResponse(self._pages.after(source, None, saved))

    def _restore(self, sent: Sent) -> Response:
        source = str(sent.get("source", ""))
        saved = self._pages.desk.restore(source, str(sent.get("before", "")), str(sent.get("name", "")))
        return JSONResponse(self._pages.after(source, None, saved))

    def _take(self, sent: Sent) -> Response:
        """A proposal put in."""
        source, before = str(sent.get("source", "")), str(sent.get("before", ""))
        opened = self._pages.read(source, before)
        edit = self._pages.beside.offered(source, opened.text, str(sent.get("key", "")))
        return JSONResponse(self._pages.after(source, opened, self._pages.desk.change(source, before, [edit])))

    def _rewrite(self, sent: Sent) -> Response:
        source = str(sent.get("source", ""))
        saved = self._pages.desk.rewrite(source, str(sent.get("before", "")), str(sent.get("text", "")))
        return JSONResponse(self._pages.after(source, None, saved))

    def _new(self, sent: Sent) -> Response:
        try:
            source = self._pages.start(str(sent.get("kind", "")), str(sent.get("title", "")), str(sent.get("book", "")))
        except starters.AlreadyThere:
            raise EditRefused("There is a page of that name already. Give it another title.") from None
        except starters.NoSuchBook:
            raise EditRefused("There is no such book.") from None
        return JSONResponse({"page": f"/page?source={quote(source)}"})

    def _sent(self, act: Callable[[Sent], Response]) -> Callable[[Request], Awaitable[Response]]:
        """An endpoint that acts on what was sent, which is JSON of a fair size and said to be so."""

        async def answer(request: Request) -> Response:
            if request.headers.get("content-type") != "application/json":
                return PlainTextResponse("The desk takes JSON.", 415)
            data = b""
            async for chunk in request.stream():
                data += chunk
                if len(data) > _MOST_SENT:
                    raise _TooMuch
            try:
                sent = json.loads(data)
                if not isinstance(sent, dict):
                    raise ValueError("not an object")
                return await run_in_threadpool(act, sent)
            except (ValidationError, ValueError, RecursionError) as error:
                if isinstance(error, EditRefused):
                    raise
                return PlainTextResponse("The desk cannot read what was sent.", 400)

        return answer


def _source(request: Request) -> str:
    return request.query_params.get("source", "")


def _file(address: str, found: bytes | Path | None) -> Response:
    ending = Path(address).suffix
    if found is None or ending not in _TYPES:
        return PlainTextResponse("There is nothing at this address.", 404)
    headers = _STILL if _TYPES[ending].startswith("image/") else _PRINTED if ending == ".pdf" else None
    if isinstance(found, Path):
        return FileResponse(found, headers=headers, media_type=_TYPES[ending])
    return Response(found, headers=headers, media_type=_TYPES[ending])


def _refused(request: Request, error: Exception) -> Response:
    if request.method == "GET" and "text/html" in request.headers.get("accept", ""):
        return RedirectResponse("/", 303)
    return JSONResponse({"refused": str(error)}, 422)


def _changed_outside(request: Request, error: Exception) -> Response:
    assert isinstance(error, ChangedOutside)
    return JSONResponse(
        {
            "refused": "This file has been changed by another program since it was opened here. Nothing was written over it.",
            "mark": hash_of(error.theirs.encode()),
            "difference": difference(error.theirs, error.ours),
        },
        409,
    )


def _too_much(request: Request, error: Exception) -> Response:
    return PlainTextResponse("That is more than a page can hold.", 413)
