"""Content written to do harm, each with the rule that must tell of it: for the test, and for the bench that times it.

Every case is one file put into a copy of a real book's folder, and must come out as a problem of that file.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from project import PROJECT, text_of

BOOK = "books/cliff-house-lift"
SESSION, RECORD, HOME = f"{BOOK}/session-2.md", f"{BOOK}/index.md", f"{BOOK}/home-1.md"
WORM = f"{BOOK}/cast/worm.svg"
_SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">'


@dataclass(frozen=True)
class Hostile:
    """One thing somebody might do."""

    name: str
    path: str
    """Of the file that is changed or added, from ``content/``."""
    rule: str
    """The rule that must speak of that file."""
    put: Callable[[Path], None]
    """Puts it there."""


def small_content(folder: Path) -> Path:
    """A content folder of one book; returns the project's root."""
    shutil.copytree(PROJECT / "content" / BOOK, folder / "content" / BOOK)
    return folder


def every_case() -> Iterator[Hostile]:
    """All of them."""
    yield from _yaml()
    yield from _signs()
    yield from _sizes()
    yield from _tangles()
    yield from _paths()
    yield from _files()
    yield from _drawings()
    yield from _markup()
    yield from _activities()


def _whole(name: str, rule: str, data: bytes | str, path: str) -> Hostile:
    def put(file: Path) -> None:
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_bytes(data if isinstance(data, bytes) else data.encode("utf-8", "surrogatepass"))

    return Hostile(name, path, rule, put)


def _instead(name: str, rule: str, old: str, new: str, path: str = SESSION) -> Hostile:
    text = text_of(path)
    assert old in text, f"the content has changed: {old!r}"
    return _whole(name, rule, text.replace(old, new, 1), path)


def _in_front(name: str, rule: str, line: str) -> Hostile:
    return _instead(name, rule, "kind: session\n", f"kind: session\n{line}\n")


def _in_body(name: str, rule: str, words: str) -> Hostile:
    return _whole(name, rule, f"{text_of(SESSION)}\n\n{words}\n", SESSION)


def _yaml() -> Iterator[Hostile]:
    laughs = "a: &a [x, x, x, x, x, x, x, x, x]\n" + "\n".join(
        f"{after}: &{after} [{', '.join(f'*{before}' for _ in range(9))}]"
        for before, after in zip("abcdefgh", "bcdefghi", strict=True)
    )
    broken = "front-matter-broken"
    yield _in_front("a billion laughs", broken, laughs)
    yield _in_front("a list inside itself", broken, "words: &a [*a]")
    yield _in_front("lists five thousand deep", broken, "words: " + "[" * 400 + "]" * 400)
    yield _in_front("lists as deep as the reader goes", broken, "words: " + "- " * 900 + "a")
    yield _in_front("mappings inside mappings", broken, "words: " + "{a: " * 200 + "1" + "}" * 200)
    yield _in_front("a number of five thousand digits", "file-unreadable", f"minutes: {'9' * 5000}")
    yield _in_front("an object to be made", broken, "words: !!python/object/apply:os.system [id]")
    yield _in_front("a tag of its own", broken, "words: !include /etc/passwd")
    yield _in_front("a merge", broken, "<<: {kind: page}")
    yield _in_front("a list for a key", broken, "? [a, b]\n: 1")
    yield _in_front("a quote that is never closed", broken, "words: 'open")
    yield _in_front("a tab", broken, "\twords: 1")
    yield _in_front(
        "three thousand keys that mean nothing", "field-unknown", "".join(f"a{n}: 1\n" for n in range(3000))
    )
    yield _in_front("the same key five thousand times", "field-duplicate", "words: 1\n" * 5000)
    yield _instead("endless minutes", "field-mistyped", "minutes: 50", "minutes: .inf")
    yield _instead("minutes that are no number", "field-mistyped", "minutes: 50", "minutes: .nan")
    yield _instead("minutes in base sixty", "field-mistyped", "minutes: 50", "minutes: 1:30:00")
    yield _instead("a time that is none", broken, "minutes: 50", "minutes: !!timestamp x")
    yield _instead("ten million pages", "file-unreadable", "pages: 14", "pages: 10000000", RECORD)
    yield _instead("a reading of eight million pages", "file-unreadable", "pages: 7-", "pages: 7-8000000 #", SESSION)
    yield _instead("bytes for a title", broken, "title: Who is worth Camel?", "title: !!binary AAAA")
    yield _whole("front matter that never ends", broken, "---\n" + "a: b\n" * 900, SESSION)


