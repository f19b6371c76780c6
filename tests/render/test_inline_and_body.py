"""An author's words into HTML: small pieces, exactly."""

from __future__ import annotations

import pytest
from storymaths.parse.body import read_body, read_text
from storymaths.render.body import draw_blocks
from storymaths.render.inline import inline

HERE = "books/lift/session-1.md"


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("Plain words.", "Plain words."),
        ("3 < 4 & 5", "3 &lt; 4 &amp; 5"),
        ("*six* and **seven**", "<em>six</em> and <strong>seven</strong>"),
        ("[the words](../../words.md#equal)", '<a href="../../words.html#equal">the words</a>'),
        (
            "[4 + 5 = 8]{wrong}",
            '<span class="wrong"><span class="only-heard">Wrong on purpose: </span>4 + 5 = 8</span>',
        ),
    ],
)
def test_a_line(text: str, html: str) -> None:
    assert str(inline(text, HERE)) == html


def test_a_gap_is_drawn_and_can_be_heard() -> None:
    html = str(inline("___ is equal to ___.", HERE))
    assert html.count('class="gap"') == 2
    assert "blank" in html
    assert "___" not in html


@pytest.mark.parametrize(
    ("link", "href"),
    [
        ("session-2.md", "session-2.html"),
        ("../other/index.md#cast", "../other/index.html#cast"),
        ("#stops", "#stops"),
        ("https://example.org/a.md", "https://example.org/a.md"),
    ],
)
def test_links_lead_to_pages(link: str, href: str) -> None:
    assert f'href="{href}"' in draw_blocks(read_text(f"[a]({link})").blocks, HERE)


def test_a_table_can_scroll_in_a_frame_of_its_own() -> None:
    html = draw_blocks(read_text("| a | b |\n| --- | --- |\n| 1 | 2 |\n").blocks, HERE)
    assert html.index('tabindex="0"') < html.index("<table>")


def test_one_page_does_not_leak_into_the_next() -> None:
    draw_blocks(read_text("[a]: https://example.org\n\n[a]\n\n## Same").blocks, HERE)
    assert "href" not in draw_blocks(read_text("[a]\n\n## Same").blocks, HERE)
    assert 'id="same"' in draw_blocks(read_text("## Same").blocks, HERE)


def test_sections() -> None:
    body = read_body("Before.\n\n## One\n\nA.\n\n## Two\n\nB.")
    assert len(body.opening) == 1
    assert [(one.heading.anchor, one.heading.words) for one in body.sections] == [("one", "One"), ("two", "Two")]
