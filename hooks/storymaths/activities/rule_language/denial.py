"""What is said of somebody, denied."""

from __future__ import annotations

_DOES = {
    "swims": "swim", "flies": "fly", "walks": "walk", "climbs": "climb", "hops": "hop", "runs": "run", "sings": "sing",
    "digs": "dig", "floats": "float", "crawls": "crawl", "sleeps": "sleep", "jumps": "jump", "dives": "dive",
    "eats": "eat", "lives": "live", "wears": "wear", "carries": "carry", "likes": "like", "lays": "lay", "moves": "move",
    "rolls": "roll", "slides": "slide", "stacks": "stack",
}  # fmt: skip
_DENIED = {"has": "does not have", "is": "is not", "can": "cannot", "are": "are not", "have": "do not have"}


def denied(said: str) -> str:
    """``does not swim`` for ``swims``, ``cannot fly`` for ``can fly``, ``not green`` for ``green``."""
    first, _, rest = said.partition(" ")
    if first in _DENIED:
        return f"{_DENIED[first]} {rest}".strip()
    if first in _DOES:
        return f"does not {_DOES[first]} {rest}".strip()
    return f"not {said}"
