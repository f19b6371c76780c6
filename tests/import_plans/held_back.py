"""Eight more invented old plans, kept away while the reader of plans was written."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from .writing import bold, grid, lines, new, text_box, tracked, write_odt


def week_grid(path: Path) -> None:
    """Three lessons side by side."""
    plan = new()
    plan.add_heading("Week 3: The Kite Shop (Year 2)", 1)
    grid(
        plan,
        [
            ["Day", "Objective", "Oral/mental", "Main", "Plenary"],
            ["Mon", "2G2a sides", "Count sides", "Sort kites", "Which has no corners?"],
            ["Tues", "symmetry", "Fold", "Finish half a kite\nDraw the other half", "Show the fold"],
        ],
    )
    lines(plan, "Cross-curricular links: art")
    plan.save(str(path))


def questions_first(path: Path) -> None:
    """Headings with colons and questions."""
    plan = new()
    bold(plan, "Plan for: Moles in Rows")
    bold(plan, "Who is it for?")
    lines(plan, "Year 3 (ages 7-8), about three quarters of an hour")
    bold(plan, "What do I want them to learn?")
    lines(plan, "3C6: multiply by 3 and 4 using rows")
    bold(plan, "What do I need to bring?")
    lines(plan, "- mole cards", "- square paper")
    bold(plan, "How will I begin?")
    lines(plan, "Hide 3 rows of 4 under a cloth.")
    bold(plan, "What might go wrong?")
    lines(plan, "Counting the corner mole twice")
    bold(plan, "How will I know they have got it?")
    lines(plan, "Says 3 fours and 4 threes are the same: 3 × 4 = 4 × 3")
    plan.save(str(path))


def tabs(path: Path) -> None:
    """Columns by tabs, and a box."""
    plan = new()
    lines(plan, "Subject:\tMaths\tYear:\t4", "Topic:\tThe Clock with One Hand\tDuration:\t50 mins")
    lines(plan, "W.A.L.T.\tread the time to five minutes", "W.I.L.F.\tsays past and to")
    text_box(plan, "Homework: draw a clock at tea time")
    lines(
        plan, "0-10 min\tSing the clock song", "10-40 min\tMatch hands and words", "40-50 min\tMini plenary: ten to six"
    )
    lines(plan, "SEND:\tlarge clock face", "G&T:\tto the minute")
    plan.save(str(path))


def odt_table(path: Path) -> None:
    """An OpenDocument table of labels."""
    rows = (
        ("Lesson", "Fox and the Thirteen Stairs"),
        ("Class", "Reception"),
        ("Learning outcome", "one more, one less"),
        ("Apparatus", "stairs from blocks"),
        ("Carpet time (10 minutes)", "Climb and say: one more than 5 is 6."),
        ("Table activities", "Build your own stairs"),
        ("Look out for", "skipping thirteen"),
    )
    cell = '<table:table-cell table:number-columns-spanned="1"><text:p>{}</text:p></table:table-cell>'
    body = "".join(f"<table:table-row>{cell.format(a)}{cell.format(b)}</table:table-row>" for a, b in rows)
    write_odt(path, f"<table:table>{body}</table:table><text:p>Written in the <text:span>spring</text:span>.</text:p>")


def loose_markdown(path: Path) -> None:
    """Markdown with no headings at all, front matter of another program, Windows line ends."""
    path.write_bytes(
        (
            "---\r\nauthor: me\r\ntags: [maths, year 6]\r\n---\r\nRatio Soup — Y6 — 1hr\r\n\r\nI can: scale a recipe (6R1)\r\n"
            "NEED: jugs; beans\r\n\r\n10 mins - taste nothing, measure everything\r\n35 mins - twice the soup: 2 x 150 = 300\r\n"
            "15 mins - quick quiz. What is half of 250?\r\n\r\nHot water: adults only.\r\n"
        ).encode()
    )


def deep_table(path: Path) -> None:
    """A table within a table, and tracked changes inside."""
    plan = new()
    plan.add_heading("PLAN", 1)
    outer = grid(plan, [["Pond Dippers' Tally", "Year 2"], ["Teaching Input", ""]])
    inner = outer.cell(1, 1).add_table(2, 2)
    for at, words in enumerate(("newts", "|||| ||", "snails", "||||")):
        inner.cell(at // 2, at % 2).text = words
    tracked(plan, "Challenge: draw a ", "pie chart", "block diagram")
    lines(plan, "Evaluation and next steps: go back to fives")
    plan.save(str(path))


def styles(path: Path) -> None:
    """Quotes, captions, subtitles and continued lists."""
    plan = new()
    lines(plan, "One Hundred Buttons", style="Title")
    lines(plan, "A sixty minute lesson for Year 1", style="Subtitle")
    lines(plan, "“Every coat has five,” said Wren.", style="Quote")
    plan.add_heading("Prior knowledge", 3)
    lines(plan, "counts in ones", style="List Continue")
    plan.add_heading("Learning objective(s) & NC links", 3)
    lines(plan, "1N1b count in fives", style="List Paragraph")
    plan.add_heading("Teaching sequence", 3)
    lines(plan, "I do: thread five", "We do: thread ten", "You do: thread your own coat", style="List Number 2")
    plan.add_heading("AfL / Plenary", 3)
    lines(plan, "5 + 5 + 5 = 15. How many coats?")
    lines(plan, "Photo 1: the button jar", style="Caption")
    plan.save(str(path))


def one_cell(path: Path) -> None:
    """One cell that holds everything, lines ended by breaks."""
    plan = new()
    words = "MATHS YR 6\nAngles in the Paper Swan\nStimulus\nFold the swan\nOutcomes\nfind missing angles: 180 - 60 - 60 = 60\n"
    grid(plan, [[words + "Extend\nreflex angles\nSupport\na swan with marked folds\nSafety\nmind paper cuts"]])
    plan.add_paragraph("Teacher:").add_run("\nDate:\nSession 2 of 3")
    plan.save(str(path))


HELD_BACK: Mapping[str, Callable[[Path], None]] = {
    "week-grid.docx": week_grid,
    "questions-first.docx": questions_first,
    "tabs.docx": tabs,
    "stairs.odt": odt_table,
    "soup.md": loose_markdown,
    "deep-table.docx": deep_table,
    "styles.docx": styles,
    "one-cell.docx": one_cell,
}
