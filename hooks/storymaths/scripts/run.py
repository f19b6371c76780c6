"""Runs a function of the site's scripts here: what the page of a reader works out and a command does is one source.

The engine is V8, as the package mini-racer brings it along: no browser, no files, no network, only the language.
"""

from __future__ import annotations

import json
from concurrent.futures import ThreadPoolExecutor

from .join import joined


def run(module: str, function: str, *given: object) -> str:
    """What a function that ``module`` exports gives for some values, as JSON; what is given must fit into JSON too.

    Each call has an engine of its own, some ten milliseconds: nothing is carried from one to the next.
    """
    values = json.dumps(json.dumps(given, ensure_ascii=True))
    asked = f"const exported = {joined(module)};JSON.stringify(exported.{function}(...JSON.parse({values})));"
    # In a thread of its own, since the engine would wait for whatever event loop runs in the thread of its caller.
    with ThreadPoolExecutor(1) as thread:
        return thread.submit(_evaluate, asked).result()


def _evaluate(source: str) -> str:
    from py_mini_racer import MiniRacer  # noqa: PLC0415 - most commands need no engine, and it takes a while to load

    with MiniRacer() as engine:
        return str(engine.eval(source))
