"""Which modules look for patterns in text, and whose text it is. What the program worked out is data, and not read back.

A module that begins to use ``re`` is listed here with what it reads, or gets its answer from the data instead.
"""

from __future__ import annotations

import ast

from project import ROOT

CORE = ROOT / "hooks" / "storymaths"

AN_AUTHORS = {
    "activities/author_demands.py": "numbers, signs and units in an author's own words for a task",
    "activities/claims.py": "answers as an author claims them, made comparable",
    "activities/clock/time.py": "times of day as an author writes them",
    "activities/order/clues.py": "clues",
    "activities/own_words.py": "whether an author's words for a task name numbers",
    "activities/position/grid_moves.py": "steps of a route",
    "activities/position/grid_squares.py": "names of squares",
    "activities/sort/cards.py": "stretches of numbers to sort",
    "check/file_name_unusable.py": "names of files",
    "check/html_found.py": "HTML in a page",
    "check/link_broken.py": "links in texts",
    "check/number_beyond_year.py": "numbers in prose",
    "check/pupil_numbers.py": "what stands around a number in prose",
    "check/things_used.py": "names of things in prose",
    "check/unit_beyond_year.py": "units in prose",
    "commands/plan.py": "days and dates of a command",
    "covers/stages.py": "signs and words in the text of a step",
    "expression/gapped.py": "number sentences with gaps",
    "expression/number.py": "numbers and amounts",
    "expression/signs.py": "the signs of arithmetic as each kind of text types them",
    "expression/tokens.py": "arithmetic",
    "model/address.py": "titles, for addresses",
    "model/document.py": "whether a text is marked up",
    "model/fields.py": "pages and codes in front matter",
    "model/prose.py": "numerals and signs in prose",
    "parse/body.py": "Markdown",
    "parse/collection.py": "names of files",
    "parse/document.py": "where front matter ends",
    "parse/drawing.py": "drawings",
    "parse/letters.py": "letters of a page",
    "parse/number_sentence.py": "number sentences in prose",
    "parse/page_text.py": "the raw text of a page",
    "parse/reading_level.py": "words and sentences of a home page",
    "render/body.py": "HTML that an author wrote among the Markdown",
    "render/cleaning.py": "addresses in an author's HTML",
    "render/inline.py": "gaps typed in a text",
    "render/quotes.py": "straight quotation marks",
    "render/sheets/cast_cards.py": "an author's note on the cards",
    "render/sheets/note_numbers.py": "numbers in an author's note",
    "render/sheets/recording.py": "a table described in an author's note",
    "render/sheets/words.py": "sums and amounts in running words, kept on one line",
}
A_FILES = {
    "commands/terminal.py": "signs of control for a terminal",
    "publish/assets.py": "notes in the stylesheet",
    "publish/open_data/xml_out.py": "letters that XML does not take",
    "publish/pack/limits.py": "names in a stranger's zip",
    "publish/pack/manifest.py": "lines of a stranger's manifest",
    "publish/weeks_page.py": "letterforms named in the stylesheet",
    "scripts/join.py": "imports and exports of our scripts",
}
A_FINISHED_PAGES = {
    "publish/linked_data/features.py": "whether a page shows a picture with words",
    "publish/pack/contents.py": "addresses of finished pages",
    "publish/pack/first_page.py": "the title of a finished page",
    "publish/pack/page_links.py": "links that lead out of a pack",
    "release/built_pages.py": "the finished site, tried before it is published",
    "release/links_lead.py": "links of the finished site",
    "render/spoken.py": "maths in a page's words, named for those who hear it",
    "render/word_links.py": "words of the word bank in a page's words",
}


def test_each_module_that_uses_patterns_says_whose_text_it_reads() -> None:
    using = {
        path.relative_to(CORE).as_posix()
        for path in CORE.rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if (isinstance(node, ast.Import) and any(alias.name == "re" for alias in node.names))
        or (isinstance(node, ast.ImportFrom) and node.module == "re")
    }
    assert sorted(using) == sorted({*AN_AUTHORS, *A_FILES, *A_FINISHED_PAGES})