def _signs() -> Iterator[Hostile]:
    letter = "letter-misleading"
    yield _in_front("nought in front matter", letter, "words: a\x00b")
    yield _in_body("nought in the body", letter, "a\x00b")
    yield _in_body("a sign that clears the screen", letter, "a\x1b[2Jb")
    yield _instead("the same, spelt out", letter, "title: Who is worth Camel?", 'title: "Who is\\e[2J worth Camel?"')
    yield _instead(
        "an unseen sign spelt out", letter, "title: Who is worth Camel?", 'title: "Who is \\u202Eworth Camel?"'
    )
    yield _in_body("a byte order mark within", letter, "a\ufeffb")
    yield _in_body("words turned round", letter, "Take \u202e6 − 9\u202c away.")
    yield _in_body("words set apart", letter, "Take \u20676\u2069 away.")
    yield _in_body("a space of no width", letter, "mi\u200bnus")
    yield _in_body("a soft hyphen", letter, "mi\u00adnus")
    yield _in_body("a letter from another script", letter, "equ\u0430l")
    yield _in_body("a letter in two pieces", letter, "cafe\u0301")
    yield _in_body("the build's own marks", letter, "\ue0000\ue001")
    yield _in_body("tags that are not seen", letter, "a\U000e0041b")
    yield _in_body("a letter lost", letter, "caf\ufffd")
    yield _in_body("a line that ends in an unseen way", letter, "a\u2028b")
    yield _instead("an unseen sign in an id", letter, "book: cliff-house-lift", "book: cliff-house-\u200blift")
    yield _instead("a look-alike in a code", "objective-unknown", "[2C3: [missing", "[2\u04213: [missing")
    yield _whole("half a pair of signs", "file-unreadable", text_of(SESSION) + "\ud800", SESSION)
    yield _whole("another encoding", "file-unreadable", text_of(SESSION).encode("utf-16"), SESSION)
    yield _whole("bytes that are no text", "file-unreadable", text_of(SESSION).encode() + b"\xff\xfe\xc0\x80", SESSION)


def _sizes() -> Iterator[Hostile]:
    def huge(file: Path) -> None:
        file.touch()
        os.truncate(file, 50_000_000)

    large = "file-unreadable"
    yield Hostile("a page of 50 MB", SESSION, large, huge)
    yield Hostile("a drawing of 50 MB", WORM, large, huge)
    yield Hostile("a photograph of 50 MB", f"{BOOK}/photo.jpg", large, huge)
    yield _in_body("one word of 90,000 letters", large, "a" * 80_000)
    yield _in_body("one sum without an end", large, "1 + " * 20_000 + "1 = 2")
    yield _instead("a summary without an end", large, "title: Who", f"title: {'Who ' * 3000}")
    yield _in_body("a number of 5,000 digits", large, "9" * 5000)
    yield _in_body("a number of 5,000 digits in a sum", large, f"1 + {'9' * 5000} = 2")
    yield _in_body("one paragraph of short lines", large, "so\n" * 20_000)


def _tangles() -> Iterator[Hostile]:
    tangled = "file-unreadable"
    yield _in_body("open brackets", tangled, "[" * 5000)
    yield _in_body("pictures that never close", tangled, "![" * 5000)
    yield _in_body("links that never close", tangled, "[a](" * 5000)
    yield _in_body("open brackets, a line each", tangled, "[\n\n" * 5000)
    yield _in_body("tags that never close", tangled, "<a " * 5000)
    yield _in_body("comments that never close", tangled, "<!--\n\n" * 5000)
    yield _in_body("quotations inside quotations", tangled, ">" * 3000)
    yield _in_body("lists inside lists", tangled, "1. " * 2000 + "a")
    yield _instead("lists inside lists in a field", tangled, "title: Who", f"title: {'1. ' * 100}Who")
    yield _in_body("lists further and further in", tangled, "\n".join(" " * 4 * n + "- a" for n in range(60)))
    yield _in_body("quotation marks", tangled, "\"'" * 9000)
    yield _in_body("backslashes", tangled, "\\" * 20_000)
    yield _in_body("stars and more stars", tangled, "*a **b " * 9000)
    yield _in_body("five thousand headings of one name", "step-without-section", "@\n---\n" * 1000 + "## A\n\n" * 3000)
    yield _in_body("ten thousand fractions nobody has met", "fraction-beyond-year", "1/7 1/7 1/7 1/7\n\n" * 2000)
    yield _in_body("a sum of many fractions", tangled, " + ".join(f"1/{n}" for n in range(2, 1400)) + " = 7")
    yield _in_body("a table of a thousand columns", tangled, "|a" * 3000 + "\n" + "|-" * 3000 + "\n" + "|a" * 3000)


