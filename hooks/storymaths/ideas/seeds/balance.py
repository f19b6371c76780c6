"""Two teams that come to the same, from any fact whose numbers can be put together."""

from __future__ import annotations

from ...activities.saying import capital
from ...model.plain import Plain
from ...model.year import YearLimits
from ..candidate import Candidates
from ..material import Material
from ..number_sets import number_sets
from ..wording import WEIGHS
from .seed import Seed


def _plant(material: Material, limits: YearLimits) -> Candidates:
    for numbers in number_sets(material, limits, fewest=4):
        words = numbers.words
        for team, title in ((2, "Two against two"), (3, "Three against three")):
            ask = f"{title.partition(' ')[0]} on each side. Which sides {words.same}? Find every way."
            yield numbers.with_cast("balance", f"{title}: {words.things}", ask, finds=True, teams=team)
        ask = f"Everyone is on one side or the other, and both sides {words.same}. Find every way."
        yield numbers.with_cast("balance", f"Everyone on a side: {words.things}", ask, finds=True, teams="all")
        others = "are as heavy together" if numbers.fact.of == WEIGHS else "have as many between them"
        others = "have as much between them" if numbers.fact.of == "money" else others
        for one in reversed(numbers.rising[-2:]):
            title = capital(words.as_many_as(one.name))
            ask = f"{words.tells(one.name, numbers.values[one.id])}. Which of the others {others}? Find every way."
            given: dict[str, Plain] = {"side": [one.id]}
            yield numbers.with_cast("balance", title, ask, finds=True, given=given)
        ask = f"Choose two teams, so that both {words.same}. Find every way."
        yield numbers.with_cast("balance", f"Every fair pair of teams: {words.things}", ask, finds=True, teams="any")


SEED = Seed("four characters or more with a number each", _plant)
