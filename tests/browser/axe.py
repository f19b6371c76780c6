"""What axe-core finds wrong with a page: WCAG 2.2 AA as far as a program can see. No rule is switched off."""

from __future__ import annotations

from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

NARROW, WIDE = 320, 1280
_ALL: dict[str, Any] = {
    "runOnly": {
        "type": "tag",
        "values": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
    },
    "rules": {"target-size": {"enabled": True}},  # in axe-core it is off unless asked for
    "resultTypes": ["violations"],
}
_COLOURS: dict[str, Any] = {
    "runOnly": {"type": "rule", "values": ["color-contrast", "link-in-text-block"]},
    "resultTypes": ["violations"],
}
"""By night nothing on a page is another but its colours."""
_LAYOUT: dict[str, Any] = {
    "runOnly": {
        "type": "rule",
        "values": ["color-contrast", "link-in-text-block", "scrollable-region-focusable", "target-size"],
    },
    "resultTypes": ["violations"],
}
"""In a wide window what was seen in a narrow one has the same names, roles and order, but lies elsewhere."""
_NOTE_WHAT_IS_SEEN = "() => document.querySelectorAll('body *').forEach((e) => { e.seenNarrow = e.checkVisibility(); })"
_MARK_WHAT_IS_NEW = """() => {
    const fresh = [...document.querySelectorAll('body *')].filter((e) => e.checkVisibility() && !e.seenNarrow);
    fresh.forEach((e) => e.setAttribute('data-seen-wide-alone', ''));
    return fresh.length;
}"""
_SCRIPT = Axe().axe_script
_FAULTS = """async ([within, options]) => {
    const { violations } = await axe.run(within || document, options);
    const told = (fault, node) => `${fault.id}: ${node.html.slice(0, 160)} (${fault.help})`;
    return violations.flatMap((fault) => fault.nodes.slice(0, 4).map((node) => told(fault, node)));
}"""
_SEEN_WIDE_ALONE = "[data-seen-wide-alone]"


def faults(page: Page, options: dict[str, Any] = _ALL, within: str | None = None) -> list[str]:
    """What is wrong with a page as it stands, or with the parts of it that a selector names, a line each."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(_SCRIPT)
    found: list[str] = page.evaluate(_FAULTS, [within, options])
    return found


def faults_in_every_light(page: Page) -> dict[str, list[str]]:
    """What is wrong narrow and wide, by day and by night, with what it is wrong in.

    Every rule is held once to everything: in a narrow window, and in a wide one to what only that shows.
    """
    found = {}
    _show(page, NARROW, "light")
    found["narrow, by day"] = faults(page)
    page.evaluate(_NOTE_WHAT_IS_SEEN)
    _show(page, NARROW, "dark")
    found["narrow, by night"] = faults(page, _COLOURS)
    _show(page, WIDE, "light")
    found["wide, by day"] = faults(page, _LAYOUT)
    if page.evaluate(_MARK_WHAT_IS_NEW):
        found["seen wide alone, by day"] = faults(page, _ALL, _SEEN_WIDE_ALONE)
        _show(page, WIDE, "dark")
        found["seen wide alone, by night"] = faults(page, _COLOURS, _SEEN_WIDE_ALONE)
    return {where: wrong for where, wrong in found.items() if wrong}


def _show(page: Page, width: int, light: Any) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.emulate_media(color_scheme=light)