def _paths() -> Iterator[Hostile]:
    yield _instead(
        "a cover from outside", "picture-missing", "picture: cover.svg", "picture: ../../../../etc/passwd", RECORD
    )
    yield _instead("a cover by its full path", "picture-missing", "picture: cover.svg", "picture: /etc/passwd", RECORD)
    yield _instead(
        "a cover past backslashes", "picture-missing", "picture: cover.svg", "picture: ..\\..\\x.svg", RECORD
    )
    yield _instead(
        "a cover from a website",
        "picture-from-elsewhere",
        "picture: cover.svg",
        "picture: https://example.org/a.svg",
        RECORD,
    )
    yield _instead("a book that climbs", "field-mistyped", "book: cliff-house-lift", "book: ../../secret")
    yield _in_body("a link that climbs", "link-broken", "[a](../../../../../etc/passwd)")
    yield _in_body("a link by its full path", "link-broken", "[a](/etc/passwd)")
    yield _in_body("a link to a file of the machine", "address-forbidden", "[a](file:///etc/passwd)")
    yield _in_body("a link to a drive", "address-forbidden", "[a](C:/secret.txt)")


def _files() -> Iterator[Hostile]:
    def link_to(target: str) -> Callable[[Path], None]:
        def put(file: Path) -> None:
            file.unlink(missing_ok=True)
            file.symlink_to(target)

        return put

    page = "---\nkind: page\ntitle: A page of its own\nsummary: Words.\n---\n\nWords.\n"
    name = "file-name-unusable"
    yield Hostile("a page that is a link", SESSION, "file-unreadable", link_to("/etc/passwd"))
    yield Hostile("a link to itself", f"{BOOK}/again.md", "file-unreadable", link_to("again.md"))
    yield Hostile("a folder that is a link", f"{BOOK}/etc", "file-unreadable", link_to("/etc"))
    yield Hostile("a drawing that is a link", WORM, "file-unreadable", link_to("/etc/passwd"))
    yield Hostile("a device", f"{BOOK}/zero.md", "file-unreadable", link_to("/dev/zero"))
    yield Hostile("a pipe", f"{BOOK}/pipe.md", "file-unreadable", os.mkfifo)
    yield _whole("a name that climbs when unpacked", name, page, f"{BOOK}/a\\..\\..\\b.md")
    yield _whole("a name Windows keeps", name, page, "aux.md")
    yield _whole("a name that is long", name, page, f"{'a' * 200}.md")
    yield _whole("a name that differs by a capital", name, page, "Access.md")
    yield _whole("a name with a space", name, page, "a page.md")
    yield _whole("a name turned round", name, page, "gvs\u202edm.md")
    yield _whole("the finder's own name", "page-name-taken", page, "find.md")
    yield _whole("the stylesheet's folder", "page-name-taken", f"{_SVG}</svg>", "look/mark.svg")
    yield _whole("a page of HTML", "file-unreadable", "<script>alert(1)</script>", f"{BOOK}/page.html")
    yield _whole("a script", "file-unreadable", "alert(1)", f"{BOOK}/run.js")


def _drawings() -> Iterator[Hostile]:
    laughs = "".join(f'<!ENTITY {b} "{f"&{a};" * 10}">' for a, b in zip("abcdefgh", "bcdefghi", strict=True))
    rule = "drawing-unusable"
    yield _whole("a drawing with a script", rule, f"{_SVG}<script>alert(1)</script></svg>", WORM)
    yield _whole("a drawing that acts when loaded", rule, _SVG.replace(">", " onload='alert(1)'>") + "</svg>", WORM)
    yield _whole("a drawing of laughs", rule, f'<!DOCTYPE svg [<!ENTITY a "ha">{laughs}]>{_SVG}&i;</svg>', WORM)
    yield _whole(
        "a drawing that reads a file",
        rule,
        f'<!DOCTYPE svg [<!ENTITY a SYSTEM "file:///etc/passwd">]>{_SVG}&a;</svg>',
        WORM,
    )
    yield _whole("a drawing that fetches", rule, f"{_SVG}<image href='https://example.org/spy.png'/></svg>", WORM)
    yield _whole("a drawing with a page in it", rule, f"{_SVG}<foreignObject><iframe/></foreignObject></svg>", WORM)
    yield _whole("a drawing without a floor", rule, _SVG + "<g>" * 50_000 + "</g>" * 50_000 + "</svg>", WORM)
    parts = "".join(f'<g id="p{n}">{f"<use href=%#p{n - 1}%/>".replace("%", chr(34)) * 10}</g>' for n in range(1, 10))
    yield _whole("a drawing that multiplies", rule, f'{_SVG}<path id="p0" d="M0 0"/>{parts}</svg>', WORM)
    yield _whole("a drawing that is none", rule, "GIF89a", WORM)
    yield _whole("a photograph that is a page", rule, "<script>alert(1)</script>", f"{BOOK}/photo.png")


