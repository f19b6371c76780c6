"""Twelve invented old plans, each in a form of its own."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

from .writing import add_footnote, bold, grid, lines, new, picture, text_box, tracked, write_odt


def headings(path: Path) -> None:
    """Built-in headings and bullets."""
    plan = new()
    plan.add_heading("The Pancake Ferry: sharing equally", 0)
    lines(plan, "Year 2", "Duration: 45 minutes")
    plan.add_heading("Learning objectives", 1)
    lines(plan, "2C6 recall division facts", "Share up to 20 pancakes equally", style="List Bullet")
    plan.add_heading("Resources", 1)
    lines(plan, "30 counters", "paper plates, one between two", style="List Bullet")
    plan.add_heading("Key vocabulary", 1)
    lines(plan, "share, equal, left over")
    plan.add_heading("Starter (10 minutes)", 1)
    lines(plan, "Count in twos round the circle. Check that 12 ÷ 2 = 6.")
    plan.add_heading("Main activity (25 minutes)", 1)
    lines(plan, "Deal pancakes to two otters, one each, until none is left.", "Write 8 ÷ 2 = 4 on the plate.")
    plan.add_heading("Plenary (10 minutes)", 1)
    lines(plan, "How do you know that the shares are fair?")
    plan.add_heading("Differentiation", 1)
    plan.add_heading("Support", 2)
    lines(plan, "Six pancakes and two bears.")
    plan.add_heading("Extension", 2)
    lines(plan, "Three bears and 15 pancakes.")
    plan.save(str(path))


def bold_only(path: Path) -> None:
    """Headings by bold only, times in the text."""
    plan = new()
    bold(plan, "Counting the Owls at Tall Barn")
    lines(plan, "Class: Y1   Time: 9.30–10.15")
    for heading, said in (
        ("We are learning to", "count on from any number to 20"),
        ("You will need", "number cards, a long rope, pegs"),
        ("Introduction (10 mins)", "Peg the numbers in order. Say each one."),
        ("Activity (25 mins)", "Each pair pegs three owls and says what 7 + 3 makes. 7 + 3 = 10."),
        ("Review (10 mins)", "Which number comes after 19?"),
        ("Watch out for", "Children who count the owl they start on."),
        ("Health and safety", "The rope stays on the floor."),
    ):
        bold(plan, heading)
        lines(plan, said)
    plan.save(str(path))


def layout_table(path: Path) -> None:
    """Everything in a table of two columns, labels on the left."""
    plan = new()
    grid(
        plan,
        [
            ["Title", "Snail's Long Shelf"],
            ["Year group", "Year 3"],
            ["Time", "60 min"],
            ["LO", "To measure lengths in centimetres and millimetres\n3M1 compare lengths"],
            ["Success criteria", "I can begin at zero"],
            ["Equipment", "Rulers\nString\nShelf cards"],
            ["Vocab", "length, centimetre, millimetre"],
            ["Main teaching", "Measure the shelf with string first, then a ruler."],
            ["Independent work", "Measure five shelves. 10 mm = 1 cm."],
            ["Less able", "Whole centimetres only"],
            ["More able", "Give each length in two ways"],
            ["Plenary", "What goes wrong if you begin at one?"],
            ["Evaluation", "Table four ran out of string."],
        ],
    )
    plan.save(str(path))


def numbered_phases(path: Path) -> None:
    """Numbered phases with a time each."""
    plan = new()
    lines(plan, "Badger's Biscuit Tin", style="Title")
    lines(plan, "Y1 maths. 40 mins.", "Aim: to add two numbers to 10. 1C1")
    for said in (
        "1. Hook (5 mins): shake the tin. How many biscuits could it hold?",
        "2. Teach (10 mins): 4 + 3 = 7 with cubes.",
        "3. Practise (20 mins): each pair fills a tin of ten.",
        "4. Wrap up (5 mins): show me with fingers what goes with 6.",
    ):
        lines(plan, said)
    lines(plan, "Resources: tins, cubes, biscuit cards.", "Allergies: nobody eats the biscuits.")
    plan.save(str(path))


def all_caps(path: Path) -> None:
    """Headings in capitals, plain paragraphs."""
    plan = new()
    lines(plan, "THE WINDMILL THAT TURNED TOO FAR", "YEAR 4", "OBJECTIVE", "Turn through right angles, 4G4.")
    lines(plan, "KEY QUESTIONS", "How far has it turned?", "Is that more or less than a half turn?")
    lines(plan, "STARTER 10 MINUTES", "Stand and turn a quarter turn to the right.")
    lines(plan, "MAIN 30 MINUTES", "Turn the paper windmill and write down where the red sail points.")
    lines(plan, "EXIT TICKET", "The sail points up. It makes three quarter turns clockwise. Where does it point?")
    lines(plan, "MISCONCEPTIONS", "A turn is the sail itself and not how far it goes.")
    plan.save(str(path))


def timetable(path: Path) -> None:
    """A timetable with a header row."""
    plan = new()
    plan.add_heading("Lesson plan: The Hen Who Kept Change", 1)
    lines(plan, "Year Group: 2", "Lesson length: 1 hour")
    grid(
        plan,
        [
            ["Time", "What the teacher does", "What the children do"],
            ["9.00–9.10", "Reads to page 6", "Count the pennies aloud"],
            ["9.10–9.40", "Models 20p − 5p = 15p", "Buy eggs and give change"],
            ["9.40–10.00", "Asks how we know", "Explain to a partner"],
        ],
    )
    plan.add_heading("Materials", 2)
    lines(plan, "Coins: 1p, 2p, 5p, 10p", "Egg boxes")
    plan.save(str(path))


def nested(path: Path) -> None:
    """Bullets inside bullets, a text box, a picture."""
    plan = new()
    plan.add_heading("Two Trains of Ten", 1)
    text_box(plan, "Remember: glue sticks are in the tall cupboard")
    picture(plan)
    plan.add_heading("Intended outcomes", 2)
    lines(plan, "Tens and ones in numbers to 50", style="List Bullet")
    lines(plan, "say 34 as 3 tens and 4 ones", "write 30 + 4 = 34", style="List Bullet 2")
    lines(plan, "1N4", style="List Bullet")
    plan.add_heading("Adult support", 2)
    lines(plan, "Mr Thistle sits with the red table.")
    plan.add_heading("Lesson outline", 2)
    lines(plan, "Build a train of ten cubes (5 minutes)", "Add four more cubes (15 minutes)", style="List Number")
    lines(plan, "Draw both trains (10 minutes)", style="List Number")
    plan.save(str(path))


def tracked_and_notes(path: Path) -> None:
    """Tracked changes and a footnote."""
    plan = new()
    plan.add_heading("Half the Moon Cake", 1)
    lines(plan, "Y3")
    plan.add_heading("Learning intention", 2)
    tracked(plan, "Find a half and ", "a third ", "a quarter ")
    plan.add_heading("Higher attainers", 2)
    lines(plan, "Find three quarters.")
    plan.add_heading("Lower attainers", 2)
    lines(plan, "Fold, then cut with help.")
    plan.add_heading("Risk assessment", 2)
    lines(plan, "Round-ended scissors, counted out and in.")
    plan.add_heading("Activity 1", 2)
    lines(plan, "Fold a paper moon into 4 equal parts and colour 1 of them.")
    plan.save(str(path))
    add_footnote(path, "The paper moons are kept from last spring.")


def typed_sums(path: Path) -> None:
    """Sums typed with x and a hyphen, as keyboards give them."""
    plan = new()
    plan.add_heading("Four Boots Each", 1)
    lines(plan, "Year 2, 50 minutes")
    plan.add_heading("What we need", 2)
    lines(plan, "boots x 12, chalk")
    plan.add_heading("Mental oral starter", 2)
    lines(plan, "10 - 4 = 6 and 20 - 8 = 12.")
    plan.add_heading("Main", 2)
    lines(plan, "4 x 5 = 20. Then 3*4 = 12, 12/3 = 4. A slip: 4 x 3 = 7.")
    lines(plan, "Say: a dog has # legs, [not] {four}, and *stars* cost_a_lot.")
    plan.add_heading("Assessment opportunities", 2)
    lines(plan, "Sees 4 x 5 as four fives.")
    plan.save(str(path))


def odt(path: Path) -> None:
    """An OpenDocument text."""
    write_odt(
        path,
        '<text:h text:outline-level="1">The Lantern Queue</text:h><text:p>Year 1<text:s text:c="2"/>30 minutes</text:p>'
        '<text:h text:outline-level="2">Objectives</text:h><text:list><text:list-item><text:p>order numbers, 1N2a'
        "</text:p><text:list><text:list-item><text:p>to 20</text:p></text:list-item></text:list></text:list-item>"
        '</text:list><text:h text:outline-level="2">Warm-up (5 min)</text:h><text:p>Line up by shirt<text:tab/>number.'
        '</text:p><text:h text:outline-level="2">Task (25 min)</text:h><table:table><table:table-row><table:table-cell>'
        "<text:p>Lantern</text:p></table:table-cell><table:table-cell><text:p>Place</text:p></table:table-cell>"
        "</table:table-row><table:table-row><table:table-cell><text:p>red</text:p></table:table-cell><table:table-cell>"
        "<text:p>third</text:p></table:table-cell></table:table-row></table:table><text:p>Bring<text:note><text:note-body>"
        "<text:p>two spare ones</text:p></text:note-body></text:note> lanterns.</text:p>",
    )


def markdown(path: Path) -> None:
    """Markdown with odd headings."""
    path.write_text(
        "The Goat Who Weighed Nothing\n============================\n\n**Yr:** 2 | **Length:** 55 mins\n\n"
        "#Objectives#\n* weigh in grams\n* 2M9\n\n### Kit list\n- balance\n- 10 g pieces\n\n"
        "Introduction\n------------\nHold one in each hand. 5 + 5 = 10\n\n#### Group work - 20 minutes\n"
        "1) weigh a goat\n2) write it down\n\n| Goat | Grams |\n|---|---|\n| Nan | 120 |\n\n"
        "> Nan said she was light.\n\n__Plenary__\n\nWhich is heavier, and how do you know?\n",
        encoding="utf-8",
    )


def merged(path: Path) -> None:
    """Merged cells and groups by ability side by side."""
    plan = new()
    table = grid(
        plan,
        [
            ["Mathematics   Year 5   The Bridge of Tenths", "", ""],
            ["Learning Objective: add tenths, 5F10", "", ""],
            ["LA: tenths on a line", "MA: 0.3 + 0.4 = 0.7", "HA: hundredths too"],
            ["Resources: number lines, metre sticks", "Key words: tenth, decimal point", "TA: red group"],
            ["Main: walk the bridge in steps of 0.1 and write each place (35 mins)", "", ""],
            ["Plenary: is 0.10 more than 0.9? (5 mins)", "", ""],
        ],
    )
    for at in (0, 1, 4, 5):
        table.cell(at, 0).merge(table.cell(at, 2))
    plan.save(str(path))


SEEN: Mapping[str, Callable[[Path], None]] = {
    "headings.docx": headings,
    "bold-only.docx": bold_only,
    "layout-table.docx": layout_table,
    "numbered-phases.docx": numbered_phases,
    "all-caps.docx": all_caps,
    "timetable.docx": timetable,
    "nested.docx": nested,
    "tracked.docx": tracked_and_notes,
    "typed-sums.docx": typed_sums,
    "lanterns.odt": odt,
    "goat.md": markdown,
    "merged.docx": merged,
}
