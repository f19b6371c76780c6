"""The built site tried before anybody sees it: the table of what is looked at."""

from __future__ import annotations

import datetime
from collections.abc import Mapping

from ..model.problem import Problem
from ..model.reference import PublishedLimits
from ..model.rule import Rule
from . import links_lead, nothing_runs, sizes, vanished
from .built_pages import BuiltSite

RULES: tuple[Rule, ...] = (links_lead.RULE, nothing_runs.RULE, sizes.RULE, vanished.RULE)


def try_out(site: BuiltSite, limits: PublishedLimits, before: Mapping[str, str], today: datetime.date) -> list[Problem]:
    """Every problem of a built site. ``before`` are the pages published so far, titles by address."""
    found = (
        *links_lead.check(site),
        *nothing_runs.check(site),
        *sizes.check(site, limits),
        *vanished.check(before, site.titles(), today),
    )
    return sorted(set(found))
