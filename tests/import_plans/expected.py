"""What a person finds in each invented plan: its title, and the parts of a session that it holds. Judged by eye when written."""

from __future__ import annotations

from collections.abc import Mapping

EXPECTED: Mapping[str, tuple[str, str]] = {
    "headings.docx": (
        "The Pancake Ferry: sharing equally",
        "year minutes objectives steps words materials easier harder exit_question",
    ),
    "bold-only.docx": ("Counting the Owls at Tall Barn", "year minutes steps materials misconceptions cautions"),
    "layout-table.docx": (
        "Snail's Long Shelf",
        "year minutes steps words materials easier harder look_for exit_question",
    ),
    "numbered-phases.docx": ("Badger's Biscuit Tin", "year minutes objectives steps materials cautions"),
    "all-caps.docx": ("THE WINDMILL THAT TURNED TOO FAR", "year objectives steps misconceptions exit_question"),
    "timetable.docx": ("The Hen Who Kept Change", "year minutes steps materials"),
    "nested.docx": ("Two Trains of Ten", "minutes objectives steps"),
    "tracked.docx": ("Half the Moon Cake", "year steps easier harder cautions"),
    "typed-sums.docx": ("Four Boots Each", "year minutes steps materials look_for"),
    "lanterns.odt": ("The Lantern Queue", "year minutes objectives steps"),
    "goat.md": ("The Goat Who Weighed Nothing", "year minutes objectives steps materials exit_question"),
    "merged.docx": (
        "The Bridge of Tenths",
        "year minutes objectives steps words materials easier harder exit_question",
    ),
    "week-grid.docx": ("The Kite Shop", "year objectives steps exit_question"),
    "questions-first.docx": ("Moles in Rows", "year minutes objectives steps materials misconceptions look_for"),
    "tabs.docx": ("The Clock with One Hand", "year minutes steps easier harder look_for"),
    "stairs.odt": ("Fox and the Thirteen Stairs", "year steps materials misconceptions"),
    "soup.md": ("Ratio Soup", "year minutes objectives steps materials exit_question cautions"),
    "deep-table.docx": ("Pond Dippers' Tally", "year steps harder"),
    "styles.docx": ("One Hundred Buttons", "year minutes objectives steps exit_question"),
    "one-cell.docx": ("Angles in the Paper Swan", "year steps easier harder cautions"),
    "columns.docx": ("Hedgehog's Jam Cupboard", "year minutes steps words materials"),
    "bullet-soup.md": ("The Otter Who Lost a Half", "year minutes steps words materials misconceptions"),
    "two-columns.docx": ("The Lighthouse with Ten Stairs Missing", "year minutes steps materials easier harder"),
    "capitals.docx": ("SIX GEESE AND A CART", "year minutes steps materials misconceptions cautions"),
    "term-grid.docx": ("Autumn 2, Year 4: The Weaver's Loom", "year steps words look_for"),
}
