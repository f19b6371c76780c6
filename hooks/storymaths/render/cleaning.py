"""The one gate between authors' words as HTML and the page: whatever is on no list does not pass.

Rules tell an author of each thing that is not on the list, with its place (``check/html_not_on_list.py`` and its
neighbours), and nothing with problems is published. This holds even so: for pages under ``serve``, which are shown
with their problems, and for whatever a rule may not have thought of.
"""

from __future__ import annotations

import re

import nh3

from ..model.markup import ANYWHERE, SCHEMES, TAGS

_MADE_BY_MARKDOWN = frozenset(
    "p h1 h2 h3 h4 h5 h6 ul ol li blockquote pre code em strong hr table thead tbody tr th td div".split()
)
_FRAME_OF_A_TABLE = {"tabindex", "role", "aria-label"}
_ELSEWHERE = re.compile(r"[a-z][a-z0-9+.-]*:|//|\\", re.IGNORECASE)


def _inside_the_site(tag: str, attribute: str, value: str) -> str | None:
    """Pictures are the site's own. A browser takes a backslash for a slash."""
    return None if tag == "img" and attribute == "src" and _ELSEWHERE.match(value.strip()) else value


_CLEANER = nh3.Cleaner(
    tags={*TAGS, *_MADE_BY_MARKDOWN},
    attributes={
        "*": set(ANYWHERE),
        **{tag: set(own) for tag, own in TAGS.items()},
        "div": _FRAME_OF_A_TABLE,
        "ol": {"start"},
    },
    attribute_filter=_inside_the_site,
    url_schemes=set(SCHEMES),
    link_rel=None,
)


def cleaned(html: str) -> str:
    """The HTML without any tag, attribute or address that is on no list; what stood in scripts and styles is gone too."""
    return _CLEANER.clean(html)
