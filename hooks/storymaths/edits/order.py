"""In which order the keys of a page stand, for a key that is new."""

from __future__ import annotations

from collections.abc import Sequence

from ..model.page_schemas import SCHEMAS
from ..model.prose import Loc
from ..parse.schema_faults import keys_at

_FIRST = ("kind", "status", "book", "title", "published", "changed")
"""What every page begins with."""
_LAST = ("up_to", "signs", "units", "clock", "cast", "written", "activities")
"""What a bend ends with: what it promises, and its activities. Its schema has these first, since it builds on them."""


def page_keys(kind: str, path: Loc) -> Sequence[str]:
    """The keys of the mapping at a path of such a page, in their order; empty where they are names."""
    schema = SCHEMAS.get(kind)
    keys = keys_at(schema, path) if schema else ()
    if not path:
        return (*(key for key in _FIRST if key in keys), *(key for key in keys if key not in _FIRST))
    if set(_LAST) <= set(keys):
        return (*(key for key in keys if key not in _LAST), *_LAST)
    return keys


def place_of_key(key: str | int, present: Sequence[str | int], usual: Sequence[str]) -> int:
    """Where a new key stands among those that are there: after the last of those that come before it."""
    if key not in usual:
        return len(present)
    before = usual[: usual.index(str(key))]
    after = usual[usual.index(str(key)) + 1 :]
    above = [at for at, other in enumerate(present) if other in before]
    below = [at for at, other in enumerate(present) if other in after]
    nearest = max(above, key=lambda at: before.index(str(present[at]))) + 1 if above else None
    return nearest if nearest is not None else min(below, default=len(present))
