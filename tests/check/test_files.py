"""Files of content that are not what content is made of: each told with its name, none followed or worked on."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from project import reference, text_of
from storymaths.check.rules import check_all
from storymaths.model.problem import Problem
from storymaths.parse.collection import read_collection

PAGE = text_of("about-the-quay.md")
DRAWING = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0H9"/></svg>'


def problems_in(root: Path) -> list[Problem]:
    """What is wrong with the files themselves in a folder of content."""
    return check_all(read_collection(root, reference()))


def put(root: Path, name: str, what: str | bytes) -> Path:
    path = root / "content" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_bytes(what.encode() if isinstance(what, str) else what)
    return path


def said(root: Path) -> list[tuple[str, str]]:
    return [(problem.rule, problem.place.path) for problem in problems_in(root)]


@pytest.mark.parametrize("name", ["about-us.md", "scenes/page-1.svg", "maths-3/year-2.md"])
def test_names_that_can_be_used(tmp_path: Path, name: str) -> None:
    put(tmp_path, name, DRAWING if name.endswith("svg") else PAGE.replace("](", "] ("))
    assert said(tmp_path) == []


@pytest.mark.parametrize(
    ("name", "why"),
    [
        ("Access.md", "small letters"),
        ("a page.md", "small letters"),
        ("a--page.md", "small letters"),
        ("a.b.md", "small letters"),
        ("con.md", "Windows"),
        ("aux/page.md", "Windows"),
        ("com1.svg", "Windows"),
        ("a\\..\\passwd.md", "small letters"),
        ("page\n2.md", "small letters"),
        ("page\x1b[2J.md", "small letters"),
        ("cafe\u0301.md", "small letters"),
        ("p\u0430ge.md", "small letters"),
        ("page\u202e.md", "small letters"),
        ("%2e%2e.md", "small letters"),
        ("a" * 81 + ".md", "longer than"),
        (os.fsdecode(b"p\xff.md"), "small letters"),
    ],
)
def test_names_that_cannot(tmp_path: Path, name: str, why: str) -> None:
    put(tmp_path, name, DRAWING if name.endswith("svg") else PAGE.replace("](", "] ("))
    (problem,) = problems_in(tmp_path)
    assert problem.rule == "file-name-unusable"
    assert why in problem.message
    str(problem).encode()  # can be printed


def test_names_that_differ_only_in_their_capitals(tmp_path: Path) -> None:
    put(tmp_path, "page.md", PAGE.replace("](", "] ("))
    put(tmp_path, "Page.md", PAGE.replace("](", "] (").replace("title: ", "title: Another "))
    assert said(tmp_path) == [("file-name-unusable", "content/Page.md")]


@pytest.mark.parametrize(
    "name", ["find.md", "words.md", "concepts/equality.md", "404.md", "look/mark.svg", "years/year-2.md"]
)
def test_names_the_build_uses_itself(tmp_path: Path, name: str) -> None:
    put(tmp_path, name, DRAWING if name.endswith("svg") else PAGE.replace("](", "] ("))
    assert [(rule, path) for rule, path in said(tmp_path) if rule != "file-name-unusable"] == [
        ("page-name-taken", f"content/{name}")
    ]


@pytest.mark.parametrize("name", ["page.html", "run.js", "style.css", "notes.txt", "page", "scene.svgz", "list.csv"])
def test_files_of_other_sorts(tmp_path: Path, name: str) -> None:
    put(tmp_path, name, "<script>alert(1)</script>")
    assert said(tmp_path) == [("file-unreadable", f"content/{name}")]


def test_links_out_of_the_content_are_not_followed(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    secret = tmp_path / "secret"
    secret.mkdir()
    (secret / "key.svg").write_text(DRAWING, encoding="utf-8")
    (tmp_path / "content/page.md").symlink_to("/etc/passwd")
    (tmp_path / "content/scene.svg").symlink_to(secret / "key.svg")
    (tmp_path / "content/scenes").symlink_to(secret)
    (tmp_path / "content/round").symlink_to(tmp_path / "content")
    problems = problems_in(tmp_path)
    assert sorted(problem.place.path for problem in problems if problem.rule == "file-unreadable") == [
        f"content/{name}" for name in ("page.md", "round", "scene.svg", "scenes")
    ]
    assert all("link to another place" in problem.message for problem in problems)


def test_what_is_no_plain_file_is_not_waited_for(tmp_path: Path) -> None:
    (tmp_path / "content").mkdir()
    os.mkfifo(tmp_path / "content/page.md")
    (problem,) = problems_in(tmp_path)
    assert "not a plain file" in problem.message


@pytest.mark.parametrize(("name", "size"), [("page.md", 50_000_000), ("scene.svg", 50_000_000), ("scene.png", 500_000)])
def test_files_of_great_size_are_not_read(tmp_path: Path, name: str, size: int) -> None:
    path = put(tmp_path, name, "")
    os.truncate(path, size)  # takes no room
    (problem,) = problems_in(tmp_path)
    assert problem.rule == "file-unreadable"
    assert f"{size:,} bytes" in problem.message


def test_bytes_that_are_no_text_are_told_with_their_place(tmp_path: Path) -> None:
    put(tmp_path, "page.md", PAGE.encode() + b"\n\nCaf\xe9.\n")
    (problem,) = problems_in(tmp_path)
    assert problem.rule == "file-unreadable"
    assert (problem.place.line, problem.place.column) == (PAGE.count("\n") + 3, 4)


@pytest.mark.parametrize(("name", "data"), [("a.png", b"GIF89a"), ("a.jpg", b"<svg/>"), ("a.webp", b"MZ")])
def test_photographs_are_what_they_say(tmp_path: Path, name: str, data: bytes) -> None:
    put(tmp_path, name, data)
    assert said(tmp_path) == [("drawing-unusable", f"content/{name}")]


def test_a_text_that_runs_on_is_never_converted(tmp_path: Path) -> None:
    put(tmp_path, "page.md", PAGE.replace("](", "] (") + "\n\n" + "word \"and' " * 900)
    put(tmp_path, "front.md", f"---\nkind: page\ntitle: Front\nsummary: {'so ' * 3000}\n---\n")
    collection = read_collection(tmp_path, reference())
    assert collection.documents == ()
    assert [(p.rule, p.place.path) for p in check_all(collection)] == [
        ("file-unreadable", "content/front.md"),
        ("file-unreadable", "content/page.md"),
    ]
