"""``storymaths serve`` for whoever asks it over HTTP, and how it begins and ends."""

from __future__ import annotations

import contextlib
import http.client
import signal
import socket
import sys
import threading
import urllib.error
import urllib.request
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from built import copy_that_was_built
from command import storymaths
from storymaths.live.text_index import LiveTextIndex

from .serving import Served, storymaths_serve

SESSION = "books/cliff-house-lift/session-2"


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Served]:
    """A copy of the project, which a test leaves as it found it."""
    with storymaths_serve(copy_that_was_built(tmp_path_factory.mktemp("serve") / "project")) as one:
        yield one


def get(address: str) -> tuple[int, str, bytes]:
    """The code, the type and the content of an answer."""
    try:
        with urllib.request.urlopen(address, timeout=120) as answer:
            return answer.status, answer.headers["Content-Type"], answer.read()
    except urllib.error.HTTPError as answer:
        return answer.code, answer.headers["Content-Type"], answer.read()


@pytest.mark.parametrize(
    ("address", "code", "what"),
    [
        ("", 200, "text/html; charset=utf-8"),
        (f"{SESSION}.html", 200, "text/html; charset=utf-8"),
        ("books/", 200, "text/html; charset=utf-8"),
        ("look/site.css", 200, "text/css; charset=utf-8"),
        ("look/session.js", 200, "text/javascript; charset=utf-8"),
        ("fonts/text.woff2", 200, "font/woff2"),
        ("finder-data.json", 200, "application/json; charset=utf-8"),
        (f"{SESSION}-plan.pdf", 200, "application/pdf"),
        (f"{SESSION}-plan.png", 200, "image/png"),
        ("nowhere.html", 404, "text/html; charset=utf-8"),
        ("../site_data/site.yaml", 404, "text/html; charset=utf-8"),
        ("%2e%2e/site_data/site.yaml", 404, "text/html; charset=utf-8"),
    ],
)
def test_each_address_is_answered(served: Served, address: str, code: int, what: str) -> None:
    given, kind, content = get(served.address + address)
    assert (given, kind) == (code, what)
    assert content


def test_the_text_index_is_made_when_it_is_asked_for(served: Served) -> None:
    """What the finder asks for first, and what that leads to (Pagefind's own entry names its parts)."""
    assert get(f"{served.address}pagefind/pagefind.js")[0] == 200
    assert b'"rows":' in get(f"{served.address}text-rows.json")[2]
    assert get(f"{served.address}pagefind/pagefind-entry.json")[0] == 200


def test_only_this_machine_is_answered(served: Served) -> None:
    """A name that somebody made lead to this machine is no name of this machine (DNS rebinding)."""
    where = urlsplit(served.address)
    assert where.hostname == "127.0.0.1"
    for host, code in ((f"localhost:{where.port}", 200), (f"lessons.example:{where.port}", 403)):
        asking = http.client.HTTPConnection("127.0.0.1", where.port or 0, timeout=60)
        asking.request("GET", "/", headers={"Host": host})
        assert asking.getresponse().status == code
        asking.close()


def test_an_open_page_is_told_when_what_it_shows_has_changed(served: Served) -> None:
    page = get(f"{served.address}{SESSION}.html")[2].decode()
    mark = page.partition('data-mark="')[2].partition('"')[0]
    told: list[bytes] = []
    asking = f"{served.address}_live/changed?page={SESSION}.html&mark={mark}"
    waiting = threading.Thread(target=lambda: told.append(get(asking)[2]))
    waiting.start()
    file = served.project / "content" / f"{SESSION}.md"
    before = file.read_text(encoding="utf-8")
    file.write_text(before.replace("Ask for all six.", "Ask for every one of the six."), encoding="utf-8")
    waiting.join(60)
    assert told == [b"changed"]
    file.write_text(before, encoding="utf-8")
    assert get(f"{served.address}_live/reload.js")[0] == 200


def test_a_port_in_use_is_told_with_what_to_do(served: Served) -> None:
    port = str(urlsplit(served.address).port)
    done = storymaths("serve", "--port", port)
    assert done.returncode == 2
    assert f"Port {port} is in use" in done.stderr
    assert "choose another port" in done.stderr
    assert "There is no port 70000" in storymaths("serve", "--port", "70000").stderr


@pytest.mark.parametrize("how", [signal.SIGTERM, signal.SIGINT])
def test_it_ends_at_once_while_a_browser_waits(tmp_path: Path, how: signal.Signals) -> None:
    (tmp_path / "content").mkdir()
    (tmp_path / "site_data").mkdir()
    with storymaths_serve(tmp_path) as served:
        threading.Thread(target=_ask, args=(f"{served.address}_live/changed?page=nowhere.html",), daemon=True).start()
        served.process.send_signal(how)
        assert served.process.wait(60) in (130, -signal.SIGINT)  # a shell says 130 of both
        with socket.socket() as probe:
            assert probe.connect_ex(("127.0.0.1", urlsplit(served.address).port or 0)) != 0


def _ask(address: str) -> None:
    with contextlib.suppress(OSError, http.client.HTTPException):  # it is stopped while it answers
        get(address)


def test_the_indexer_ends_with_the_server() -> None:
    """A program that would go on for ten minutes stands for an indexer that has much to do."""
    index = LiveTextIndex()
    ended: list[int] = []
    command = [sys.executable, "-c", "print('here', flush=True); import time; time.sleep(600)"]
    running = threading.Thread(target=lambda: ended.append(index._run(command).returncode))
    running.start()
    while index._child is None:
        running.join(0.01)
    index.close()
    running.join(60)
    assert ended
    assert ended[0] != 0
