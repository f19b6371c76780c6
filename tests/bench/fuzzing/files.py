"""Drawings and trees of files, changed at random."""

from __future__ import annotations

import random
import re

from project import PROJECT

from .inputs import Input, page_texts


def make_drawing(chance: random.Random) -> Input:
    content = PROJECT / "content"
    path = chance.choice(sorted(content.rglob("cast/*.svg")))
    text = path.read_text(encoding="utf-8")
    for _ in range(chance.choice((1, 1, 2, 4))):
        at = chance.randrange(len(text))
        tags = list(re.finditer(r"<[^>]+>", text))
        how = chance.choice(("out", "twice", "put", "number", "signs"))
        tag = chance.choice(tags) if tags else None
        if tag and how == "out":
            text = text[: tag.start()] + text[tag.end() :]
        elif tag and how == "twice":
            text = text[: tag.end()] + tag[0] * chance.choice((1, 80)) + text[tag.end() :]
        elif tag and how == "put":
            odd = (
                "<g>",
                "</g>",
                '<use href="#a"/>',
                '<g id="a">',
                "<defs/>",
                "<!DOCTYPE svg>",
                "<?x?>",
                "<text>x</text>",
                "<svg/>",
                "<title>x</title>",
                '<path d="M0 0"/>',
            )
            text = text[: tag.start()] + chance.choice(odd) + text[tag.start() :]
        elif how == "number":
            numbers = list(re.finditer(r"\d+", text))
            number = chance.choice(numbers) if numbers else None
            text = (
                f"{text[: number.start()]}{chance.choice(('0', '-1', '1e9', 'NaN', '9' * 30, ''))}{text[number.end() :]}"
                if number
                else text
            )
        else:
            text = text[:at] + chance.choice(("\0", "&", "<", ">", '"', "é", "&#x202e;", "]]>")) + text[at + 1 :]
    return Input("drawing", path.relative_to(content).as_posix(), text)


_DEEDS = (
    "link", "link to itself", "link to the folder above", "pipe", "socket", "folder", "empty file", "bytes", "large file", "deep folders",
    "dangling link", "take out", "take the folder out", "rename", "copy", "make unreadable",
)  # fmt: skip
_NAMES = (
    "a", "Con", "aux", "Кот", "😀", "a b", "a:b", "a\\b", "-x", "é", "e\u0301", "x" * 200, "a.b", "index", "INDEX", "session-1", "..x",
    "a%2fb", "\udcff", "a\nb", "#a", "a?b", "story",
)  # fmt: skip
_FOLDERS = ("", "books/", "books/cliff-house-lift/", "books/cliff-house-lift/cast/", "series/")


def make_tree(chance: random.Random) -> Input:
    """Deeds, a line each: what is done, to which new name, and to which file that is there."""
    old = sorted(path for path in page_texts() if path.startswith(("books/cliff", "about")))
    deeds = []
    for _ in range(chance.choice((1, 1, 2, 3))):
        name = chance.choice(_FOLDERS) + chance.choice(_NAMES) + chance.choice((".md", ".md", ".svg", ".png", ""))
        deeds.append(repr((chance.choice(_DEEDS), name, chance.choice(old))))
    return Input("tree", "", "\n".join(deeds))
