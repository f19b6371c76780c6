"""What tests need for mutation testing, ``-p bench.few_examples``: few Hypothesis cases, and nothing remembered.

A test that says ``max_examples`` itself takes no notice of a profile, so its settings are replaced once it is
collected; the cases are the same every time. A failing case is not made smaller: that it fails is all that is asked.

mutmut runs the tests once and then forks for each mutant. What was worked out before and is remembered would hide the
mutant, so every memory of the activities is emptied before each test.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from typing import Any

import pytest
from hypothesis import Phase, settings

FEW = 30
_SETTINGS = "_hypothesis_internal_use_settings"  # there is no public way to change them; the version is pinned


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    """Replaces the settings of every test that Hypothesis drives."""
    for item in items:
        test = getattr(item, "obj", None)
        own = getattr(test, _SETTINGS, None)
        if own is not None:
            few = settings(
                own,
                max_examples=min(FEW, own.max_examples),
                derandomize=True,
                database=None,
                phases=(Phase.explicit, Phase.generate),
            )
            setattr(getattr(test, "__func__", test), _SETTINGS, few)


def pytest_runtest_setup() -> None:
    """Empties what functions of the activities remember."""
    for memory in _memories():
        memory.cache_clear()


def _memories() -> Iterator[Any]:
    for name, module in list(sys.modules.items()):
        if name.startswith("storymaths.activities"):
            yield from (thing for thing in vars(module).values() if hasattr(thing, "cache_clear"))
