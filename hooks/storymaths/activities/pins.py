"""What an author pins for another year: fields of the kind, values of the cast, the largest number."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from pydantic import ValidationError

from ..model.activity import Context
from ..model.book import FactValue
from ..model.document import Loc
from ..model.year import YearLimits
from ..parse.suggestion import did_you_mean
from .claims import claims_none
from .kind import ActivityFields, Kind, Unsolvable

LARGEST, FACTS, CAST = "largest", "facts", "cast"
"""Pins besides the fields of the kind: the largest number met, values of the cast, and fewer characters."""
_SETTLED = frozenset({"kind", "id", "years", "year"})


@dataclass(frozen=True, slots=True)
class Pinned:
    """An activity with its pins applied, and what a version must keep."""

    fields: ActivityFields
    context: Context
    limits: YearLimits
    field_names: frozenset[str]
    facts: Mapping[str, Mapping[str, FactValue]]

    def is_all_of(self, fields: ActivityFields, context: Context) -> bool:
        """Whether a version is what the author pinned and nothing else."""
        pinned = self.field_names - {"ask", "title"} or self.facts
        return bool(pinned) and fields == self.fields and context.characters == self.context.characters

    def keeps(self, fields: ActivityFields, context: Context) -> bool:
        """Whether a version has all that is pinned."""
        if any(getattr(fields, name) != getattr(self.fields, name) for name in self.field_names):
            return False
        by_id = {character.id: character.facts for character in context.characters}
        return all(
            by_id.get(id_, {}).get(fact) == value for id_, own in self.facts.items() for fact, value in own.items()
        )


def pinned(
    kind: Kind[Any],
    fields: ActivityFields,
    context: Context,
    limits: YearLimits,
    pins: Mapping[str, Any],
    raw: Mapping[str, Any] | None = None,
    at: Loc = (),
) -> Pinned:
    """The activity with its pins. ``raw`` is what the fields were read from, if it is at hand.

    ``at`` is where the pins stand, if not under the activity's own ``years``. Raises ``Unsolvable`` for a pin that
    means nothing.
    """
    loc: Loc = at or ("years", limits.year)
    own = {name: value for name, value in pins.items() if name not in (LARGEST, FACTS, CAST)}
    if LARGEST in pins:
        limits = _no_larger_than(pins[LARGEST], limits, loc)
    if CAST in pins:
        context = _fewer(pins[CAST], context, loc)
    facts = _facts(pins.get(FACTS, {}), fields, context, loc)
    characters = tuple(replace(p, facts={**p.facts, **facts[p.id]}) if p.id in facts else p for p in context.characters)
    changed = _with_fields(kind, fields, own, raw, loc)
    held = frozenset(name for key, name in _names_by_key(type(changed)).items() if key in own) - {"answers", "wished"}
    return Pinned(changed, replace(context, characters=characters), limits, held, facts)


def _names_by_key(schema: type[ActivityFields]) -> Mapping[str, str]:
    """The fields of a task by what stands before the colon."""
    return {field.alias or name: name for name, field in schema.model_fields.items()}


def _no_larger_than(largest: Any, limits: YearLimits, loc: Loc) -> YearLimits:
    if isinstance(largest, bool) or not isinstance(largest, int) or largest < 1:
        raise Unsolvable((*loc, LARGEST), "The largest number should be a whole number from 1.", "write one.")
    return limits.model_copy(
        update={
            "largest_number": min(largest, limits.largest_number),
            "counted_to": None,
            "largest_calculated": min(largest, limits.largest_calculated),
        }
    )


def _fewer(ids: Any, context: Context, loc: Loc) -> Context:
    known = [character.id for character in context.characters]
    if not isinstance(ids, (list, tuple)) or not ids:
        raise Unsolvable((*loc, CAST), "The cast of a version is a list of ids.", "write it as [otter, hare].")
    for id_ in ids:
        _check_known(str(id_), known, (*loc, CAST))
    return replace(context, characters=tuple(character for character in context.characters if character.id in ids))


def _facts(given: Any, fields: ActivityFields, context: Context, loc: Loc) -> Mapping[str, Mapping[str, FactValue]]:
    """Pinned values by character and fact. A bare value is of the fact the activity turns on."""
    here = (*loc, FACTS)
    if not isinstance(given, Mapping):
        raise Unsolvable(here, "Pinned facts are `id: value` lines.", "write them as {otter: 3}.")
    known = [character.id for character in context.characters]
    facts: dict[str, Mapping[str, FactValue]] = {}
    for id_, value in given.items():
        _check_known(str(id_), known, here)
        own = value if isinstance(value, Mapping) else {fields.fact or "": value}
        for fact, number in own.items():
            if not str(fact).strip() or not isinstance(number, (bool, int, str)):
                raise Unsolvable((*here, str(id_)), f"A value is missing for {id_}.", "write it as {otter: 3}.")
            if isinstance(number, int) and abs(number) > context.caps.number:
                raise Unsolvable((*here, str(id_)), f"The value for {id_} is too large.", "write a smaller number.")
        facts[str(id_)] = own
    return facts


def _check_known(id_: str, known: list[str], loc: Loc) -> None:
    if id_ not in known:
        raise Unsolvable(
            loc,
            f'"{id_}" is not in the cast of this activity.{did_you_mean(id_, known)}',
            f"use one of {', '.join(known)}." if known else "give the activity a cast.",
            "activity-fact-missing",
        )


def _with_fields(
    kind: Kind[Any], fields: ActivityFields, own: Mapping[str, Any], raw: Mapping[str, Any] | None, loc: Loc
) -> ActivityFields:
    """The fields with those pinned put in; a number of answers that is pinned is the number wished for.

    A field pinned to nothing is left out, so that a version may be another task of the kind.
    """
    stated = _as_stated(fields) if raw is None else raw
    wanted = {key: value for key, value in {**stated, **own}.items() if value is not None or key not in own}
    schema = kind.schema_for(wanted)
    left_out = {key for key in own if key not in wanted}
    known = {key for task in kind.tasks for key in _names_by_key(task)} if left_out else _names_by_key(schema)
    allowed = [key for key in (*known, LARGEST, FACTS) if key not in _SETTLED]
    for key in own:
        if key not in allowed:
            message = f'"{key}" cannot be pinned.{did_you_mean(str(key), allowed)}'
            raise Unsolvable((*loc, key, "[key]"), message, f"use one of {', '.join(allowed)}.", "activity-broken")
    changed = fields
    if own:
        try:
            changed = schema.model_validate(wanted)
        except ValidationError as error:
            detail = error.errors(include_url=False)[0]
            key = str(detail["loc"][0]) if detail["loc"] else "what is pinned"
            message = f'"{key}" cannot be pinned like that: {detail["msg"][0].lower()}{detail["msg"][1:]}.'
            raise Unsolvable((*loc, key), message, "write it as the field is written.", "activity-broken") from None
    claim = changed.answers if "answers" in own else 0 if claims_none(fields) else None
    return changed.model_copy(update={"answers": claim, "wished": _wished(changed, claim, "wished" in own)})


def _as_stated(fields: ActivityFields) -> dict[str, Any]:
    """What an author stated, by what stands before the colon."""
    names = _names_by_key(type(fields)).items()
    return {key: getattr(fields, name) for key, name in names if name in fields.model_fields_set}


def _wished(fields: ActivityFields, claim: Any, pinned_too: bool) -> tuple[int, int]:
    if claim is None or pinned_too:
        return fields.wished
    count = claim if isinstance(claim, int) else len(claim)
    return (count, count)
