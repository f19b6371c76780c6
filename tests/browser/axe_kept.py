"""What axe found nothing wrong in, by its hash: it reads only what is another since, narrow and wide, by day and by night.

A page is the same to the byte on every machine, and so are its stylesheets, letterforms and pictures. The hash is of
all of these, of the page as its scripts have made it, and of axe and how it is asked; the list is ``axe.txt``. What is
not on it is read. ``.venv/bin/pytest tests/browser --axe=keep`` keeps what was found right and forgets all else;
``--axe=afresh`` reads every page for that. Another browser is not told apart: who wants it to be heard reads afresh.
"""

from __future__ import annotations

import hashlib
import re
from collections.abc import Callable
from functools import lru_cache
from pathlib import Path
from urllib.parse import urljoin

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page
from run_folder import run_folder

KEPT = Path(__file__).with_name("axe.txt")
Faults = dict[str, list[str]]
_AS_IT_STANDS = """() => {
    const copy = document.documentElement.cloneNode(true);
    for (const mark of ['data-new-look', 'data-seen-wide-alone']) {
        copy.querySelectorAll(`[${mark}]`).forEach((e) => e.removeAttribute(mark));
    }
    copy.querySelectorAll('*').forEach((e) => {
        const had = [...e.attributes].map(({ name, value }) => [name, value]).sort();
        had.forEach(([name]) => e.removeAttribute(name));
        // By another name, since the page's own policy refuses styles that are written as text.
        had.forEach(([name, value]) => e.setAttribute(name === 'style' ? 'data-style' : name, value));
    });
    const controls = [...document.querySelectorAll('input, select, textarea, option')];
    const loads = [...document.querySelectorAll('link[rel~=stylesheet], img, source, image, use')];
    return {
        text: [
            copy.outerHTML, innerWidth, innerHeight, location.search, location.hash,
            [...document.querySelectorAll('*')].indexOf(document.activeElement),
            controls.map((e) => `${e.value} ${e.checked} ${e.selected}`).join(' '),
        ].join('\\n'),
        loads: loads.map((e) => e.currentSrc || e.src || e.href?.baseVal || e.href).filter(Boolean),
        base: document.baseURI,
    };
}"""
_forgotten: list[Path] = []
_NAMED_IN_STYLES = re.compile(r"""url\(\s*["']?([^"')]+)""")
_WHEN = re.compile(r'Saved at [\d:]+|datetime="[^"]*"|data-state="[^"]*"|\d+ \w+, \d\d:\d\d:\d\d|of \d\d:\d\d:\d\d')
"""When the desk saved or kept a state: all else is the same whenever a page is read."""


def unless_kept(page: Page, read: Callable[[], Faults]) -> Faults:
    """Nothing for a page that is on the list as it stands now; else what reading finds, and nothing is noted as right."""
    name = hash_of(page)
    if name not in _kept():
        found = read()
        if found:
            return found
    with (run_folder() / KEPT.name).open("a", encoding="utf-8") as noted:
        noted.write(f"{name}\n")
    return {}


def forget() -> None:
    """For the rest of this process every page is read."""
    _kept.cache_clear()
    _forgotten.append(KEPT)


def keep() -> None:
    """Keeps what was found right in this run by all its workers, and forgets all else."""
    noted = run_folder() / KEPT.name
    if noted.exists():
        KEPT.write_text("\n".join(sorted(set(noted.read_text("utf-8").split()))) + "\n", encoding="utf-8")


@lru_cache(maxsize=1)
def _kept() -> frozenset[str]:
    return frozenset() if KEPT in _forgotten else frozenset(KEPT.read_text(encoding="utf-8").split())


@lru_cache(maxsize=1)
def _asked_how() -> bytes:
    """Axe, and what asks it."""
    own = (Path(__file__).with_name(name).read_text(encoding="utf-8") for name in ("axe.py", "looks.py"))
    return "\n".join((Axe().axe_script, *own)).encode()


def hash_of(page: Page) -> str:
    """What a page as it stands is known by, wherever it is served."""
    stands = page.evaluate(_AS_IT_STANDS)
    host = "/".join(stands["base"].split("/")[:3])
    loads = dict.fromkeys(address for address in stands["loads"] if address.startswith(f"{host}/"))
    files = {address: page.request.get(address).body() for address in loads}
    for address, data in list(files.items()):
        if address.partition("?")[0].endswith(".css"):
            named = (urljoin(address, one) for one in _NAMED_IN_STYLES.findall(data.decode()))
            files |= {one: page.request.get(one).body() for one in named if one.startswith(host) and one not in files}
    parts = [_asked_how(), _WHEN.sub("", stands["text"].replace(host, "")).encode()]
    parts += [part for address in sorted(files) for part in (address.removeprefix(host).encode(), files[address])]
    return hashlib.sha256(b"\n".join(hashlib.sha256(part).digest() for part in parts)).hexdigest()
