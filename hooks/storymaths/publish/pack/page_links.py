"""Links of a packed page that lead out of the pack: their words stay, and no longer lead nowhere."""

from __future__ import annotations

import re
from collections.abc import Container, Iterator
from urllib.parse import unquote

from ...model.address import resolve

_LINK = re.compile(r"<a\b((?:[^>\"']|\"[^\"]*\"|'[^']*')*)>(.*?)</a>", re.DOTALL | re.IGNORECASE)
_ADDRESS = re.compile(r"""(?<![\w-])href\s*=\s*(?:"([^"]*)"|'([^']*)')""", re.IGNORECASE)
_LOOKS = re.compile(r"""(?<![\w-])(?:class|id)\s*=\s*(?:"[^"]*"|'[^']*')""", re.IGNORECASE)
_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//|#", re.IGNORECASE)
_PRELOAD = re.compile(r"<link\b[^>]*\brel=\"preload\"[^>]*>\s*", re.IGNORECASE)


def targets_of(html: str, here: str) -> Iterator[str]:
    """The addresses within the site that a page's links lead to. ``here`` is its own, from the site's root."""
    for match in _LINK.finditer(html):
        target = _target(match.group(1), here)
        if target is not None:
            yield target


def page_for_usb(html: str, here: str, packed: Container[str]) -> str:
    """A page as it works from a memory stick: links to what is not packed are words, and nothing is fetched ahead."""

    def kept(match: re.Match[str]) -> str:
        target = _target(match.group(1), here)
        if target is None or target in packed:
            return match.group()
        # Its look, and its name for links to this place, stay.
        looks = "".join(f" {each}" for each in _LOOKS.findall(match.group(1)) if "button" not in each)
        return f"<span{looks}>{match.group(2)}</span>"

    # From a stick, letterforms fetched ahead count as another site's, and are refused and fetched again.
    return _PRELOAD.sub("", _LINK.sub(kept, html))


def _target(attributes: str, here: str) -> str | None:
    """Where a link within the site leads, without a place on the page; None for any other."""
    match = _ADDRESS.search(attributes)
    address = (match.group(1) or match.group(2) or "") if match else ""
    if not address or _ELSEWHERE.match(address):
        return None
    path = re.split(r"[?#]", unquote(address), maxsplit=1)[0]
    return resolve(path, here) if path else None
