"""A drawing written again from its parts: the same bytes for the same parts, and nothing that is on no list."""

from __future__ import annotations

from collections.abc import Iterator

from .part import Part
from .tree import SVG


def written(root: Part) -> str:
    """The drawing as it is served, one line that ends."""
    return "".join((*_element(root, f' xmlns="{SVG}"'), "\n"))


def _element(part: Part, name_of_language: str = "") -> Iterator[str]:
    yield f"<{part.name}{name_of_language}"
    for name, value in part.attributes.items():
        yield f' {name}="{_escaped(value).replace(chr(34), "&quot;")}"'
    if not part.content:
        yield "/>"
        return
    yield ">"
    for inner in part.content:
        if isinstance(inner, Part):
            yield from _element(inner)
        else:
            yield _escaped(inner).replace("]]>", "]]&gt;")
    yield f"</{part.name}>"


def _escaped(text: str) -> str:
    return text.replace("&", "&amp;").replace("<", "&lt;")
