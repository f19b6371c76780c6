"""Who may ask the desk, and what it may touch: each attack, through the application.

Sources: the Host and Origin headers are those of RFC 9110 section 7.2 and RFC 6454; the cookie's attributes those of
RFC 6265bis; that a browser says where a request comes from is W3C's Fetch Metadata.
"""

from __future__ import annotations

import json
import os
from pathlib import Path
from typing import Any

import pytest
from project import copy_of_project
from starlette.types import ASGIApp
from storymaths.desk.lock import Lock, new_key
from storymaths.desk.server import desk_app

from .asking import Answer, Headers, ask

PORT, KEY = 4711, new_key()
HOST, ORIGIN = f"127.0.0.1:{PORT}", f"http://127.0.0.1:{PORT}"
COOKIE = ("Cookie", f"storymaths-desk-{PORT}={KEY}")
AT_HOME: Headers = [("Host", HOST), COOKIE]
SESSION = "books/cliff-house-lift/session-1.md"


@pytest.fixture(scope="module")
def root(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return copy_of_project(tmp_path_factory.mktemp("desk") / "project")


@pytest.fixture(scope="module")
def locked(root: Path) -> ASGIApp:
    return Lock(desk_app(root), KEY, PORT)


def change(locked: ASGIApp, headers: Headers, **asked: Any) -> Answer:
    """An attempt to write."""
    sent = {"source": SESSION, "before": "", "do": "type", "loc": ["title"], "text": "Mine now", **asked}
    return ask(locked, "POST", "/edit", [("Content-Type", "application/json"), *headers], json.dumps(sent).encode())


def test_the_key_comes_once_in_the_address_and_then_in_a_cookie_of_this_desk_alone(locked: ASGIApp) -> None:
    let_in = ask(locked, "GET", "/", [("Host", HOST)], query=f"key={KEY}")
    assert (let_in.status, let_in.headers["location"]) == (303, "/")
    cookie = let_in.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=strict" in cookie
    assert ask(locked, "GET", "/own/desk.js", AT_HOME).status == 200


@pytest.mark.parametrize(
    ("path", "headers", "query"),
    [
        ("/", [], ""),
        ("/", [], "key="),
        ("/", [], f"key={KEY[:-1]}"),
        ("/", [], f"key={KEY}&key={KEY}"),
        ("/page", [], f"source={SESSION}&key={KEY}"),
        ("/own/desk.js", [("Cookie", "storymaths-desk-4711=")], ""),
        ("/own/desk.js", [("Cookie", f"storymaths-desk-4712={KEY}")], ""),
        ("/own/desk.js", [("Cookie", 'storymaths-desk-4711="')], ""),
        ("/site/index.html", [], ""),
        ("/no-such-page", [], ""),
    ],
    ids=range(10),
)
def test_without_the_key_nothing_is_told(locked: ASGIApp, path: str, headers: Headers, query: str) -> None:
    refused = ask(locked, "GET", path, [("Host", HOST), *headers], query=query)
    assert refused.status == 403
    assert "storymaths desk" in refused.text
    assert KEY not in refused.text


@pytest.mark.parametrize(
    "host", ["localhost:4711", "127.0.0.1", "127.0.0.1:80", "desk.example:4711", f"{HOST}.example", "[::1]:4711", ""]
)
def test_another_host_is_refused_even_with_the_key(locked: ASGIApp, host: str) -> None:
    assert ask(locked, "GET", "/own/desk.js", [("Host", host), COOKIE]).status == 403


def test_no_host_and_two_hosts_are_refused(locked: ASGIApp) -> None:
    assert ask(locked, "GET", "/own/desk.js", [COOKIE]).status == 403
    assert ask(locked, "GET", "/own/desk.js", [("Host", HOST), *AT_HOME]).status == 403


@pytest.mark.parametrize(
    "origin",
    ["https://elsewhere.example", "null", "http://127.0.0.1:4712", "http://localhost:4711", f"{ORIGIN}.example", ""],
)
def test_another_origin_may_neither_read_nor_write(locked: ASGIApp, origin: str) -> None:
    headers = [*AT_HOME, ("Origin", origin)]
    assert ask(locked, "GET", "/own/desk.js", headers).status == 403
    assert change(locked, headers).status == 403


def test_writing_needs_the_origin_said_and_json(locked: ASGIApp, root: Path) -> None:
    before = (root / "content" / SESSION).read_bytes()
    assert change(locked, AT_HOME).status == 403, "no Origin: not a page of the desk"
    from_here = [*AT_HOME, ("Origin", ORIGIN)]
    form = ask(locked, "POST", "/edit", [("Content-Type", "text/plain"), *from_here], b"{}")
    assert form.status == 415, "what a form of another site can send"
    assert ask(locked, "PUT", "/edit", from_here, b"{}").status == 405
    assert (root / "content" / SESSION).read_bytes() == before


@pytest.mark.parametrize("site", ["cross-site", "same-site", "anything"])
def test_what_another_site_or_port_caused_is_refused(locked: ASGIApp, site: str) -> None:
    assert ask(locked, "GET", "/own/desk.js", [*AT_HOME, ("Sec-Fetch-Site", site)]).status == 403


def test_a_web_socket_is_refused(locked: ASGIApp) -> None:
    with pytest.raises(KeyError):  # no response, but a close
        _ = ask(locked, "GET", "/", AT_HOME, kind="websocket").headers["content-type"]


OUTSIDE = [
    "../site_data/site.yaml", "../../outside.md", "/etc/passwd", "books/../../outside.md", "books/cliff-house-lift/../../../outside.md",
    "..\\outside.md", "books\\cliff-house-lift\\session-1.md", "C:/outside.md", "books/cliff-house-lift/session-1.md/.", "", ".", "books",
    ".hidden.md", "books/.hidden/page.md", "books/cliff-house-lift/cover.svg", "linked.md", "linked-folder/outside.md", "none.md",
    "books/cliff-house-lift/session-1.md\0", "%2e%2e/outside.md", "hard\nbreak.md",
]  # fmt: skip


@pytest.mark.parametrize("source", OUTSIDE)
def test_no_path_leads_out_of_the_content(locked: ASGIApp, root: Path, source: str) -> None:
    outside = root.parent / "outside.md"
    outside.write_text("---\nkind: page\ntitle: Outside\nsummary: Not to be touched.\n---\n")
    for name, target in (("linked.md", outside), ("linked-folder", root.parent)):
        if not os.path.lexists(root / "content" / name):
            (root / "content" / name).symlink_to(target)
    before = outside.read_bytes()
    for path, asked in (
        ("/edit", {}),
        ("/step", {"by": -1}),
        ("/restore", {"name": "1"}),
        ("/rewrite", {"text": "x"}),
        ("/take", {"key": "x"}),
    ):
        sent = {"source": source, "before": "", "do": "type", "loc": ["title"], "text": "Mine", **asked}
        headers = [("Content-Type", "application/json"), *AT_HOME, ("Origin", ORIGIN)]
        assert ask(locked, "POST", path, headers, json.dumps(sent).encode()).status in (400, 422), path
    for path in ("/page", "/problems", "/states", "/state", "/sheets", "/offers", "/ideas", "/work-out"):
        answer = (
            ask(locked, "GET", path, AT_HOME, query=f"source={source}")
            if "\0" not in source and "\n" not in source
            else None
        )
        assert answer is None or "Outside" not in answer.text
    assert outside.read_bytes() == before


@pytest.mark.parametrize(
    "address",
    [
        "../site_data/site.yaml",
        "/etc/passwd",
        "linked.md",
        "books/cliff-house-lift/session-1.md",
        "../outside.md",
        "..%2foutside.md",
    ],
)
def test_no_address_of_the_site_leads_out_of_it(locked: ASGIApp, address: str) -> None:
    assert ask(locked, "GET", f"/site/{address}", AT_HOME).status == 404


@pytest.mark.parametrize(
    "asked",
    [
        {"kind": "page", "title": "x"},
        {"kind": "session", "title": "x", "book": "../../outside"},
        {"kind": "session", "title": "", "book": "cliff-house-lift"},
        {"kind": "home", "title": "x\ny", "book": "cliff-house-lift"},
        {"kind": "book", "title": "../../../outside"},
        {"kind": "book", "title": "../.."},
        {"kind": "series", "title": "Led away"},
    ],
)
def test_a_new_page_stands_within_the_content(locked: ASGIApp, root: Path, asked: dict[str, str]) -> None:
    outside = root.parent / "elsewhere"
    if not outside.exists():
        (root / "content" / "series").rename(outside)
        (root / "content" / "series").symlink_to(outside)
    before = {path for path in root.parent.rglob("*") if "content" not in path.parts}
    headers = [("Content-Type", "application/json"), *AT_HOME, ("Origin", ORIGIN)]
    answer = ask(locked, "POST", "/new", headers, json.dumps(asked).encode())
    assert answer.status == (200 if asked["title"].endswith("/outside") else 422)
    assert {path for path in root.parent.rglob("*") if "content" not in path.parts} == before


@pytest.mark.parametrize(
    "data", [b"", b"[]", b"{", b'{"do": "type"}', b'{"do": "no-such-thing"}', b"[" * 5000, b"\xff", b"1e999"]
)
def test_what_cannot_be_read_is_refused_in_words(locked: ASGIApp, data: bytes) -> None:
    headers = [("Content-Type", "application/json"), *AT_HOME, ("Origin", ORIGIN)]
    assert ask(locked, "POST", "/edit", headers, data).status in (400, 422)


def test_more_than_a_page_can_hold_is_not_taken_in(locked: ASGIApp) -> None:
    headers = [("Content-Type", "application/json"), *AT_HOME, ("Origin", ORIGIN)]
    assert ask(locked, "POST", "/edit", headers, b" " * 300_001).status == 413


def test_every_answer_says_what_a_browser_may_do_with_it(locked: ASGIApp) -> None:
    for path in ("/", "/own/desk.css", "/site/index.html"):
        headers = ask(locked, "GET", path, AT_HOME).headers
        assert "default-src 'self'" in headers["content-security-policy"]
        assert "unsafe" not in headers["content-security-policy"]
        assert headers["x-content-type-options"] == "nosniff"
        assert headers["referrer-policy"] == "no-referrer"
    picture = ask(locked, "GET", "/site/books/cliff-house-lift/cover.svg", AT_HOME).headers
    assert "sandbox" in picture["content-security-policy"], "a drawing opened by itself runs nothing"
