"""What an author writes in ``walk_desk.py``: a book that is somebody else's, and its first session; all of it made up."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

Boxes = Sequence[tuple[str, str]]

BOOK_TITLE = "A Plank Too Short"
BOOK_HEAD: Boxes = (
    ("story_by", "Isbeth Rowan-Tarr (made up)"),
    ("pictures_by", "Corin Fell (made up)"),
    ("publisher", "Mossgate and Daughters, a publisher that does not exist"),
    ("rights_note", "This book, its author and its publisher are made up. A school reads its own copy aloud and copies no page."),
    ("pages", "20"),
    ("summary", "The bridge has been washed away, and each friend has one plank. Which of them reach across when they are laid end to end?"),
)  # fmt: skip
PAGES: Sequence[tuple[str, str, Sequence[str]]] = (
    ("4-7", "The stream is twelve strides wide, paced out on the bank.", ("length",)),
    ("8-13", "Nettle's plank is 5 strides long, and Orrin's 7 reaches the rest of the way.", ("number-bonds", "length")),
    ("16-20", "Other planks are tried, and the friends look for every way across.", ("number-bonds", "reasoning-systematically")),
)  # fmt: skip
CAST: Sequence[tuple[str, str, str, str]] = (
    ("nettle", "Nettle", "badgers", "5"),
    ("orrin", "Orrin", "otters", "7"),
    ("midge", "Midge", "mice", "3"),
    ("basil", "Basil", "boars", "9"),
    ("tuft", "Tuft", "squirrels", "4"),
    ("wren", "Wren", "wrens", "8"),
)
FACT, MEANS, UNIT = "plank", "a plank of so many strides", "strides"
BOOK_TEXT = (
    "A stream has come up in the night, and the bridge is gone. Everybody has saved one plank. No plank is long enough, and"
    " nobody has a nail.\n\nChildren see a length made of two lengths, and a reason to look for every pair."
)

SESSION_TITLE = "Two planks across"
SESSION_HEAD: Boxes = (
    ("summary", "Children lay planks of cubes end to end, find every pair that reaches across twelve strides, and know that they have them all."),
    ("reads.0.pages", "4-13"),
    ("reads.0.stops.0.page", "7"),
    ("reads.0.stops.0.ask", "The stream is twelve strides wide. How could we show that on the carpet?"),
    ("reads.0.stops.0.hear.0", "Walk it, and count."),
    ("reads.0.stops.0.hear.1", "Put twelve cubes in a row."),
    ("reads.0.stops.0.listen_for", "The same stride each time, and the last number said as the width."),
    ("steps.0.name", "Read, and pace the stream"),
    ("steps.1.name", "Lay one pair"),
    ("steps.2.name", "Find every pair"),
    ("task.objects", "Pairs make a train of cubes for each plank and lay two end to end beside a train of 12."),
    ("task.pictures", "They draw each pair that reaches across as a bar in two parts."),
    ("task.symbols", "They write each pair as a sum, such as 5 + 7 = 12."),
    ("easier.0", "Begin with one plank already laid beside the twelve, and ask how much is missing."),
    ("harder.0", "Three planks at once: which three reach across, and how do you know that no other three can?"),
    ("look_for.0", "Says how much is missing before choosing the second plank."),
    ("exit_question.ask", "One plank is 3 strides long, and the stream is 12 wide. How long must the other plank be?"),
    ("exit_question.answer", "9, because 3 and 9 make 12."),
)  # fmt: skip
SECOND_STOP: Boxes = (
    ("page", "12"),
    ("ask", "Nettle has 5. What do you know about the plank that is wanted?"),
    ("hear.0", "It is seven long."),
    ("listen_for", "The missing part, found from the whole and the part."),
)
MORE: Sequence[tuple[str, str]] = (
    ("look_for", "Goes through the planks in some order, and sees when a pair comes round again."),
    ("access", "A child who sees little feels the trains of cubes, which lie in a tray with an edge."),
)
PICKED: Mapping[str, Sequence[str]] = {"concepts": ("length", "reasoning-systematically")}
WORDS: Sequence[str] = (
    'Read as far as page 13 and stop twice. Pace the width on the carpet: twelve strides, and everybody counts.\n\nWrite 12 where all can see it. "This is the **whole**."',
    "Make a train of 12 cubes. Lay Nettle's plank of 5 under it. \"What is missing? It is one **part** of the whole.\" Lay Orrin's plank of 7 beside it, and write 5 + 7 = 12.\n\nTry one that fails: Nettle and Wren. 5 + 8 = 13, and one stride lies on the bank.",
    "Pairs choose a plank, say what is missing, and look for who has it. Each pair that reaches across is drawn and written on a whiteboard.",
)  # fmt: skip
AFTER = "Put the pairs in order by the shorter plank. \"Everybody is in one pair. Could there be another?\"\n\nAsk the exit question, and count the cubes in."
ACTIVITY: Boxes = (
    ("title", "Two planks across"),
    ("ask", "The stream is 12 strides wide. Which two planks reach from bank to bank when they are laid end to end?"),
    ("fact", FACT),
    ("whole", "12"),
)
MISCONCEPTION: Boxes = (
    ("says", "The longest plank is the best, so it has to be Basil."),
    ("shows", "One plank is looked at, and not what both come to."),
    ("try", 'Lay Basil\'s plank by the twelve. "How much is missing now? Who has that much?"'),
)
BENDS: Mapping[str, Boxes] = {
    "1": (
        ("numbers", "A ditch of 10 strides and shorter planks."),
        ("recording", "Trains of cubes, and a drawing of each pair."),
        ("question", "How much is missing now?"),
        ("why", "Year 1 knows the pairs that make 10 and is learning to use them."),
    ),
    "3": (
        ("numbers", "A river of 20 strides, and three planks at once."),
        ("recording", "The three numbers as a sum that makes 20."),
        ("question", "How do you know that no other three reach across?"),
        ("why", "Year 3 adds three numbers and works through them in order."),
    ),
}
