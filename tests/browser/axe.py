"""What axe-core finds wrong with a page: WCAG 2.2 AA as far as a program can see. No rule is switched off."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Page

from .axe_kept import unless_kept
from .looks import NEW_LOOKS, looks_are_right, mark_new_looks

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
    "runOnly": {"type": "rule", "values": ["scrollable-region-focusable", "target-size"]},
    "resultTypes": ["violations"],
}
"""In a wide window what was seen in a narrow one has the same names, roles and order, but lies elsewhere."""
_NOTE_WHAT_IS_SEEN = "() => document.querySelectorAll('body *').forEach((e) => { e.seenNarrow = e.checkVisibility(); })"
_MARK_WHAT_IS_NEW = """() => {
    const fresh = [...document.querySelectorAll('body *')].filter((e) => e.checkVisibility() && !e.seenNarrow);
    fresh.forEach((e) => e.setAttribute('data-seen-wide-alone', ''));
}"""
_ALL_BUT_COLOURS: dict[str, Any] = {
    **_ALL,
    "rules": {**_ALL["rules"], "color-contrast": {"enabled": False}, "link-in-text-block": {"enabled": False}},
}
"""For what is the same as when its colours were looked at: they take most of the time."""
_NOTE_CHANGES = """() => {
    window.changed = new Set();
    new MutationObserver((changes) => changes.forEach(({ type, target, addedNodes }) => {
        const at = type === 'childList' ? [...addedNodes] : [target];
        at.forEach((node) => changed.add(node.nodeType === 1 ? node : node.parentElement));
    })).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
}"""
_MARK_CHANGES = """() => [...changed].forEach((e) => { if (e?.isConnected) e.setAttribute('data-changed', ''); })"""
CHANGED = ":is([data-changed], [data-changed] *)"
_SCRIPT = Axe().axe_script
_FAULTS = """async ([within, options]) => {
    const { violations } = await axe.run(within || document, options);
    const told = (fault, node) => `${fault.id}: ${node.html.slice(0, 160)} (${fault.help})`;
    return violations.flatMap((fault) => fault.nodes.slice(0, 4).map((node) => told(fault, node)));
}"""


def faults(page: Page, options: dict[str, Any] = _ALL, within: str | None = None) -> list[str]:
    """What is wrong with a page as it stands, or with the parts of it that a selector names, a line each."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(_SCRIPT)
    found: list[str] = page.evaluate(_FAULTS, [within, options])
    return found


def note_changes(page: Page) -> None:
    """Notes from now on which parts of a page change."""
    page.evaluate(_NOTE_CHANGES)


def faults_in_every_light(page: Page) -> dict[str, list[str]]:
    """What is wrong narrow and wide, by day and by night, with what it is wrong in.

    Every rule is held once to everything: in a narrow window, and in a wide one to what only that shows. Colours are
    held to every text narrow by day; wide, and by night, to every look that has not been found right yet.
    """
    return _unless_kept(page, lambda: _in_every_light(page, None))


def faults_of_what_changed(page: Page) -> dict[str, list[str]]:
    """The same of a page that is held to it as its address brings it: what looks only at a part, of what changed since."""
    if not page.evaluate("'changed' in window"):  # what was done led to another page
        return faults_in_every_light(page)
    page.evaluate(_MARK_CHANGES)
    assert page.locator(CHANGED).count(), "nothing has changed"
    return _unless_kept(
        page, lambda: {**_in_every_light(page, CHANGED), **_told({"as a whole": faults(page, _ALL_BUT_COLOURS)})}
    )


def _unless_kept(page: Page, read: Callable[[], dict[str, list[str]]]) -> dict[str, list[str]]:
    """What is found in a page that is not known to be right as it stands; either way it is left wide, by night."""
    found = unless_kept(page, read)
    _show(page, WIDE, "dark")
    return found


def _in_every_light(page: Page, within: str | None) -> dict[str, list[str]]:
    found = {}
    _show(page, NARROW, "light")
    found["narrow, by day"] = faults(page, _ALL, within)
    page.evaluate(_NOTE_WHAT_IS_SEEN)
    if not found["narrow, by day"]:
        looks_are_right(mark_new_looks(page, within))
    _show(page, NARROW, "dark")
    found["colours, narrow, by night"] = _faults_of_new_looks(page, within)
    _show(page, WIDE, "light")
    found["wide, by day"] = faults(page, _LAYOUT, within)
    page.evaluate(_MARK_WHAT_IS_NEW)
    seen_wide_alone = f"{within or ''}[data-seen-wide-alone]"
    if page.locator(seen_wide_alone).count():
        found["seen wide alone, by day"] = faults(page, _ALL, seen_wide_alone)
    found["colours, wide, by day"] = _faults_of_new_looks(page, within)
    _show(page, WIDE, "dark")
    found["colours, wide, by night"] = _faults_of_new_looks(page, within)
    return _told(found)


def _faults_of_new_looks(page: Page, within: str | None) -> list[str]:
    looks = mark_new_looks(page, within)
    wrong = faults(page, _COLOURS, NEW_LOOKS) if page.locator(NEW_LOOKS).count() else []
    if not wrong:
        looks_are_right(looks)
    return wrong


def _told(found: dict[str, list[str]]) -> dict[str, list[str]]:
    return {where: wrong for where, wrong in found.items() if wrong}


def _show(page: Page, width: int, light: Any) -> None:
    page.set_viewport_size({"width": width, "height": 800})
    page.emulate_media(color_scheme=light)
    page.evaluate(
        "new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))"
    )  # it is laid out anew
