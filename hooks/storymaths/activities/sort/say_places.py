"""A sorting diagram in words and drawings: what is asked, where everyone goes, why, and the likely error."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from ...model.activity import Figure, LikelyError
from ...model.figures.sorting import SortCarroll, SortHoop, SortThreeRings, SortVenn
from ..rule_language.denial import is_verb_first
from ..rule_language.reasons import Reason
from ..rule_language.tree import Comparison, Name, Number
from ..rule_language.words import amount
from ..saying import capital, listed, number_word
from .cards import Card
from .places import CardReasons, Sorted
from .tasks import Region


def ask_to_place(done: Sorted) -> str:
    """The task."""
    labels = [f"“{rule.fits}”" for rule in done.rules]
    things = "number" if done.cards.of_numbers else "one"
    match done.diagram:
        case "hoop":
            return f"Which go in the ring {labels[0]}, and which stay outside?"
        case "venn":
            return f"Put each {things} in the rings {listed(labels)}. What goes where they cross? What stays outside?"
        case "carroll":
            return f"Put each {things} in its box, by {listed(labels)}. Is any box empty?"


def _name_regions(done: Sorted) -> Mapping[Region, str]:
    """What each region is called in this diagram."""
    if done.diagram == "hoop":
        return {"in": f"in the ring “{done.rules[0].fits}”", "out": "outside it"}
    if len(done.rules) == 3:
        return _name_three(*(rule.fits for rule in done.rules))
    one, other = done.rules
    if done.diagram == "venn":
        return {
            "both": "where the rings cross",
            "first": f"only in “{one.fits}”",
            "second": f"only in “{other.fits}”",
            "neither": "outside both rings",
        }
    return {
        "both": f"in the box “{one.fits}, {other.fits}”",
        "first": f"in the box “{one.fits}, {other.otherwise}”",
        "second": f"in the box “{one.otherwise}, {other.fits}”",
        "neither": f"in the box “{one.otherwise}, {other.otherwise}”",
    }


def _name_three(one: str, other: str, third: str) -> Mapping[Region, str]:
    return {
        "all": "where all three rings cross",
        "first and second": f"only in “{one}” and “{other}”",
        "first and third": f"only in “{one}” and “{third}”",
        "second and third": f"only in “{other}” and “{third}”",
        "first": f"only in “{one}”",
        "second": f"only in “{other}”",
        "third": f"only in “{third}”",
        "none": "outside all three rings",
    }


def say_places(done: Sorted) -> str:
    """Where everyone goes."""
    names = _name_regions(done)
    return " ".join(
        f"{capital(names[region])}: {_names(cards) or done.cards.nobody}." for region, cards in done.regions.items()
    )


def explain_places(reasons: Sequence[CardReasons], name: Callable[[str], str] = str) -> str:
    """Why everyone goes there; ``name`` is how a card is called in a sentence."""
    return " ".join(say_reasons(capital(name(card.name)), own, capital(card.name)) for card, own in reasons)


def say_reasons(who: str, reasons: Sequence[Reason], head: str = "") -> str:
    """``Crab swims and does not fly.``; where they make no sentence, in a row after ``head``: ``Crab: legs 10 > 4.``"""
    says = list(dict.fromkeys(reason.says for reason in reasons))
    if all(one.startswith("has ") for one in says):
        return f"{who} has {listed([one.removeprefix('has ') for one in says])}."
    if all(map(is_verb_first, says)):
        unlike = len(says) == 2 and len([one for one in says if one.startswith("does not ")]) == 1
        return f"{who} {' but '.join(says) if unlike else listed(says)}."
    return f"{head}: {', '.join(says)}." if head else f"{capital(', '.join(says))}."


def explain_empty(done: Sorted) -> str:
    """What an empty region tells; else that every card has been looked at."""
    regions, names, all_of = done.regions, _name_regions(done), done.cards.of
    if done.diagram == "hoop":
        if not all(regions.values()):
            return f"Every {all_of} goes the same way, so this rule does not sort these."
    elif len(done.rules) == 3:
        if empty := [names[region] for region, cards in regions.items() if not cards]:
            return f"No {all_of} is {listed(empty, 'or')}."
    elif empty := [region for region, cards in regions.items() if not cards]:
        one, other = done.rules
        why: dict[Region, str] = {
            "both": f"no {all_of} fits both rules",
            "first": f"every {all_of} that fits “{one.fits}” fits “{other.fits}” too",
            "second": f"every {all_of} that fits “{other.fits}” fits “{one.fits}” too",
            "neither": f"every {all_of} fits one rule or the other",
        }
        if not one.who:
            why["first"] = f"no {all_of} fits “{one.fits}”"
        if not other.who:
            why["second"] = f"no {all_of} fits “{other.fits}”"
        return " ".join(f"{capital(names[region])} is empty: {why[region]}." for region in empty)
    count = len(done.cards.cards)
    return f"Each of the {number_word(count)} has one place." if count > 1 else f"The one {all_of} was tried."


def find_error(done: Sorted) -> LikelyError | None:
    """The likely error, worked out: a card of both rings left in one; one of neither forced into a ring."""
    if done.diagram == "hoop":
        return _err_at_the_edge(done)
    regions, names = done.regions, _name_regions(done)
    if len(done.rules) == 3:
        return _err_in_three(done)
    if both := regions["both"]:
        return LikelyError(
            f"Looks at one rule only, and stops: {_names(both[:1])} fits both.",
            f"{capital(_names(both[:1]))} {names['first']}, and the other rule is forgotten.",
        )
    if neither := regions["neither"]:
        forced = "Thinks that everyone must go into a ring."
        does = forced if done.diagram == "venn" else "Leaves out who fits neither."
        return LikelyError(does, f"No place for {_names(neither)}, {names['neither']}.")
    return None


def _err_in_three(done: Sorted) -> LikelyError | None:
    """A card that fits several rules left where it fits fewer."""
    regions, names = done.regions, _name_regions(done)
    fewer: dict[Region, tuple[str, Region]] = {
        "all": ("two rules", "first and second"),
        "first and second": ("one rule", "first"),
        "first and third": ("one rule", "first"),
        "second and third": ("one rule", "second"),
    }
    for region, (looked_at, left_in) in fewer.items():
        if cards := regions[region]:
            who = _names(cards[:1])
            does = f"Looks at {looked_at} only, and stops: {who} fits {'all three' if region == 'all' else 'two'}."
            return LikelyError(does, f"{capital(who)} {names[left_in]}, and the other rule is forgotten.")
    return None


def _err_at_the_edge(done: Sorted) -> LikelyError | None:
    """Somebody with exactly the number that must be passed, taken to pass it."""
    (rule,) = done.rules
    match rule.tree:
        case Comparison(sign="<" | ">", left=Name(name=fact), right=Number(value=edge) as number):
            at_edge = [card for card in done.cards.cards if card.case[fact] == edge]
            if at_edge:
                does = f"Counts {_names(at_edge)} in, at exactly {amount(number)}."
                return LikelyError(does, f"{len(rule.who) + len(at_edge)} in the ring, where {len(rule.who)} fit.")
    return None


def draw(done: Sorted, filled: bool) -> Figure:
    """The diagram, empty for the pupil, or with everyone in their place."""
    regions, names = done.regions, _name_regions(done)
    shown = {region: tuple(card.name for card in cards if filled) for region, cards in regions.items()}
    labels = [rule.fits for rule in done.rules]
    rings = "Three rings that overlap" if len(labels) == 3 else "Two rings that overlap"
    what = {"hoop": "One ring", "venn": rings, "carroll": "A table of two by two boxes"}
    alt = f"{what[done.diagram]}, for {listed([f'“{label}”' for label in labels])}"
    if filled:
        inside = (f"{capital(names[region])}: {_names(cards) or 'empty'}." for region, cards in regions.items())
        alt += f". {' '.join(inside)}"
    else:
        alt += ", still empty."
    if done.diagram == "hoop":
        return Figure(SortHoop(labels[0], done.rules[0].otherwise, shown["in"], shown["out"]), alt)
    if len(labels) == 3:
        return Figure(SortThreeRings((labels[0], labels[1], labels[2]), tuple(shown.values())), alt)
    one, other = done.rules
    two_by_two = SortVenn if done.diagram == "venn" else SortCarroll
    places = (shown["both"], shown["first"], shown["second"], shown["neither"])
    return Figure(two_by_two((one.fits, other.fits), (one.otherwise, other.otherwise), *places), alt)


def _names(cards: Sequence[Card]) -> str:
    return listed([card.name for card in cards])
