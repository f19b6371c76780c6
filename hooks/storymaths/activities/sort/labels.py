"""Rules as a sorting diagram says them: a label for what fits, and one for what does not."""

from __future__ import annotations

from dataclasses import dataclass

from ...expression.noun import Noun, is_plural, noun_of
from ...model.activity import Context
from ...model.quantity import UNITS
from ...model.year import YearLimits
from ..rule_language.denial import denied
from ..rule_language.tree import Call, Comparison, Join, Name, Not, Number, Operation, Rule, Words, gives
from ..rule_language.words import COMPARED_WORDS, NEGATED, amount, clause, is_with_sign, parts_of, property_words
from ..saying import one_or_many

_COUNTED = {"=": "{0} {1}", "≠": "not {0} {1}", "<": "fewer than {0} {1}", ">": "more than {0} {1}",
            "≤": "{0} {1} or fewer", "≥": "{0} {1} or more"}  # fmt: skip


@dataclass(frozen=True, slots=True)
class Labels:
    """How rules are said in a context; ``n`` is a number card's own number."""

    context: Context

    def fits(self, rule: Rule) -> str:
        """What fits the rule: ``swims``, ``more than 4 legs``, ``odd``."""
        match rule:
            case Name(name=fact):
                return self._means(fact)
            case Not(inner=inner):
                return self.otherwise(inner)
            case Comparison(sign=sign, left=Name(name=fact), right=Number() as number):
                return self._compared(fact, sign, number)
            case Comparison(sign=sign, left=Name(name=fact), right=Words(text=text)):
                return f"{self._fact(fact)}: {'' if sign == '=' else 'not '}{text}"
            case Call(parts=(Name(name=fact), *_)) if gives(rule) == "truth":
                said = property_words(rule, self.context.year)
                return said if fact == "n" else self._of_fact(fact, rule, said)
            case Join(word=word, left=left, right=right):
                return f"{self.fits(left)} {word} {self.fits(right)}"
            case _:
                return clause(rule, self.context.year)

    def otherwise(self, rule: Rule) -> str:
        """What does not fit the rule."""
        match rule:
            case Name(name=fact):
                return denied(self._means(fact))
            case Not(inner=inner):
                return self.fits(inner)
            case Comparison(sign=sign, left=left, right=right) if gives(left) != "truth":
                return self.fits(Comparison(NEGATED[sign], left, right))
            case Call(parts=(Name(), *_)):
                return f"not {self.fits(rule)}"
            case Call():
                return clause(Not(rule), self.context.year)
            case _:
                return f"not so: {self.fits(rule)}"

    def _means(self, fact: str) -> str:
        about = self.context.facts.get(fact)
        return about.means if about else self._fact(fact)

    def _fact(self, fact: str) -> str:
        return fact.replace("_", " ")

    def _counted_in(self, fact: str) -> Noun:
        """The plural of what a fact counts; empty when it measures."""
        if things := noun_of(self.context.facts.get(fact)):
            return Noun("") if things in UNITS else things
        return Noun(self._fact(fact) if is_plural(self._fact(fact)) else "")

    def _compared(self, fact: str, sign: str, number: Number) -> str:
        said = amount(number)
        if fact == "n":
            return COMPARED_WORDS[sign].format(said)
        things = self._counted_in(fact)
        if things:
            return _COUNTED[sign].format(said, one_or_many(number.value, things))
        about = self.context.facts.get(fact)
        unit = f" {about.unit}" if about and about.unit else ""
        return f"{self._fact(fact)} {COMPARED_WORDS[sign].format(said + unit)}"

    def _of_fact(self, fact: str, rule: Call, said: str) -> str:
        things = self._counted_in(fact)
        if things and rule.name in ("odd", "even"):
            return f"an {rule.name} number of {things}"
        return f"{things or self._fact(fact)}: {said}"


def signs_in_label(rule: Rule, year: YearLimits) -> frozenset[str]:
    """The signs in what fits a rule; a fact compared with a number or with words is said without one."""
    match rule:
        case Join(left=left, right=right):
            return signs_in_label(left, year) | signs_in_label(right, year)
        case Not(inner=inner):
            return signs_in_label(inner, year)
        case Comparison(left=Name(), right=Number() | Words()):
            return frozenset()
    parts = list(parts_of(rule))
    compared = {part.sign for part in parts if isinstance(part, Comparison) and is_with_sign(part, part.sign, year)}
    return frozenset({part.sign for part in parts if isinstance(part, Operation)} | compared)
