"""The sentences of a page, and which of them state something plainly: no question, no condition, no child's mistake."""

from __future__ import annotations

import re
from bisect import bisect_right
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from ..model.prose import Prose
from .form import Form

_ENDS = Form(r"[.!?…](?<![+−×÷= ].)[\"”’')\]*]*\s+|\n\n+")
_LEAVES_OPEN = Form(
    r"\b(?:if|not|never|nor|neither|cannot|\w+n[’']t|wrong|wrongly|mistakes?|false|untrue|incorrect|unless|whether|suppose|imagine|"
    r"pretend|would|might|could|may(?= (?!is |has |comes )\w)|should|thinks?(?! of)|thought|believes?|(?:a|an|any|the|one) (?:child"
    r"|pupil|learner|boy|girl) who|(?:children|pupils)"
    r" who|may (?:wrongly )?say|forgot(?:ten)?|instead of|rather than|silly|"
    r"forget|forgets|forgot|misread|lest|argue|prove|disprove|claims?)\b"
)
_TAKES_BACK = Form(
    r"\b(?:if|unless|wrong|wrongly|mistakes?|false|untrue|incorrect|not (?:true|right|so)|n[’']t (?:true|right|so|it)|"
    r"should (?:be|have been)|ought to be|forgotten|cannot be(?: so| true| right|[.!,;])|can[’']t be(?: so| true| right|[.!,;])"
    r"|would|might|thinks?|believes?|says (?:a|one|the|some) child|has not got it|silly)\b"
)
_OPEN_PASSAGE = Form(
    r"\b(?:true or false|right or wrong|true or not|you agree|agree or|disagree|agrees? with|who is right|spot the|"
    r"find the mistake|odd one out|always,? sometimes|what is wrong|put (?:it|them) right|correct (?:it|them|this|the))\b"
)
_IF = Form(r"\bif ")
_CHILDS_FIELDS = frozenset(("hear", "says", "misconceptions"))
_CHILD_SPEAKS = Form(
    r"\b(?:child|children|pupils?|somebody|someone|anyone|they|one|he|she|some|hear|listen|answers?|another|replies|reply|puppet|"
    r"says|mistake|thinks|may|might|writes|wrote)\b(?!.*\b(?:say|ask|write|tell them|tell the)\b)"
)
_MARK = "]{wrong}"


def leaves_open(sentence: str, after: bool = False) -> bool:
    """Whether a sentence, in small letters, asks, supposes, denies or tells a mistake; or the rest of one ``after`` a claim does."""
    form = _TAKES_BACK if after else _LEAVES_OPEN
    return sentence.rstrip("\"”’')* ").endswith("?") or form.search(sentence) is not None


@dataclass(frozen=True)
class Sentences:
    """The sentences of a page's prose, found when one is first asked for."""

    prose: Prose

    @cached_property
    def _starts(self) -> Sequence[int]:
        return [0, *map(re.Match.end, _ENDS.finditer(self.prose.lowered))]

    def number_at(self, offset: int) -> int:
        """Which sentence holds a position: its number, from nought."""
        return bisect_right(self._starts, offset) - 1

    def sentence(self, number: int) -> tuple[int, str]:
        """Where a sentence starts, and the sentence, in small letters and on one line."""
        start, *rest = self._starts[number : number + 2]
        return start, self.prose.lowered[start : rest[0] if rest else None].replace("\n", " ").rstrip()

    def states(self, start: int, end: int, supposed: bool = False) -> bool:
        """Whether what stands there is stated plainly, by somebody who means it to be true.

        ``supposed`` says that it holds its own condition, so that it is stated with its "if".
        """
        at, sentence = self.sentence(self.number_at(start))
        told, rest = sentence[: end - at], sentence[end - at :]
        if supposed:
            told = _IF.sub("", told)
        if leaves_open(told) or leaves_open(rest, after=True):
            return False
        return self.is_meant(start, end)

    def is_meant(self, start: int, end: int) -> bool:
        """Whether what stands there is no child's, marked as a mistake, or in a passage that leaves open what is true."""
        if _CHILDS_FIELDS.intersection(self.prose.passage_at(start).loc) or self._is_marked_wrong(start, end):
            return False
        low, high = self.paragraph(start)
        return not (_OPEN_PASSAGE.search(self.prose.lowered, low, high) or self._is_a_childs(low, start))

    def may_state(self, number: int, offset: int) -> bool:
        """Whether something may be stated in a sentence from a place on: nothing before it leaves that open."""
        start, sentence = self.sentence(number)
        if sentence.endswith("?") or _CHILDS_FIELDS.intersection(self.prose.passage_at(offset).loc):
            return False
        return _LEAVES_OPEN.search(_IF.sub("", sentence[: offset - start])) is None

    def paragraph(self, offset: int) -> tuple[int, int]:
        """Where the paragraph, or the field, around a position starts and ends."""
        text = self.prose.text
        low, high = text.rfind("\n\n", 0, offset), text.find("\n\n", offset)
        return (0 if low < 0 else low + 2), (len(text) if high < 0 else high)

    def _is_marked_wrong(self, start: int, end: int) -> bool:
        text = self.prose.text
        if _MARK not in text:
            return False
        close = text.find(_MARK, end - 1)
        return (
            close >= 0 and "[" in text[max(0, start - 300) : end] and "[" not in text[end:close] and close - end < 300
        )

    def _is_a_childs(self, low: int, start: int) -> bool:
        """Whether it stands in quotation marks, and a child was said to speak."""
        before = self.prose.lowered[low:start]
        straight = before.count('"') % 2 == 1
        if not straight and before.count("“") <= before.count("”"):
            return False
        opened = before.rfind('"' if straight else "“")
        said = re.split(r"[.!?][\"”)]* +", before[:opened])[-1]
        closed = self.prose.lowered.find('"' if straight else "”", start)
        after = self.prose.lowered[closed + 1 : closed + 40].split(".")[0] if closed >= 0 else ""
        return bool(_CHILD_SPEAKS.search(said) or _CHILD_SPEAKS.search(after))
