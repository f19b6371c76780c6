"""The finished site tried: what is let pass, and what stops it, each told with its page."""

from __future__ import annotations

from pathlib import Path

import pytest
from project import reference
from storymaths.model.problem import Problem
from storymaths.model.reference import PublishedLimits
from storymaths.release.built_pages import read_built
from storymaths.release.trial import RULES, try_out

from .tiny_site import LIMITS, TODAY, page


def tried(
    folder: Path, files: dict[str, str | bytes], before: dict[str, str] | None = None, limits: PublishedLimits = LIMITS
) -> list[Problem]:
    for name, what in files.items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(what.encode() if isinstance(what, str) else what)
    site = read_built(folder, frozenset({"content/books/lift/session-1.md"}))
    return try_out(site, limits, before or {}, TODAY)


def found(folder: Path, inside: str) -> list[tuple[str, str]]:
    files = {
        "books/lift/session-1.html": page("Words.", inside=inside),
        "index.html": page("First."),
        "a.svg": "<svg/>",
    }
    return [(problem.rule, problem.place.path) for problem in tried(folder, files)]


SESSION = "content/books/lift/session-1.md"


@pytest.mark.parametrize(
    "inside",
    [
        '<a href="../../index.html">x</a>',
        '<a href="../../index.html#top-of-it">x</a>',
        '<a href="#top-of-it">x</a> <a href="#">x</a> <a href="#top">x</a>',
        '<img src="../../a.svg" alt="">',
        '<a href="https://example.org/">x</a> <a href="mailto:a@example.org">x</a>',
        '<script type="application/ld+json">{"name": "x"}</script>',
        '<p title="a &lt; b">3 &lt; 4</p>',
        '<a href="session-1.html?page=2">x</a>',
    ],
)
def test_these_are_let_pass(tmp_path: Path, inside: str) -> None:
    assert found(tmp_path, inside) == []


@pytest.mark.parametrize(
    ("inside", "rule"),
    [
        ('<a href="session-2.html">x</a>', "published-link-broken"),
        ('<a href="../../index.html#nowhere">x</a>', "published-link-broken"),
        ('<a href="/index.html">x</a>', "published-link-broken"),
        ('<a href="../../../../etc/passwd">x</a>', "published-link-broken"),
        ('<img src="b.svg" alt="">', "published-link-broken"),
        ('<img src="https://example.org/b.svg" alt="">', "published-link-broken"),
        ('<script src="//example.org/b.js"></script>', "published-link-broken"),
        ("<script>run()</script>", "published-page-unguarded"),
        ("<style>p { color: red }</style>", "published-page-unguarded"),
        ('<p style="color: red">x</p>', "published-page-unguarded"),
        ('<p OnClick="x">x</p>', "published-page-unguarded"),
        ('<a href=" JavaScript:x">x</a>', "published-page-unguarded"),
        ("<iframe></iframe>", "published-page-unguarded"),
        ("<base>", "published-page-unguarded"),
        ("<object></object>", "published-page-unguarded"),
    ],
)
def test_these_stop_it(tmp_path: Path, inside: str, rule: str) -> None:
    assert found(tmp_path, inside) == [(rule, SESSION)]


def test_a_page_without_its_policy_or_with_it_too_late(tmp_path: Path) -> None:
    bare = page("Words.").replace("default-src 'self'; ", "")
    late = page("Words.").replace("<head>", '<head><script src="a.js"></script>')
    loose = page("Words.").replace("script-src 'self'", "script-src 'self' 'unsafe-inline'")
    problems = tried(tmp_path, {"bare.html": bare, "late.html": late, "loose.html": loose, "a.js": ""})
    assert [(problem.rule, problem.place.path) for problem in problems] == [
        ("published-page-unguarded", name) for name in ("bare.html", "late.html", "loose.html")
    ]


def test_styles_name_files_that_are_there(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {
        "look/a.css": "p { background: url('../b.svg') } @font-face { src: url(c.woff2) }",
        "b.svg": "<svg/>",
    }
    (problem,) = tried(tmp_path, files)
    assert "look/a.css names c.woff2" in problem.message


def test_sizes(tmp_path: Path) -> None:
    limits = PublishedLimits(page_bytes=1000, file_bytes=2000, site_bytes=5000)
    files: dict[str, str | bytes] = {
        "books/lift/session-1.html": page("x" * 1000),
        "a.pdf": b"x" * 2001,
        "b.pdf": b"x" * 1999,
    }
    problems = tried(tmp_path, files, limits=limits)
    assert [(problem.rule, problem.place.path) for problem in problems] == [
        ("published-too-large", "a.pdf"),
        ("published-too-large", SESSION),
        ("published-too-large", "site"),
    ]
    assert reference().limits.published.page_bytes > 0


def test_a_page_that_vanished_is_told_with_what_to_write(tmp_path: Path) -> None:
    files: dict[str, str | bytes] = {
        "books/lift/new-name.html": page("x", "Level at last"),
        "index.html": page("x", "First"),
    }
    before = {
        "index.html": "First",
        "books/lift/old-name.html": "Level at last",
        "books/lift/home-3.html": "Gone for good",
    }
    gone, renamed = tried(tmp_path, files, before)
    assert {problem.rule for problem in (gone, renamed)} == {"page-vanished"}
    assert renamed.place.path == "site_data/moved.yaml"
    assert "{from: books/lift/old-name.md, to: books/lift/new-name.md, since: 2027-01-11}" in renamed.fix
    assert 'books/lift/home-3.html ("Gone for good") was published, and is gone.' in gone.message
    assert "retired:" in gone.fix


def test_every_rule_of_the_trial_is_told_in_full() -> None:
    for rule in RULES:
        assert rule.says.endswith(".")
        assert rule.why.endswith(".")
        assert all((rule.source, rule.wrong, rule.right))
