"""Who may ask the desk: the browser that was given its address, on this machine, from the desk's own pages."""

from __future__ import annotations

import secrets
from collections.abc import Mapping
from http.cookies import CookieError, SimpleCookie
from urllib.parse import parse_qs

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse, RedirectResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

HOST = "127.0.0.1"
KEY = "key"
"""What the key is called in the address that is printed."""
_READS = ("GET", "HEAD")
_REFUSED = (
    "The desk opens only from the address that `storymaths desk` printed in its window. "
    "Go back to that window and open the address from there."
)
_HEADERS: Mapping[str, str] = {
    # CSP level 3: everything comes from the desk itself, and nobody may put it into a frame but the desk.
    "content-security-policy": "default-src 'self'; script-src 'self'; style-src 'self'; object-src 'none'; "
    "frame-src 'self'; frame-ancestors 'self'; base-uri 'none'; form-action 'self'",
    "x-content-type-options": "nosniff",
    "referrer-policy": "no-referrer",
    "cross-origin-resource-policy": "same-origin",
    "cross-origin-opener-policy": "same-origin",
    "cache-control": "no-store",
}


def new_key() -> str:
    """A key nobody can guess: 256 random bits."""
    return secrets.token_urlsafe(32)


class Lock:
    """Lets a request through to the desk, or refuses it before the desk hears of it.

    The key comes once, in the address; then a cookie carries it, which the browser sends with no request that another
    site caused. A page of another site has another Origin; a name that was bent to this machine is another Host.
    """

    def __init__(self, desk: ASGIApp, key: str, port: int) -> None:
        self._desk, self._key = desk, key
        self._host = f"{HOST}:{port}"
        self._origin = f"http://{self._host}"
        self._cookie = f"storymaths-desk-{port}"  # cookies know no ports: two desks would take each other's

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answers one request."""
        if scope["type"] == "lifespan":
            await self._desk(scope, receive, send)
        elif scope["type"] == "http":
            await self._answer(scope)(scope, receive, _with_headers(send))
        else:  # the desk speaks HTTP alone
            await send({"type": "websocket.close", "code": 1008})

    def _answer(self, scope: Scope) -> ASGIApp:
        headers = Headers(scope=scope)
        if headers.getlist("host") != [self._host] or not self._from_here(scope["method"], headers):
            return PlainTextResponse(_REFUSED, 403)
        given = parse_qs(scope["query_string"].decode("latin-1")).get(KEY, [])
        if scope["path"] == "/" and scope["method"] == "GET" and len(given) == 1 and self._is_key(given[0]):
            return self._let_in()
        return self._desk if self._is_key(self._carried(headers)) else PlainTextResponse(_REFUSED, 403)

    def _from_here(self, method: str, headers: Headers) -> bool:
        """Whether a page of the desk asks, or the author; to change anything, it has to say so."""
        origins, site = headers.getlist("origin"), headers.get("sec-fetch-site", "none")
        if origins and origins != [self._origin]:
            return False
        if method not in _READS and not origins:
            return False
        # From another port of this machine a browser calls it the same site.
        return site in ("none", "same-origin")

    def _carried(self, headers: Headers) -> str:
        cookies: SimpleCookie = SimpleCookie()
        try:
            cookies.load(headers.get("cookie", ""))
        except CookieError:
            return ""
        return cookies[self._cookie].value if self._cookie in cookies else ""

    def _is_key(self, given: str) -> bool:
        return secrets.compare_digest(given.encode(), self._key.encode())

    def _let_in(self) -> ASGIApp:
        """Takes the key out of the address, so that it stands in no history and on no screen."""
        answer = RedirectResponse("/", 303)
        answer.set_cookie(self._cookie, self._key, httponly=True, samesite="strict", path="/")
        return answer


def _with_headers(send: Send) -> Send:
    async def send_guarded(message: Message) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in _HEADERS.items():
                headers.setdefault(name, value)
        await send(message)

    return send_guarded
