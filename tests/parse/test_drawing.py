"""Drawings: what is let pass, and what is refused, with its line and column."""

from __future__ import annotations

from pathlib import Path

import pytest
from drawings import OPEN, Tried, hostile, ordinary
from project import PROJECT
from storymaths.parse.drawing import faults_in_drawing, faults_in_picture, read_drawing
from storymaths.publish.assets import picture


def drawing(inside: str) -> str:
    return f"{OPEN}\n  {inside}\n</svg>"


@pytest.mark.parametrize(
    "inside",
    [
        '<path d="M0 0 L1e2,-3.5z" fill="#dc9f83"/>',
        '<path style="fill: red"/>',
        "<style>.a { fill: url(#g) }</style><linearGradient id='g'/>",
        '<g id="star"><path d="M0 0"/></g><use href="#star"/><use xlink:href="#star"/>',
        '<text x="1" y="2">a &lt; b &amp; c</text>',
        "<title>Snail</title><desc>Snail on a stone</desc>",
        '<circle fill="url(#g)" r="2"/>',
        "<!-- drawn by hand -->",
    ],
)
def test_these_are_let_pass(inside: str) -> None:
    assert faults_in_drawing("a.svg", drawing(inside)) == []


@pytest.mark.parametrize(
    ("inside", "says"),
    [
        ("<script>x</script>", "<script>"),
        ("<s:script xmlns:s='http://www.w3.org/2000/svg'/>", "<script>"),
        ("<foreignObject><p/></foreignObject>", "<foreignObject>"),
        ('<image href="a.png"/>', "<image>"),
        ('<a href="#x"/>', "<a>"),
        ('<animate attributeName="x"/>', "<animate>"),
        ('<set attributeName="href" to="x"/>', "<set>"),
        ('<g onload="x"/>', '"onload"'),
        ('<g ONCLICK="x"/>', '"ONCLICK"'),
        ('<use href="https://example.org/a.svg#b"/>', "another place"),
        ('<use xlink:href="other.svg#b"/>', "another place"),
        ('<path fill="url(https://example.org/a.svg#g)"/>', "another place"),
        ("<path style=\"fill: url( '//example.org/a')\"/>", "another place"),
        ('<path style="background: \\75 rl(x)"/>', "another place"),
        ("<style>@import 'a.css';</style>", "another place"),
        ("<style><![CDATA[ path { fill: url(data:x) } ]]></style>", "another place"),
        ("<?xml-stylesheet href='a.css'?>", "<?xml-stylesheet"),
        ("<path>", "breaks off"),
        ("<path d='M0 0' d='M1 1'/>", "breaks off"),
        ("<x:path/>", "breaks off"),
        ("&nbsp;", "breaks off"),
        ('<path d="Mx y Z"/>', "numbers and letters of a path"),
        ('<g id="a"><use href="#a"/></g><use href="#a"/>', "itself"),
    ],
)
def test_these_are_refused_where_they_stand(inside: str, says: str) -> None:
    fault = faults_in_drawing("a.svg", drawing(inside))[0]
    assert says in fault.detail
    assert fault.place.path == "a.svg"
    assert fault.place.line in (2, 3)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("", "breaks off"),
        ("hello", "breaks off"),
        ("<svg viewBox='0 0 9 9'/>", "does not open with"),
        ("<html xmlns='http://www.w3.org/1999/xhtml'/>", "does not open with"),
        (OPEN.replace(' viewBox="0 0 9 9"', "") + "</svg>", "no size"),
        (OPEN.replace("0 0 9 9", "0 0 0 9") + "</svg>", "no size"),
        (OPEN.replace("0 0 9 9", "0 0 nan 9") + "</svg>", "no size"),
        (OPEN.replace("0 0 9 9", "0 0 9") + "</svg>", "no size"),
        ("<?xml version='1.0' encoding='utf-16'?>" + OPEN + "</svg>", "utf-16"),
        ("<!DOCTYPE svg [<!ENTITY a 'aaaa'><!ENTITY b '&a;&a;&a;&a;'>]>" + OPEN + "&b;</svg>", "stands for others"),
        (OPEN + "<g>" * 5000 + "</g>" * 5000 + "</svg>", "64 deep"),
    ],
)
def test_the_whole_is_refused(text: str, says: str) -> None:
    assert says in faults_in_drawing("a.svg", text)[0].detail


def test_bytes_that_are_no_text() -> None:
    (fault,) = faults_in_picture("a.svg", drawing("\n<!-- caf").encode() + b"\xe9 -->")
    assert "UTF-8" in fault.detail
    assert fault.place.line > 1


@pytest.mark.parametrize("tried", hostile(), ids=lambda tried: tried.name)
def test_a_hostile_drawing_is_refused_or_let_through_without_what_is_bad_in_it(tried: Tried) -> None:
    read = read_drawing(tried.text)
    if tried.says:
        assert any(tried.says in fault.detail for fault in read.faults), read.faults
        assert read.served is None
    else:
        assert read.faults == ()
    assert "127.0.0.1" not in read.text
    assert len(read.text) < 300_000


@pytest.mark.parametrize("tried", ordinary(), ids=lambda tried: tried.name)
def test_an_ordinary_drawing_is_accepted_and_written_again(tried: Tried) -> None:
    read = read_drawing(tried.text)
    assert read.faults == ()
    assert tried.shows in read.text
    assert not tried.drops or tried.drops not in read.text
    assert read_drawing(read.text).served == read.text, "what is served is served as it is"


def test_of_a_file_that_is_refused_nothing_is_served(tmp_path: Path) -> None:
    file = tmp_path / "a.svg"
    file.write_text(drawing("<!-- mine --><path d='M0 0h9'/>"), encoding="utf-8")
    assert picture(file) == '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9"/></svg>\n'
    file.write_text(drawing("<script/><path d='M0 0h9'/>"), encoding="utf-8")
    assert picture(file) is None
    file.write_bytes(b"\xff")
    assert picture(file) is None
    assert picture(tmp_path / "a.png") == tmp_path / "a.png"


def test_everything_wrong_is_told_at_once() -> None:
    faults = faults_in_drawing("a.svg", drawing("<script/>\n<image/>\n<g onload='x'/>"))
    assert [fault.place.line for fault in faults] == [2, 3, 4]


def test_drawings_that_are_right_pass() -> None:
    for path in (PROJECT / "content").rglob("*.svg"):
        assert faults_in_picture(path.name, path.read_bytes()) == [], path
