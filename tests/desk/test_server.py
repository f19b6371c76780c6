"""The desk as a server: on this machine alone, and no longer than it is used."""

from __future__ import annotations

import socket
import threading
from pathlib import Path

from command import storymaths
from project import copy_of_project
from storymaths.desk.lock import HOST
from storymaths.desk.server import serve_desk


def test_it_stops_when_its_tabs_have_been_closed_for_a_while(tmp_path: Path) -> None:
    told: list[str] = []
    root = copy_of_project(tmp_path / "project")
    serving = threading.Thread(target=serve_desk, args=(root, 0, told.append), kwargs={"alone": 0.2}, daemon=True)
    serving.start()
    serving.join(60)
    assert not serving.is_alive()
    assert told[0].startswith(f"http://{HOST}:")


def test_a_port_that_is_taken_or_is_none_is_told_in_words() -> None:
    with socket.socket() as taken:
        taken.bind((HOST, 0))
        taken.listen()
        refused = storymaths("desk", "--stay", "--port", str(taken.getsockname()[1]))
    assert (refused.returncode, refused.stderr[:29]) == (1, "The desk cannot be opened the")
    assert storymaths("desk", "--stay", "--port", "70000").returncode == 2
