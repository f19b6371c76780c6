"""The Content Security Policy of each page: what a browser may load and run for it."""

from __future__ import annotations

RUNS_WEB_ASSEMBLY = frozenset({"find"})
"""Kinds of page whose scripts run WebAssembly: the finder's text index."""
_BESIDES = ("style-src 'self'", "object-src 'none'", "frame-src 'none'", "base-uri 'none'", "form-action 'self'")


def policy(kind: str) -> str:
    """The policy for a page of a kind, as CSP level 3 writes it (W3C, Content Security Policy Level 3).

    Everything comes from the site itself; what the page says can start nothing. ``'self'`` holds from ``file:`` too:
    tried in Chromium 156 and Firefox 153.
    """
    scripts = ["script-src 'self'"]
    if kind in RUNS_WEB_ASSEMBLY:
        scripts.append("'wasm-unsafe-eval'")
    return "; ".join(("default-src 'self'", " ".join(scripts), *_BESIDES))
