"""The scripts of pages: one file a kind of page, joined from the modules in ``hooks/scripts/``.

A kind's entry module is ``pages/<kind>.js``; kinds without one share ``pages/every.js``.
"""

from __future__ import annotations

from collections.abc import Mapping

from ..scripts.join import SCRIPTS, joined

_PAGES = SCRIPTS / "pages"
_EVERY = "every"


def page_scripts() -> Mapping[str, str]:
    """Each script's address from the site's root, and what is in it."""
    return {f"look/{entry.stem}.js": f"{joined(f'pages/{entry.name}')};\n" for entry in sorted(_PAGES.glob("*.js"))}


def script_for(kind: str) -> str:
    """The address of the script for a page of a kind."""
    return f"look/{kind if (_PAGES / f'{kind}.js').is_file() else _EVERY}.js"
