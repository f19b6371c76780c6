"""Which texts of a page look as no text did that was found right before: those whose contrast is to be worked out.

A look is all that contrast comes of: the colour, size and weight of letters, and every ground that they lie on. Pages of
one site share some hundred. A text that may lie on what it does not stand in is always looked at.
"""

from __future__ import annotations

from collections.abc import Sequence

from playwright.sync_api import Page

NEW_LOOKS = "[data-new-look]"
_right: set[str] = set()
_MARK = """([within, right]) => {
    const had = new Set(right), fresh = new Set(), grounds = new Map();
    const lettersOf = ({ color, fill, fontSize, fontWeight, fontStyle, textDecorationLine, textShadow, borderBottom }) => (
        [color, fill, fontSize, fontWeight, fontStyle, textDecorationLine, textShadow, borderBottom].join(' '));
    // All that lies under or over an element's letters because of what it stands in; and whether it may lie elsewhere.
    const groundOf = (e) => {
        if (e && !grounds.has(e)) {
            const above = groundOf(e.parentElement), style = getComputedStyle(e);
            const moved = style.float !== 'none' || style.transform !== 'none' || style.clipPath !== 'none'
                || ['absolute', 'fixed', 'sticky'].includes(style.position) || /-\\d/.test(style.margin);
            const own = [
                style.backgroundColor, style.backgroundImage, style.opacity, style.filter, style.mixBlendMode, style.boxShadow,
            ].join(' ');
            const same = own === 'rgba(0, 0, 0, 0) none 1 none normal none';
            grounds.set(e, { all: same ? above.all : `${above.all} < ${own}`, moved: above.moved || moved });
        }
        return grounds.get(e) ?? { all: '', moved: false };
    };
    const aroundLink = (link) => {
        let block = link.parentElement;
        while (getComputedStyle(block).display === 'inline') block = block.parentElement;
        const inText = block.textContent.trim() !== link.textContent.trim();
        return inText ? lettersOf(getComputedStyle(block)) : '';
    };
    for (const e of document.querySelectorAll('body, body *')) {
        const writes = e.matches('input, select, textarea')
            || [...e.childNodes].some((node) => node.nodeType === Node.TEXT_NODE && node.data.trim());
        const isLookedAt = writes && e.checkVisibility() && (!within || e.matches(within));
        const { all, moved } = isLookedAt ? groundOf(e) : {}, link = isLookedAt && e.closest('a');
        const look = isLookedAt && `${lettersOf(getComputedStyle(e))} / ${link ? aroundLink(link) : ''} / ${all}`;
        const isNew = isLookedAt && (moved || !(had.has(look) || fresh.has(look)));
        e.toggleAttribute('data-new-look', Boolean(isNew));
        if (isNew && !moved) fresh.add(look);
    }
    return [...fresh];
}"""


def mark_new_looks(page: Page, within: str | None = None) -> Sequence[str]:
    """Marks one text of each look that is new, and each that may lie elsewhere; returns the new looks."""
    fresh: list[str] = page.evaluate(_MARK, [within, sorted(_right)])
    return fresh


def looks_are_right(looks: Sequence[str]) -> None:
    """Nothing is wrong with these: for the rest of this run they need not be looked at again."""
    _right.update(looks)
