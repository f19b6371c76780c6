"""What an author gives a task: fields of which one is enough, a cast where there must be one, none where it has no part."""

from __future__ import annotations

from typing import Any

from pydantic import field_validator
from pydantic_core import PydanticKnownError

from ..model.activity import Context
from .kind import ActivityFields, Unsolvable


class Castless(ActivityFields):
    """A task that turns on no fact of the cast."""

    @field_validator("fact", mode="before")
    @classmethod
    def _has_no_part(cls, value: Any) -> Any:
        if value is None:
            return None
        raise PydanticKnownError("extra_forbidden")


def each_once(names: tuple[str, ...]) -> tuple[str, ...]:
    """The names of a list in which none may stand twice. Raises ``ValueError``."""
    if twice := [name for at, name in enumerate(names) if name in names[:at]]:
        raise ValueError(f'"{twice[0]}" stands there twice; name each once')
    return names


def need_some(fields: ActivityFields, **choice: object) -> None:
    """Raises ``Unsolvable`` where none of these fields is given."""
    if not _given(choice):
        names = " or ".join(f'"{name}"' for name in choice)
        message = f'"find: {fields.task_name}" needs {names}.'
        raise Unsolvable(("find",), message, f"add {names}.", "activity-broken")


def need_one(fields: ActivityFields, **choice: object) -> None:
    """Raises ``Unsolvable`` where not exactly one of these fields is given."""
    need_some(fields, **choice)
    given = _given(choice)
    if len(given) > 1:
        names = " or ".join(f'"{name}"' for name in choice)
        message = f'"find: {fields.task_name}" takes only one of {names}; the other would be passed over in silence.'
        raise Unsolvable((given[1],), message, "keep one of them.", "activity-broken")


def need_cast(context: Context) -> None:
    """Raises ``Unsolvable`` where nobody is in the cast."""
    if not context.characters:
        raise Unsolvable(("cast",), "There is nobody in the cast.", "name some characters.", "activity-fact-missing")


def _given(choice: dict[str, object]) -> list[str]:
    return [name for name, value in choice.items() if value not in (None, (), {})]
