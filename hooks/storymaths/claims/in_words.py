"""Sums told in words with who does them: add 5 and 9 to get 14, if you take 3 from 11 you have 8 left."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from ..expression.number import Rational
from ..expression.signs import PROSE
from ..expression.tokens import read_tokens
from ..expression.truth import judge
from ..model.known_facts import KnownFacts
from .amounts import END_OR_AND, N, number, says
from .claim_class import ClaimClass, Untrue
from .form import Form

_A, _B, _C = rf"(?P<a>{N})", rf"(?P<b>{N})", rf"(?P<c>{N})"
_THING = r"(?: (?!and\b|to\b|from\b|by\b|with\b|more\b)[a-z]+)?"
_WHO = r"(?:you|we|i|they|it|she|he|there)"
_DO = r"(?:get|have|make|give|leave|reach|find|land on|end up with|be left with|are left with|got)"
_GET = (
    rf"(?:,? (?:and|so|then|which|that))*(?:,? {_WHO}(?: will| can)? {_DO}| to {_DO}|,?"
    rf" (?:gets|has|makes|gives|giving|leaves|leaving|is|are"
    r"|comes to|equals|the (?:answer|total|result|sum|product|difference) is))(?: just| a (?:total|remainder) of)?"
)
_MORE = (
    rf"(?:{END_OR_AND}|(?= (?:left|altogether|in all|more|each|over|remaining)\b)"
    r"|(?= [a-z]+(?: (?:left|altogether|in all|remaining|each))?[.,;:]?(?:$| )))"
)
_SUMS = (
    ("+", "add,put,join", Form(rf"\b(?:add(?:ing)?|put(?:ting)? together|join(?:ing)?) {_A}{_THING} (?:and|to|with) {_B}{_THING}(?:"
               rf" together)?{_GET} {_C}{_MORE}")),
    ("+", "count,jump", Form(rf"\b(?:count(?:ing)? on|jump(?:ing)? on) {_A} from {_B}{_GET} {_C}{_MORE}")),
    ("+", "start", Form(rf"\bstart(?:ing)? (?:at|on|from|with) {_B},? (?:and )?(?:add|count on|jump on|jump forward) {_A}(?:"
               rf" more)?{_GET} {_C}{_MORE}")),
    ("-", "tak,subtract,count,jump,remov", Form(rf"\b(?:take|taking|subtract(?:ing)?|count(?:ing)? back|jump(?:ing)?"
                                        rf" back|remov(?:e|ing)) {_B}{_THING} (?:away"
               rf" )?from {_A}{_THING}{_GET} {_C}{_MORE}")),
    ("-", "taken,subtracted,removed", Form(rf"\b(?:when|if|as) {_B} (?:is|are) (?:taken(?: away)?|subtracted|removed)"
                                        rf" from {_A}{_GET} {_C}{_MORE}")),
    ("-", "taken,subtracted,removed", Form(rf"\b{_B} (?:taken(?: away)?|subtracted) from {_A}{_GET} {_C}{_MORE}")),
    ("-", "tak,subtract,count,jump,remov", Form(rf"\b(?:take|taking) {_B}{_THING} (?:away|off) from {_A}{_GET} {_C}{_MORE}")),
    ("-", "tak,subtract,count,jump,remov", Form(rf"\b(?:take|taking|subtract) {_B}{_THING} (?:away )?from"
                                        rf" {_A}{_THING},? and {_C}(?:{_THING}) (?:is|are|remain)s? ?left\b")),
    ("-", "start", Form(rf"\bstart(?:ing)? (?:at|on|from|with) {_A},? (?:and )?(?:take away|subtract|count back|jump back|take)"
               rf" {_B}{_GET} {_C}{_MORE}")),
    ("-", "get from", Form(rf"\bto get from {_B} to {_A},? {_WHO} (?:must |have to |need to |can |just )?(?:add|count on|go on|jump"
               rf"|need){_THING} {_C}{_MORE}")),
    ("-", "from", Form(rf"\bfrom {_B} to {_A} (?:is|there are) (?:a (?:jump|step|gap|difference) of )?{_C}(?: more|"
                       rf" steps| jumps)?{END_OR_AND}")),
    ("-", "difference,gap", Form(rf"\b(?:the )?(?:difference|gap) (?:between|of) {_A} and {_B} is {_C}{END_OR_AND}")),
    ("-", "add,count", Form(rf"\b(?:add|adding|count on|counting on) {_C}(?: more)? to {_B} (?:to|and {_WHO})"
                            rf" (?:get|reach|make)s? {_A}{END_OR_AND}")),
    ("*", "multipl", Form(rf"\bmultiply(?:ing)? {_A} by {_B}{_GET} {_C}{_MORE}")),
    ("*", "product", Form(rf"\bthe product of {_A} and {_B} is {_C}{END_OR_AND}")),
    ("/", "divid", Form(rf"\bdivid(?:e|ing) {_A} by {_B}(?! \w+ a remainder){_GET} {_C}(?! (?:and a |with a )?rem| r\b){END_OR_AND}")),
    ("2", "doubl,twice", Form(rf"\b(?:doubl(?:e|ing)|twice) {_A}{_GET} {_C}{_MORE}")),
    ("2", "doubl,twice", Form(rf"\bwhen (?:you|we) double {_A},? (?:you|we) get {_C}{END_OR_AND}")),
    ("2", "doubl,twice", Form(rf"\bthe double of {_A} is {_C}{END_OR_AND}")),
    ("2", "doubl,twice", Form(rf"{_A} (?:is )?doubled (?:is|makes|gives|becomes) {_C}{END_OR_AND}")),
    ("h", "halv", Form(rf"\bhalv(?:e|ing) {_A}{_GET} {_C}{_MORE}")),
    ("h", "halv", Form(rf"{_A} (?:is )?halved (?:is|makes|gives|becomes) {_C}{END_OR_AND}")),
    ("q", "quartering", Form(rf"\bquarter(?:ing) {_A}{_GET} {_C}{END_OR_AND}")),
)  # fmt: skip
_REMAINDER = (
    Form(rf"\b(?:dividing|divide|sharing|share|when {_A} is divided by {_B}) ?(?P<all>{N})? ?(?:by|between|among)? ?(?P<by>{N})?{_THING}"
         rf"(?:,? (?:and )?(?:it |there |the )?)? ?(?:leaves?|gives?|has|is|remainder is)? ?(?:a )?remainder (?:of |is )?(?P<left>{N})"),
    Form(rf"\bthe remainder (?:when|after|of|from) (?:you divide |dividing )?(?P<all>{N}) (?:is )?(?:divided )?by (?P<by>{N})"
         rf" is (?P<left>{N}){END_OR_AND}"),
    Form(rf"(?P<all>{N}) (?:is )?divided by (?P<by>{N}) (?:leaves|has) (?:a )?(?:remainder (?:of )?)?(?P<left>{N}){END_OR_AND}"),
    Form(rf"(?P<all>{N}) divided by (?P<by>{N}) (?:is|gives|makes) (?P<each>{N})(?:,| and| with)* (?:a )?(?:remainder (?:of )?"
         rf"|leaves )(?P<left>{N}){END_OR_AND}"),
)  # fmt: skip
_DOZEN = Form(rf"(?<!of )\b(?P<how>half an?|an?|{N}) dozens? (?:is|are|makes?|means|equals) (?P<c>{N}){END_OR_AND}")
_GAP = r"(?:\?|_+|□|☐|\b(?:x|n|a|y)\b)"
_MISSING = (
    Form(rf"\bin (?P<sum>[\d +−×÷=?_□☐]*{_GAP}[\d +−×÷=]*),? the (?:missing|hidden|unknown) (?:number|digit) is (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:in|for) (?:the (?:sum|number sentence|calculation) )?(?P<sum>[\d +−×÷=?_□☐]*{_GAP}[\d +−×÷=]*),?"
         rf" the (?:empty )?(?:box|blank|gap|square|space) (?:is|stands for|holds|shows|must be|means) (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:box|blank|gap|square|space|missing|number that goes in the box|number that fills the gap)"
         rf" (?:in|from|of) (?P<sum>[^.;?_□☐=]*=?[^.;?_□☐=]*{_GAP}[^.;=]*=?[^.;=]*?),?"
         rf" (?:is|stands for|holds|shows|must be|means) (?P<c>{N}){END_OR_AND}"),
    Form(rf"(?P<sum>[\d +−×÷=]+[□☐?_]+[\d +−×÷=]*),?"
         rf" so (?:the )?(?:missing number|box|blank|gap|answer) (?:is|must be|holds) (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:missing|hidden|unknown) (?:number|digit|value) in (?P<sum>[^.;?_□☐=]*=?[^.;?_□☐=]*{_GAP}[^.;=]*=?[^.;=]*?),?"
         rf" is (?P<c>{N}){END_OR_AND}"),
    Form(rf"\b(?:if|when|in|since|as) (?P<sum>[^.;,a-z]*\b[a-z]\b[^.;,a-z]*),? (?:then |so |and )*(?:the value of )?[a-z] (?:is"
         rf"|=|must be|equals) (?P<c>{N}){END_OR_AND}"),
    Form(rf"(?P<sum>[\d +−×÷]*[a-z_□☐?][\d +−×÷]*=[\d +−×÷]+),? so (?:[a-z_□☐?]|the (?:missing|hidden|unknown) number) (?:is|=)"
         rf" (?P<c>{N}){END_OR_AND}"),
)  # fmt: skip
_UNKNOWN = Form(r"\?|_+|□|☐|(?<!\w)[a-z](?!\w)")


def _find(sentence: str, _: KnownFacts) -> Iterator[Untrue]:
    for sign, words, form in _SUMS:
        for match in form.finditer(sentence) if _holds(sentence, words) else ():
            parts = match.groupdict()
            a, b = number(parts["a"]), number(parts.get("b") or "1")
            right = _work_out(sign, a, b)
            if right is not None and number(match["c"]) not in right:
                yield Untrue(*match.span(), f"it is {says(right[0])}", supposed=True)
    for form in _REMAINDER if "remainder" in sentence or "leaves" in sentence else ():
        for match in form.finditer(sentence):
            yield from _left_over(match.groupdict(), match.span())
    for match in _DOZEN.finditer(sentence) if "dozen" in sentence else ():
        how = match["how"]
        times = Fraction(1, 2) if how.startswith("half") else 1 if how in ("a", "an") else number(how)
        if number(match["c"]) != 12 * times:
            yield Untrue(*match.span(), f"{how} dozen is {says(12 * times)}")
    for form in _MISSING if "=" in sentence else ():
        for match in form.finditer(sentence):
            if _holds_with(match["sum"], match["c"]) is False:
                yield Untrue(*match.span(), f"with {match['c']} the sum does not hold", supposed=True)


def _holds(sentence: str, words: str) -> bool:
    """Whether one of some words stands there: a form is made ready only then."""
    return any(word in sentence for word in words.split(","))


def _work_out(sign: str, a: Rational, b: Rational) -> tuple[Rational, ...] | None:
    """What may be meant by an operation on two numbers: a difference is told either way round."""
    match sign:
        case "+":
            return (a + b,)
        case "-":
            return (a - b, b - a) if a < b else (a - b,)
        case "*":
            return (a * b,)
        case "/":
            return (Fraction(a) / b,) if b else None
        case "2":
            return (2 * a,)
        case "h":
            return (Fraction(a) / 2,)
        case _:
            return (Fraction(a) / 4,)


def _left_over(parts: dict[str, str | None], span: tuple[int, int]) -> Iterator[Untrue]:
    whole, by, left = (parts.get("all") or parts.get("a"), parts.get("by") or parts.get("b"), parts["left"])
    if whole is None or by is None or left is None or not number(by):
        return
    each, over = divmod(number(whole), number(by))
    if number(left) != over or (parts.get("each") and number(parts["each"] or "0") != each):
        yield Untrue(*span, f"it is {says(each)} with {says(over)} left over", supposed=True)


def _holds_with(asked: str, answer: str) -> bool | None:
    """Whether a sum with one gap, or letter, holds with a number there; None where it cannot be read."""
    if sum(1 for _ in _UNKNOWN.finditer(asked)) != 1:
        return None
    filled = _UNKNOWN.sub(answer, asked.strip())
    tokens = tuple(read_tokens(filled, PROSE))
    return judge(tokens).holds if any(token.kind == "relation" for token in tokens) else None


CLASS = ClaimClass(
    name="sums in words",
    reads="Adding, taking, multiplying, dividing, doubling and halving told as something done, and "
    "what comes of it; what remains; dozens; the number said to be missing in a sum, or a letter of one.",
    leaves="Sums that are told plainly, such as 3 plus 4 is 7, which the reader of arithmetic works out.",
    source="Common practice, no source: the four operations.",
    cues=frozenset(
        "add adding take taking taken subtract subtracting subtracted remove removing counting count start starting "
        "difference gap multiply "
        "multiplying product box blank gap square space "
        "divide dividing divided remainder sharing doubling double doubled halving halve halved "
        "quartering dozen missing hidden unknown "
        "jumping jump n x y".split()
    ),
    find=_find,
    numbers=2,
)  # fmt: skip
