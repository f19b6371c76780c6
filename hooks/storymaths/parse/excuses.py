"""Why a sum that does not hold may yet be no untruth: what it stands in, and what is counted."""

from __future__ import annotations

import re
from math import prod

from ..expression.spoken_signs import LINKS, is_thing
from ..expression.tokens import Token
from .sentence_edges import SAYS
from .sentence_runs import Run

_ASKS = frozenset("are can could did do does is may might should was were which who will would".split())
_TRUE_OR_FALSE = re.compile(
    r"\b(?:true or (?:false|untrue|not)|right or wrong|correct or not|true or is|whether)\b", re.I
)
_SAID_UNTRUE = re.compile(
    r"[\"”’]?,?\s*(?:(?:is|are|was|be|can|could|would|must|does|did|do)\s+(?:be\s+)?)?"
    r"(?:not\b|isn[’']t|cannot|can[’']t|never|true|wrong|false|untrue|incorrect|nonsense|impossible|an? (?:mistake|error|slip))",
    re.I,
)
_ROUNDED = re.compile(
    r"\b(?:round(?:ed|ing)|rounds? (?:up|down|to)|nearest|roughly|approximately|estimate[sd]?)\b", re.I
)
_SLIP = re.compile(
    r"\b(?:wrongly|mistakenly|by mistake|(?:thinks?|thought|believes?|imagines?|claims?) (?:that )?|(?:may|might|could)"
    r" (?:wrongly )?(?:say|think|write)|"
    r"forgot(?:ten)?|forgets|misread|mixed up|muddled|mistake|error|incorrect|slip|misconception|should (?:be|have been)|ought to be|"
    r"(?:do not|don[’']t|never) (?:ever )?(?:accept|write|say|let|allow|mark|tick|praise)|"
    r"(?:child|children|pupils?|somebody|someone|puppet) (?:says?|said|tells? you|writes?|wrote)(?: that)?)\b",
    re.I,
)
"""What shows, in the sentence, that somebody's slip is told."""
_TASK = re.compile(r"^\W*(?:then |next |now )?(?:the )?(?:children|pupils) write\b", re.I)
"""What a plan says that all of them do, which is no slip."""
_ANSWERED_NO = re.compile(r"[^.?!\n]{0,60}[.!]?[\"”][^.?!\n\"“]{0,60}[\"“]no\b", re.I)
_SAID_TRUE = re.compile(r"[\"”’]?,?\s*(?:is|are) true\b", re.I)
_OPEN = re.compile(
    r"\b(?:if|whether|when|unless|which|who|what|how|why|thinks?|says?|said|not|cannot|never|n[’']t)\b|\?", re.I
)
_SCALE = re.compile(
    r"\b(?:plan|map|scale|model|graph|chart|axis|key|drawing|picture|pictogram|symbol|stands? for|represents?|every|each|per|"
    r"water|rule|machine|input|output|code|price|costs?|speed|exchange|rate|worth)s?\b",
    re.I,
)
_SO_MANY = frozenset(
    "bag bags box boxes bundle bundles dozen feet foot group groups hand hands half halves inch inches mile miles pack packs "
    "pair pairs pint pints pound pounds row rows score set sets stick sticks stone strip strips team teams yard yards".split()
)
_INTRODUCES = (
    LINKS
    | SAYS
    | frozenset(
        "addition are both check equation fact facts find finish get gets give gives keep keeps know lay like make makes means read "
        "reads say says sentence sentences show showing shows start statement subtraction sum sums try type types use "
        "write writes wrote".split()
    )
)
"""Words before a number that do not number the thing they name, as "box 3" does."""
_NEAR = 200
"""How many letters on each side of a sum are looked at."""
_NO_HEADS = frozenset(("more", "altogether", "each", "others", "left"))


def excuse(text: str, tokens: tuple[Token, ...], run: Run) -> str:
    """Why a run that does not hold is to be left alone, in a few words; empty where it is untrue."""
    start, end = run.tokens[0].start, run.tokens[-1].end
    before, after = text[max(0, start - _NEAR) : start], text[end : end + _NEAR]
    text = before + text[start:end] + after
    if _SAID_UNTRUE.match(after) and not _is_said_true(before, after):
        return "it is said to be untrue"
    if _TRUE_OR_FALSE.search(text) or (text.rstrip("\"”’') \n").endswith("?") and _is_asked(before)):
        return "it is asked, not said"
    if _SLIP.search(_TASK.sub("", text)) or _ANSWERED_NO.match(after):
        return "somebody's mistake is told"
    if _ROUNDED.search(text):
        return "it tells about how many"
    if not any(token.kind == "sign" for token in run.tokens) and _SCALE.search(text):
        return "it is a scale, a rule, or what one thing costs or stands for"
    if _is_numbered(tokens, run):
        return "its first number may be a name"
    if _tells_a_digit(run):
        return "it may tell what a digit is worth"
    return _of_unlike_things(tokens, run)


def _is_said_true(before: str, after: str) -> bool:
    """Whether a sum is said, by the author, to be true."""
    clause = re.split(r"[.?!:]", after)[0]
    asked = re.split(r"[;:—–(“\"]", before)[-1].split()[:1]
    is_open = _OPEN.search(before) or _OPEN.search(clause) or (asked and asked[0].lower() in _ASKS)
    return bool(_SAID_TRUE.match(after)) and not is_open and "?" not in after.split(".", maxsplit=1)[0]


def _is_asked(before: str) -> bool:
    """Whether the words before a sum begin a question about it."""
    clause = re.split(r"[,:;—–(“\"]", before)[-1].split()
    words = [word.lower() for word in clause if word.lower() not in ("so", "and", "but", "or", "now", "then", "well")]
    return bool(words) and words[0] in _ASKS


def _is_numbered(tokens: tuple[Token, ...], run: Run) -> bool:
    """Whether a word before its first number may be what that numbers: box 3 = 5 + 4 pens."""
    at = run.first - 1
    if at < 0 or tokens[at].kind != "word" or run.tokens[1].kind != "relation":
        return False
    return tokens[at].text.lower() not in _INTRODUCES


def _tells_a_digit(run: Run) -> bool:
    """Whether it says what a digit is worth: in 45, 4 = 4 tens."""
    digit, relation, *worth = (token.value if token.kind == "number" else token.text for token in run.tokens)
    signs = {sign for sign in worth if isinstance(sign, str)}
    if not isinstance(digit, int) or not 0 < digit < 10 or relation != "=" or not signs <= {"×"}:
        return False
    size = prod(number for number in worth if not isinstance(number, str)) / digit
    return size in (10, 100, 1000)


def _of_unlike_things(tokens: tuple[Token, ...], run: Run) -> str:
    named = [_one(token.things) for token in run.tokens if token.things and token.things not in _NO_HEADS]
    following = []
    for token in tokens[run.last + 1 : run.last + 4]:
        if not is_thing(token):
            break
        following.append(token.text.lower())
    heads = set(named)
    if heads and following and not heads & {_one(word) for word in following}:
        heads.add(_one(following[0]))
    if len(heads) > 1:
        return "unlike things are counted"
    if any(token.text == "÷" for token in run.tokens):
        return ""
    counted = following[:1] and (run.tokens[-1].value == 1 or _SO_MANY & set(following[:2]))
    if counted or _SO_MANY & {token.things for token in run.tokens}:
        return "one thing stands for so many others"
    is_alone = run.tokens[0].things and run.tokens[1].kind == "relation" and len(named) == 1 and not following
    return "a number of things stands for another" if is_alone else ""


def _one(word: str) -> str:
    return word.removesuffix("s").removesuffix("e")
