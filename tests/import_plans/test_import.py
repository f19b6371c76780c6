"""Old plans in twenty-five forms become drafts: no word lost, and what is what recognised. What plans call their parts is common
practice, no source.

The words that go in are counted by other programs than the one under test: python-docx's own tree for .docx (ECMA-376), lxml
for .odt (ISO/IEC 26300).
"""

from __future__ import annotations

import re
import zipfile
from collections import Counter
from collections.abc import Iterable
from functools import cache
from importlib import import_module
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from command import storymaths
from docx import Document
from import_plans.expected import EXPECTED
from import_plans.further import FURTHER
from import_plans.held_back import HELD_BACK
from import_plans.seen import SEEN
from import_plans.writing import write_odt, write_zip
from lxml import etree
from project import PROJECT, copy_of_project, problems_with, reference
from storymaths.commands.old_plan import Draft, draft_of
from storymaths.model.session import Session
from storymaths.parse.body import words_of
from storymaths.parse.old_plan.as_markdown import as_blocks
from storymaths.parse.old_plan.lines import Unreadable
from storymaths.parse.old_plan.sections import sections_of
from storymaths.pipeline import start_build
from storymaths.publish.page_kinds.table import PAGE_KINDS

PLANS = {**SEEN, **HELD_BACK, **FURTHER}
READERS = import_module("storymaths.commands.import").READERS
_WORD = re.compile(r"[^\W_]+")
_W = "{http://schemas.openxmlformats.org/wordprocessingml/2006/main}"
_NOT_READ = (f"{_W}del", "{http://schemas.openxmlformats.org/markup-compatibility/2006}Fallback")


