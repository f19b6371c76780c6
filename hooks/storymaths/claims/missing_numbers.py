"""The number said to be missing in a sum, or to be a letter of one: in 6 + ☐ = 14 the missing number is 8."""

from __future__ import annotations

from collections.abc import Iterator

from ..expression.signs import PROSE
from ..expression.tokens import read_tokens
from ..expression.truth import judge
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N
from .claim_class import ClaimClass, Untrue
from .form import Form

_GAP = r"(?:\?|_+|□|☐|\b(?:x|n|a|y)\b)"
_MISSING = (
    Form(rf"\bin (?P<sum>[\d +−×÷=?_□☐]*{_GAP}[\d +−×÷=]*),? the (?:missing|hidden|unknown) (?:number|digit) is (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:in|for) (?:the (?:sum|number sentence|calculation) )?(?P<sum>[\d +−×÷=?_□☐]*{_GAP}[\d +−×÷=]*),?"
         rf" the (?:empty )?(?:box|blank|gap|square|space) (?:is|stands for|holds|shows|must be|means) (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:box|blank|gap|square|space|missing|number that goes in the box|number that fills the gap)"
         rf" (?:in|from|of) (?P<sum>[^.;?_□☐=]*=?[^.;?_□☐=]*{_GAP}[^.;=]*=?[^.;=]*?),?"
         rf" (?:is|stands for|holds|shows|must be|means|is filled (?:by|with)|takes|needs|wants|hides|has to be) (?P<c>{N}){END_OR_AND}"),
    Form(rf"(?P<c>{N}) (?:goes in|fills|fits|fits in|belongs in|completes) (?:the )?(?:empty )?(?:box|blank|gap|square|space)"
         rf" (?:in|of) (?P<sum>[^.;?_□☐=]*=?[^.;?_□☐=]*{_GAP}[^.;=a-z]*=?[^.;=a-z]*?){END_OR_AND}"),
    Form(rf"(?P<sum>[\d +−×÷=]+[□☐?_]+[\d +−×÷=]*),?"
         rf" (?:so|and|then|where) (?:the )?(?:missing number|box|blank|gap|answer) (?:is|must be|holds) (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:missing|hidden|unknown) (?:number|digit|value) in (?P<sum>[^.;?_□☐=]*=?[^.;?_□☐=]*{_GAP}[^.;=]*=?[^.;=]*?),?"
         rf" is (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:if|when|in|since|as) (?P<sum>[^.;,a-z]*\b[a-z]\b[^.;,a-z]*),? (?:then |so |and )*(?:the value of )?[a-z] (?:is"
         rf"|=|must be|equals) (?P<c>{N}){END_OR_AND}"),
    Form(rf"(?P<sum>[\d +−×÷]*[a-z_□☐?][\d +−×÷]*=[\d +−×÷]+),? so (?:[a-z_□☐?]|the (?:missing|hidden|unknown) number) (?:is|=)"
         rf" (?P<c>{N}){END_OR_AND}"),
)  # fmt: skip
_UNKNOWN = Form(r"\?|_+|□|☐|(?<!\w)[a-z](?!\w)")


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for form in _MISSING if "=" in sentence else ():
        for match in form.finditer(sentence):
            if _holds_with(match["sum"], match["c"]) is False:
                yield Untrue(*match.span(), f"with {match['c']} the sum does not hold", supposed=True)


def _holds_with(asked: str, answer: str) -> bool | None:
    """Whether a sum with one gap, or letter, holds with a number there; None where it cannot be read."""
    if sum(1 for _ in _UNKNOWN.finditer(asked)) != 1:
        return None
    filled = _UNKNOWN.sub(answer, asked.strip())
    tokens = tuple(read_tokens(filled, PROSE))
    return judge(tokens).holds if any(token.kind == "relation" for token in tokens) else None


CLASS = ClaimClass(
    name="missing numbers",
    reads="The number said to be missing in a sum, to go in its box, or to be a letter of it.",
    leaves="Sums with two gaps or letters, and letters that are no numbers.",
    source="Common practice, no source: the four operations.",
    cues=frozenset("missing hidden unknown box blank gap square space n x y".split()),
    find=_find,
    numbers=2,
)
