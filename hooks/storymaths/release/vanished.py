"""A page that was published is still there, or has left a page behind that leads on."""

from __future__ import annotations

import datetime
from collections.abc import Iterator, Mapping

from ..model.address import html_of
from ..model.generated_pages import FOR_AUTHORS
from ..model.problem import Place, Problem
from ..model.rule import HOUSE_RULE, Rule
from ..parse.suggestion import did_you_mean

RULE = Rule(
    name="page-vanished",
    says="A page that was published is still there, or site_data/moved.yaml says where its readers are led.",
    why="An address once published is in somebody's plan, message or bookmark.",
    source=HOUSE_RULE,
    wrong="session-5.md taken out, and nothing said",
    right="{from: books/lift/session-5.md, to: books/lift/session-4.md, since: 2027-01-11} in site_data/moved.yaml",
)
_NO_READERS = frozenset(map(html_of, FOR_AUTHORS))


def check(before: Mapping[str, str], now: Mapping[str, str], today: datetime.date) -> Iterator[Problem]:
    """A problem for each page of before that is not there now. Both are titles by address. No reader has the guide's."""
    by_title = {title: address for address, title in now.items() if address not in before}
    for address in sorted(before.keys() - now.keys() - _NO_READERS):
        title = before[address]
        target = by_title.get(title, "")
        near = "" if target else did_you_mean(address, now)
        yield RULE.problem(
            Place("site_data/moved.yaml"),
            f'{address} ("{title}") was published, and is gone.{near}',
            "write under moved: in site_data/moved.yaml (make that file if you have none)  "
            f"- {{from: {_source(address)}, to: {_source(target) or '…'}, "
            f"since: {today.isoformat()}}}  or, if nothing took its place, retired: and see: in place of to:",
        )


def _source(address: str) -> str:
    return address.removesuffix(".html") + ".md" if address else ""
