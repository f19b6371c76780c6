"""Why a text is not YAML, in words for somebody who knows none: found on the line of the slip, or said to be unclear."""

from __future__ import annotations

import pytest
from storymaths.parse.yaml_text import BrokenYaml, load


@pytest.mark.parametrize(
    ("text", "line", "reason"),
    [
        ("title: Who is: worth it\n", 1, "a colon within the sentence"),
        ("title: One\nminutes:50\nyear: 2\n", 2, "no space after the colon"),
        ("title: One\nminutes 50\nyear: 2\n", 2, "no colon after the name"),
        ("hear:\n  - One.\n  -Two.\n  - Three.\nyear: 2\n", 3, "no space after the hyphen"),
        ('ask: "Who is it?\nanswer: Camel\nnote: "one"\n', 1, "opens on this line is not closed"),
        ('says: "No," says Camel.\n', 1, "words stand after the closing quotation mark"),
        ("summary: *Six* friends\n", 1, "begins with *"),
        ("summary: [Six] friends\n", 1, "words stand after the ]"),
        ('signs: ["=, "+"]\n', 1, "has no second one"),
        ("steps:\n  - {name: Start, minutes: 6\n  - {name: Go, minutes: 8}\n", 2, "the { on this line is not closed"),
        ("stops:\n\tpage: 1\n", 2, "a tab"),
        ("reads:\n  - pages: 1\n     stops: []\n", 3, "does not line up"),
        ("published: 2026-02-30\n", 1, "2026-02-30 is not a day"),
    ],
)
def test_a_slip_is_said_in_plain_words_on_its_line(text: str, line: int, reason: str) -> None:
    with pytest.raises(BrokenYaml) as error:
        load(text)
    assert reason in error.value.reason
    assert error.value.line == line
    assert error.value.fix
