"""Five further invented old plans, in forms that nobody had in mind when the reading was made."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from docx.oxml.ns import qn
from docx.shared import Pt

from .writing import bold, grid, lines, new


def columns(path: Path) -> None:
    """A table whose columns are named: when, what the adult does, what children do, things."""
    plan = new()
    lines(plan, "Hedgehog's Jam Cupboard", "Y3 maths, 55 minutes in all")
    grid(
        plan,
        [
            ["Time", "Teacher", "Children", "Resources"],
            [
                "10 mins",
                "Read to page 6. Ask how many jars fit on three shelves of eight.",
                "Talk in pairs: 3 × 8 = 24.",
                "the story, 24 counters",
            ],
            [
                "25 mins",
                "Model an array on the board.\nTurn it round.",
                "Build arrays for 12, 18 and 24.",
                "squared paper",
            ],
            ["20 mins", "Plenary: which jam cupboard has the most shelves?", "Explain to a partner.", "whiteboards"],
        ],
    )
    lines(
        plan, "Key vocabulary: array, row, column, multiply", "Children who need support: use the 2 and 5 times tables."
    )
    plan.save(str(path))


def bullet_soup(path: Path) -> None:
    """All of it bullets, one under another, with stars and dashes mixed and a blank line here and there."""
    path.write_text(
        "* The Otter Who Lost a Half\n"
        "* yr 2 / summer / wk 3\n"
        "* we need\n"
        "    - paper plates (15)\n"
        "    - scissors\n"
        "    - glue stick\n"
        "* start - 5 min\n"
        "    - hold up a plate, fold it: is it a half?\n"
        "    - what if the fold is crooked?\n"
        "\n"
        "* then - 20 min\n"
        "    * fold and cut, 2 equal parts\n"
        "        * fast ones do quarters\n"
        "    * label each part 1/2\n"
        "* end - 10 min\n"
        "    - Is a half always the same size?\n"
        "* words: half, whole, equal parts\n"
        "* watch for: two parts that are not equal called halves\n",
        encoding="utf-8",
    )


def two_columns(path: Path) -> None:
    """Two columns of a page: what is about the lesson on the left, the lesson on the right, with a line between."""
    plan = new()
    plan.sections[0]._sectPr.xpath("./w:cols")[0].set(qn("w:num"), "2")
    for heading, said in (
        ("The Lighthouse with Ten Stairs Missing", ()),
        ("Who", ("Year 1, whole class",)),
        ("What we want", ("Count back from 20 in ones.",)),
        ("Bring", ("a number line for each pair", "one soft toy")),
        ("Say", ("before, after, count back",)),
    ):
        bold(plan, heading)
        lines(plan, *said)
    plan.paragraphs[-1].add_run().add_break()
    for heading, said in (
        ("First ten minutes", ("Walk down the stairs together, aloud.", "The keeper stops on 13. What comes next?")),
        ("Next twenty minutes", ("Pairs hide three stairs under a cloth and swap. 14, 13, __, 11",)),
        ("Last five minutes", ("Which number is two before 9?",)),
        ("If it is too hard", ("Only from 10.",)),
        ("If it is too easy", ("Begin at 43.",)),
    ):
        bold(plan, heading)
        lines(plan, *said)
    plan.save(str(path))


def capitals(path: Path) -> None:
    """Headings in capitals at the beginning of a paragraph, their text right after them on the same line."""
    plan = new()
    for said in (
        "SIX GEESE AND A CART",
        "AGE 6-7. LESSON 4 OF 6.",
        "INTENTION Children find what is left of a price after part of it is paid.",
        "YOU WILL NEED: COIN SETS; PURSES; A CART DRAWN ON SUGAR PAPER",
        "OPENING, 10 MINUTES. Put 12p in the cart. A goose takes 5p. How much is left?",
        "MIDDLE, 25 MINUTES. Pairs play the geese and write 12p − 5p = 7p.",
        "CLOSE, 10 MINUTES. Five geese took 2p each. Is anything left of 12p?",
        "KEEP SAFE: COINS ARE COUNTED BACK AND STAY OUT OF MOUTHS.",
        "MISTAKES TO EXPECT: COINS ARE COUNTED AND NOT THEIR PENCE.",
    ):
        plan.add_paragraph().add_run(said).font.size = Pt(11)
    plan.save(str(path))


def term_grid(path: Path) -> None:
    """A grid of half a term, as schools in England hang it up: a row a lesson, columns for what each holds."""
    plan = new()
    plan.add_heading("Autumn 2, Year 4: The Weaver's Loom", 0)
    grid(
        plan,
        [
            [
                "Lesson",
                "Learning objective",
                "Key vocabulary",
                "Main teaching",
                "Independent task",
                "Support / challenge",
                "Assessment",
            ],
            [
                "1",
                "To find factor pairs of numbers to 50",
                "factor, product",
                "Weave 24 threads in equal rows.",
                "All factor pairs of 24 and 36.",
                "S: 12 and 18\nC: which has most?",
                "Can say how they know all are found.",
            ],
            [
                "2",
                "To multiply three numbers",
                "product",
                "Looms with 2 × 3 × 4 threads.",
                "Find the quickest order.",
                "S: cubes\nC: with a gap",
                "Chooses an order and says why.",
            ],
            [
                "3",
                "To use factor pairs in sums",
                "factor",
                "Halve one, double the other.",
                "14 × 5 = 7 × 10 and four like it.",
                "S: arrays\nC: make their own",
                "Explains with an array.",
            ],
        ],
    )
    plan.save(str(path))


FURTHER: Mapping[str, Callable[[Path], None]] = {
    "columns.docx": columns,
    "bullet-soup.md": bullet_soup,
    "two-columns.docx": two_columns,
    "capitals.docx": capitals,
    "term-grid.docx": term_grid,
}