def _markup() -> Iterator[Hostile]:
    html, address = "html-not-on-list", "address-forbidden"
    yield _in_body("a script", html, "<script>alert(1)</script>")
    yield _in_body("a script over lines", html, "<script\n>alert(1)</script\n>")
    yield _in_body("a script inside another", html, "<scr<script>ipt>alert(1)</script>")
    yield _in_body("a picture that fails", html, '<img src="x" alt="x" onerror="alert(1)">')
    yield _in_body("a handler the Markdown way", html, '[a](session-1.md){onclick="alert(1)"}')
    yield _in_body("a handler on a heading", html, "#### Look {onclick=alert(1)}")
    yield _in_body("a frame", html, '<iframe src="https://example.org"></iframe>')
    yield _in_body("a form", html, '<form action="https://example.org"><input name="a"></form>')
    yield _in_body("a style", html, "<style>@import 'https://example.org/a.css';</style>")
    yield _in_body("a style on a word", html, '<span style="background: url(https://example.org)">a</span>')
    yield _in_body("a page that leads away", html, '<meta http-equiv="refresh" content="0; url=https://example.org">')
    yield _in_body("another root for every link", html, '<base href="https://example.org/">')
    yield _in_body("a drawing that acts", html, '<svg onload="alert(1)"></svg>')
    yield _in_body("an instruction", html, "<?php phpinfo(); ?>")
    yield _in_body("what a browser takes for a comment", html, "<![CDATA[<script>alert(1)</script>]]>")
    yield _in_body("a link that runs", address, "[a](javascript:alert(1))")
    yield _in_body("a link that runs, spelt otherwise", address, "[a](java&#x73;cript:alert(1))")
    yield _in_body("a link that runs, by name", address, "[a][b]\n\n[b]: JaVaScRiPt:alert(1)")
    yield _in_body("a link that is a page", address, "[a](data:text/html,<b>a</b>)")
    yield _in_body("a link anybody on the way can change", address, "[a](http://example.org)")
    yield _in_body("a link without its beginning", address, "[a](//example.org)")
    yield _in_body("a picture from a website", "picture-from-elsewhere", "![a](https://example.org/spy.png)")
    yield _in_body(
        "a picture from a website, by name", "picture-from-elsewhere", "![a][b]\n\n[b]: https://example.org/a.png"
    )
    yield _in_body("a picture in letters", "picture-from-elsewhere", "![a](data:image/svg+xml;base64,PHN2Zz4=)")
    yield _instead("a script in a title", html, "title: Who is worth Camel?", 'title: "<script>alert(1)</script>"')
    yield _instead(
        "a script spelt out in a title",
        html,
        "title: Who is worth Camel?",
        'title: "\\x3Cscript>alert(1)\\x3C/script>"',
    )
    yield _instead(
        "a script where a picture is told", html, "    alt: ", "    alt: <img src=x onerror=alert(1)> ", RECORD
    )


def _activities() -> Iterator[Hostile]:
    def block(name: str, rule: str, data: str) -> Hostile:
        return _in_body(name, rule, f"```maths\n{data}\n```")

    broken = "activity-broken"
    yield block("an activity of laughs", broken, "kind: bonds\nwhole: &a [1, 1]\nparts: [*a, *a]")
    yield block("an activity without a floor", broken, "kind: bonds\nwhole: " + "[" * 100 + "]" * 100)
    yield block("an activity without an end", broken, "kind: bonds\ntitle: " + "a " * 12_000 + "\nwhole: 7\nparts: 2")
    yield block(
        "an activity past all counting", "activity-too-many-answers", "kind: bonds\ntitle: A\nwhole: 10000000\nparts: 5"
    )
    yield block(
        "a script in an activity",
        "html-not-on-list",
        "kind: bonds\ntitle: <script>alert(1)</script>\nwhole: 7\nparts: 2",
    )
    yield block("an activity that makes an object", broken, "kind: !!python/name:os.system x\nwhole: 7")
