"""The desk served to one browser on this machine, until it is stopped or nobody has had it open for a while."""

from __future__ import annotations

import asyncio
import socket
import sys
import time
from collections.abc import Callable
from pathlib import Path

import uvicorn
from starlette.types import ASGIApp, Receive, Scope, Send

from .app import DeskApp
from .desk import Desk
from .lock import HOST, KEY, Lock, new_key
from .pages import Pages

ALONE_SECONDS = 15 * 60
"""How long the desk waits for a tab. One that is open asks each minute, and browsers let hidden ones ask as often."""
_LOOKS_EVERY = 5.0


def desk_app(root: Path, read_first: bool = False) -> ASGIApp:
    """The desk of the collection at ``root``, without its lock; the collection is read now, or when it is first asked for."""
    pages = Pages(root, Desk(root))
    if read_first:
        pages.beside.look()
    return DeskApp(pages).application()


class _Asked:
    """Notes when the desk was last asked for anything by whoever has the key."""

    def __init__(self, desk: ASGIApp) -> None:
        self._desk, self.last = desk, time.monotonic()

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        self.last = time.monotonic()
        await self._desk(scope, receive, send)


def serve_desk(root: Path, port: int, tell: Callable[[str], None], alone: float = ALONE_SECONDS) -> None:
    """Serves the desk, telling its address first. With port 0 any that is free is taken. Raises ``OSError``."""
    with socket.socket(socket.AF_INET, socket.SOCK_STREAM) as listening:
        take_port(listening, port)
        app = desk_app(root, read_first=True)
        key, port = new_key(), listening.getsockname()[1]
        asked = _Asked(app)
        config = uvicorn.Config(
            Lock(asked, key, port),
            log_level="warning",
            access_log=False,
            ws="none",
            lifespan="off",
            server_header=False,
        )
        server = uvicorn.Server(config)
        listening.listen()  # before its address is told: who is quick waits, and is not turned away
        tell(f"http://{HOST}:{port}/?{KEY}={key}")
        asyncio.run(_serve(server, listening, asked, alone))


def take_port(listening: socket.socket, port: int) -> None:
    """Binds a port of this machine that nobody else has, or can have meanwhile. Raises ``OSError``.

    Elsewhere reuse is what lets a port be had again at once. On Windows it would let another program have the same one
    (Microsoft, Using SO_REUSEADDR and SO_EXCLUSIVEADDRUSE).
    """
    if sys.platform == "win32":
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_EXCLUSIVEADDRUSE, 1)
    else:
        listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    listening.bind((HOST, port))


async def _serve(server: uvicorn.Server, listening: socket.socket, asked: _Asked, alone: float) -> None:
    serving = asyncio.create_task(server.serve(sockets=[listening]))
    while not serving.done():
        await asyncio.wait({serving}, timeout=min(_LOOKS_EVERY, alone))
        if time.monotonic() - asked.last > alone:
            server.should_exit = True
    await serving
