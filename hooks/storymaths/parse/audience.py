"""Whom the texts of a page's front matter are for, read off its schema: pupils' words and adults' are gathered apart."""

from __future__ import annotations

import types
from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Annotated, Any, Union, get_args, get_origin

from pydantic import BaseModel

from ..model.fields import Audience


@dataclass(frozen=True, eq=False)
class Plan:
    """Which texts of a value are for an audience."""

    fields: Mapping[str, Plan] = field(default_factory=dict)
    """The fields of a schema that hold some, by the keys authors write."""
    values: Plan | None = None
    """The values of a mapping whose keys are names."""

    def under(self, key: Any) -> Plan | None:
        """What is under a key; None where nothing is for them."""
        return self.values or self.fields.get(key)


_TEXT = Plan()


@cache
def plan_of(schema: type[BaseModel], audience: Audience = Audience.PUPILS) -> Plan:
    """The plan of a schema for an audience."""
    found = {}
    for name, about in schema.model_fields.items():
        plan = _plan(about.annotation, audience, about.metadata)
        if plan is not None:
            found[about.alias or name] = plan
    return Plan(found)


def _plan(annotation: Any, audience: Audience, metadata: Any = ()) -> Plan | None:
    if audience in metadata:
        return _TEXT
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        own = plan_of(annotation, audience)
        return own if own.fields else None
    origin, inner = get_origin(annotation), get_args(annotation)
    if origin is Annotated:
        return _plan(inner[0], audience, inner[1:])
    if origin in (Union, types.UnionType, tuple):
        return next((plan for part in inner if (plan := _plan(part, audience))), None)
    if isinstance(origin, type) and issubclass(origin, Mapping):
        values = _plan(inner[1], audience)
        return Plan(values=values) if values else None
    return None