@cache
def _draft(name: str) -> tuple[Draft, str]:
    """The draft of a plan, and all the words of the plan."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / name
        PLANS[name](path)
        blocks = READERS[path.suffix](path, reference().old_plans.limits)
        words = _words_of(path)
    starter = next(kind.starter.text for kind in PAGE_KINDS.values() if kind.schema is Session).read_text("utf-8")
    about: dict[str, str | int] = {"book": "hats", "number": 9, "title": "?"}
    return draft_of(sections_of(blocks, reference().old_plans), reference(), starter, about), words


def _words_of(path: Path) -> str:
    if path.suffix == ".md":
        # The numbers of a numbered list are the list's, which counts for itself.
        return re.sub(r"(?m)^\s*\d+[.)] ", "", path.read_text("utf-8"))
    if path.suffix == ".odt":
        with zipfile.ZipFile(path) as file:
            root = etree.fromstring(file.read("content.xml"))
        return " ".join(root.itertext())
    document = Document(str(path))
    told = [_text(document.element.body)]
    with zipfile.ZipFile(path) as file:
        if "word/footnotes.xml" in file.namelist():
            told.append(_text(etree.fromstring(file.read("word/footnotes.xml"))))
    return " ".join(told)


def _text(element: etree._Element) -> str:
    if element.tag in _NOT_READ:
        return ""
    own = element.text or "" if element.tag == f"{_W}t" else ""
    around = " " if element.tag in (f"{_W}p", f"{_W}tab", f"{_W}br") else ""
    return around + own + "".join(map(_text, element)) + around


def _count(text: str) -> Counter[str]:
    """Words, the x between numbers being a sign."""
    return Counter(_WORD.findall(re.sub(r"(?<=\d) ?[x*] ?(?=\d)", " × ", text)))


@pytest.mark.parametrize("name", PLANS)
def test_no_word_is_lost(name: str) -> None:
    draft, words = _draft(name)
    kept = "\n".join(words_of(line) for line in draft.body.splitlines())
    assert not _count(words) - _count(kept)


@pytest.mark.parametrize("name", PLANS)
def test_the_draft_can_be_read(name: str) -> None:
    """Nothing in it is taken for mark-up, and its head is one that a draft may have."""
    path = f"books/{next(iter(_books()))}/session-9.md"
    text = _draft(name)[0].text.replace("book: hats", f"book: {next(iter(_books()))}")
    allowed = {"session-number-gap"}
    broken = (
        "front-matter-broken",
        "field-",
        "html-not-on-list",
        "file-unreadable",
        "letter-misleading",
        "step-without",
    )
    found = [problem for problem in problems_with({path: text}) if problem.rule not in allowed]
    assert not [problem for problem in found if problem.rule.startswith(broken)]


def _books() -> list[str]:
    return sorted(path.parent.name for path in (PROJECT / "content" / "books").glob("*/index.md"))


def test_the_command_writes_a_draft_and_says_what_it_found(tmp_path: Path) -> None:
    project, book = copy_of_project(tmp_path / "project"), _books()[0]
    plan = tmp_path / "old.docx"
    SEEN["headings.docx"](plan)
    written = [storymaths("import", str(plan), "--book", book, folder=project) for _ in range(2)]
    assert [one.returncode for one in written] == [0, 0]
    first, second = (re.search(r"Wrote (\S+),", one.stdout) for one in written)
    assert first
    assert second
    assert first[1] != second[1], "a draft that is there is left as it is"
    assert "title: The Pancake Ferry: sharing equally" in written[0].stdout
    assert re.search(r"Still to write.*misconceptions", written[0].stdout)
    text = (project / first[1]).read_text("utf-8")
    assert "status: draft" in text
    assert "## Starter (10 minutes)\n\nCount in twos" in text


def test_a_book_that_is_not_there_is_told(tmp_path: Path) -> None:
    plan = tmp_path / "old.md"
    SEEN["goat.md"](plan)
    done = storymaths("import", str(plan), "--book", "no-such-book")
    assert done.returncode == 1
    assert 'There is no book "no-such-book"' in done.stderr


def test_typed_sums_get_their_signs_and_nothing_else_does() -> None:
    body = _draft("typed-sums.docx")[0].body
    assert "10 − 4 = 6 and 20 − 8 = 12" in body
    assert "4 × 5 = 20. Then 3 × 4 = 12" in body
    assert "boots x 12" in body


_BOMB = b'<!DOCTYPE a [<!ENTITY b "' + b"c" * 100 + b'">]><a>&b;</a>'
_LOADS = (
    b'<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r" '
    b'Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/attachedTemplate" '
    b'Target="https://example.org/t.dotm" TargetMode="External"/></Relationships>'
)
_DEEP = b"<a>" * 5000 + b"</a>" * 5000
_HOSTILE = {
    "entities": ({"word/document.xml": _BOMB}, "multiply"),
    "entities in UTF-16": ({"word/document.xml": _BOMB.decode().encode("utf-16")}, "multiply"),
    "macros": ({"word/document.xml": b"<a/>", "word/vbaProject.bin": b"x"}, "macros"),
    "template from elsewhere": (
        {"word/document.xml": b"<a/>", "word/_rels/settings.xml.rels": _LOADS},
        "loads something",
    ),
    "zip bomb": ({"word/document.xml": b" " * 90_000_000}, "unpacks to far more"),
    "deep": ({"word/document.xml": _DEEP}, "inside each other"),
    "broken": ({"word/document.xml": b"<a>"}, "damaged"),
    "no text": ({"other.xml": b"<a/>"}, "no text in it"),
    "too many files": ({f"{at}.xml": b"" for at in range(3000)}, "unpacks to far more"),
}


@pytest.mark.parametrize("name", _HOSTILE)
def test_a_hostile_file_is_refused_in_plain_words(name: str, tmp_path: Path) -> None:
    parts, says = _HOSTILE[name]
    write_zip(tmp_path / "plan.docx", parts)
    with pytest.raises(Unreadable, match=says):
        READERS[".docx"](tmp_path / "plan.docx", reference().old_plans.limits)


@pytest.mark.parametrize(
    ("name", "content"), [("a.docx", b"no zip"), ("a.odt", b"PK\x03\x04"), ("a.md", b"\xff\xfe\0")]
)
def test_what_is_no_plan_is_refused(name: str, content: bytes, tmp_path: Path) -> None:
    (tmp_path / name).write_bytes(content)
    done = storymaths("import", str(tmp_path / name), "--book", _books()[0])
    assert done.returncode == 1
    assert "Nothing was written" in done.stderr


def test_a_file_that_is_too_large_is_not_opened(tmp_path: Path) -> None:
    with (tmp_path / "a.md").open("wb") as file:
        file.truncate(reference().old_plans.limits.file_bytes + 1)
    with pytest.raises(Unreadable, match="too large"):
        READERS[".md"](tmp_path / "a.md", reference().old_plans.limits)


def test_an_entity_in_an_opendocument_text_is_refused(tmp_path: Path) -> None:
    write_odt(tmp_path / "a.odt", "<text:p>x</text:p>")
    write_zip(tmp_path / "a.odt", {"content.xml": _BOMB})
    with pytest.raises(Unreadable, match="multiply"):
        READERS[".odt"](tmp_path / "a.odt", reference().old_plans.limits)


def _recognised(names: Iterable[str]) -> tuple[int, int]:
    """How many of the parts that a person finds are found, and how many there are; a title counts when it is the very one."""
    found = of = 0
    for name in names:
        draft, (title, parts) = _draft(name)[0], EXPECTED[name]
        taken = {line.partition(":")[0] for line in draft.recognised}
        found += (draft.head["title"] == title) + len(taken & set(parts.split()))
        of += 1 + len(parts.split())
    return found, of


def test_most_parts_are_recognised() -> None:
    """When the eight were first read, by a reader that had not seen them, the figures were 81 of 83 and 35 of 49."""
    for names, least, of in ((SEEN, 81, 83), (HELD_BACK, 38, 49)):
        found, there = _recognised(names)
        assert there == of
        assert found >= least


def test_a_draft_opens_for_its_author(tmp_path: Path) -> None:
    project, book = copy_of_project(tmp_path / "project"), _books()[0]
    plan = tmp_path / "old.docx"
    SEEN["layout-table.docx"](plan)
    wrote = re.search(r"Wrote content/(\S+),", storymaths("import", str(plan), "--book", book, folder=project).stdout)
    assert wrote
    build = start_build(project, serving=True)
    assert not [problem for problem in build.reading.problems if problem.rule == "program-fault"]
    page = build.page(wrote[1])
    assert "Measure the shelf with string first" in page
    assert "Table four ran out of string" in page


@pytest.mark.parametrize("name", ["merged.odt", "tracked.docx"])
def test_what_a_word_processor_saved_has_the_same_words(name: str) -> None:
    """Two of the plans, opened and saved by LibreOffice 7.4."""
    path = Path(__file__).parent / "saved_by_a_word_processor" / name
    blocks = READERS[path.suffix](path, reference().old_plans.limits)
    saved = as_blocks(blocks)
    _, words = _draft(f"{path.stem}.docx")
    assert not _count(words) - _count(words_of(saved.replace("\n", " ")))
