"""An activity that could be worked out: its task, the context it is set in, its solution and its versions."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Generic

from ..model.activity import Context, Solution
from .bending import Version
from .kind import F, Kind, V


@dataclass(frozen=True, slots=True)
class Worked(Generic[F, V]):
    """``F`` are the kind's tasks and ``V`` its answers: what shows them is held to their types."""

    kind: Kind[F, V]
    fields: F
    context: Context
    solution: Solution[V]
    versions: Mapping[int, Version]
    """The versions for other years, and for its own where the author names it."""


AnyWorked = Worked[Any, Any]
"""One of any kind."""
