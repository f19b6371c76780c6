"""The command ``explain``: why a rule exists, its source, and an example."""

from __future__ import annotations

import argparse

from ..activities.rules import every_rule
from ..model.rule import Rule
from ..parse.suggestion import did_you_mean
from ..release.trial import RULES as RELEASE_RULES
from .command import Command, Misused


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Which rule."""
    parser.add_argument("rule", nargs="?", help="a rule's name as reports print it (default: list them all)")


def run(options: argparse.Namespace) -> int:
    """Tells of one rule in full, or of each in a sentence. Raises ``Misused``."""
    known = every_rule() | {rule.name: rule for rule in RELEASE_RULES}
    name = options.rule
    if name is None:
        for rule in known.values():
            print(f"{rule.name}\n  {rule.says}")
    elif name in known:
        print(explanation(known[name]))
    else:
        raise Misused(f'There is no rule "{name}".{did_you_mean(name, known)}')
    return 0


def explanation(rule: Rule) -> str:
    """A rule told in full."""
    return (
        f"{rule.name}\n\n  {rule.says}\n\n  Why:     {rule.why}\n  Source:  {rule.source}\n"
        f"  Wrong:   {rule.wrong}\n  Right:   {rule.right}\n  Since:   version {rule.since}"
    )


COMMAND = Command(add_arguments, run)
