"""The JSON-LD of any page, as the element that stands in its head."""

from __future__ import annotations

import json

from ...model.document import Document
from ...model.page_fields import PageFields
from ...render.site import Rendered, Site
from ..page_kinds.table import kind_of
from .features import features
from .node import Node
from .other_pages import describe_generated, describe_web_page

_NOT_IN_A_SCRIPT = str.maketrans(
    {"<": "\\u003c", ">": "\\u003e", "&": "\\u0026", "\u2028": "\\u2028", "\u2029": "\\u2029"}
)
"""With these written as JSON's own escapes, no words of an author can end the element early."""
_TERMS = ("DefinedTerm",)
"""Things that are no works, and so have no accessibility of their own."""


class PageDescriber:
    """Describes the pages of one site, each as it is asked for."""

    def __init__(self, site: Site) -> None:
        self._site = site
        self._made = {page.source: page.about for page in site.collection.generated}

    def element(self, written: Document[PageFields] | None, page: Rendered) -> str:
        """The element for a page: of the document it was written as, or of what the build made it from."""
        return script(self.node(written, page))

    def node(self, written: Document[PageFields] | None, page: Rendered) -> Node:
        """What a page is, ready for JSON."""

        def at(target: str) -> str:
            return self._site.address(target, page.source)

        if written is not None:
            node = kind_of(written).linked_data.describe(written, self._site, at)
        elif page.source in self._made:
            node = describe_generated(self._made[page.source], page, self._site, at)
        else:
            node = describe_web_page(page, self._site, at)
        if node["@type"] not in _TERMS:
            node["inLanguage"] = self._site.settings.language
            node["accessibilityFeature"] = features(page.html)
        return {"@context": "https://schema.org", **node}


def script(node: Node) -> str:
    """A node as a data block: browsers do not run it, and nothing in it can close it."""
    text = json.dumps(node, ensure_ascii=False, separators=(",", ":"))
    return f'<script type="application/ld+json">{text.translate(_NOT_IN_A_SCRIPT)}</script>'
