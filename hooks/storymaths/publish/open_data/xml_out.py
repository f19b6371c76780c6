"""XML as text: an element tree written so that any reader can take it, whatever words are in it."""

from __future__ import annotations

import re
from xml.etree import ElementTree

Element = ElementTree.Element
_NO_XML = re.compile("[^\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
"""Signs XML 1.0 (section 2.2) has no way to write, not even as references."""


def child(parent: Element, name: str, text: str = "", **attributes: str) -> Element:
    """A new element at the end of ``parent``."""
    made = ElementTree.SubElement(parent, name, {key: _clean(value) for key, value in attributes.items()})
    if text:
        made.text = _clean(text)
    return made


def as_text(root: Element) -> str:
    """The whole document, two spaces a step."""
    ElementTree.indent(root)
    return f'<?xml version="1.0" encoding="UTF-8"?>\n{ElementTree.tostring(root, encoding="unicode")}\n'


def _clean(text: str) -> str:
    return _NO_XML.sub("", text)
