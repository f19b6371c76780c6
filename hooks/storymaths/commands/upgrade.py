"""The command ``upgrade``: a collection that an earlier version made, in the form of this one; shown before it is written."""

from __future__ import annotations

import argparse
from pathlib import Path

from ..model.program_version import VERSION, is_newer
from ..upgrade.plan import SETTINGS, Changed, Plan, difference, last_checked, make_plan, write
from .command import FAILED, Command, Misused, in_project
from .terminal import as_text, count_problems, count_warnings, spell_out


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Whether to write."""
    parser.add_argument("--write", action="store_true", help="write what is shown otherwise")


def run(root: Path, options: argparse.Namespace) -> int:
    """Shows the difference, or writes it; 1 where something is left to mend. Raises ``Misused``."""
    last = last_checked(root)
    if is_newer(last, VERSION):
        raise Misused(
            f"This collection was last checked with version {last}, and this is {VERSION}: install a newer one."
        )
    try:
        plan = make_plan(root)
    except OSError:  # a file that is no plain file, or may not be read
        raise Misused("The collection could not be read: `storymaths check` says which file it is.", FAILED) from None
    if plan.touched:
        print("\n".join(spell_out(line) for line in difference(plan).split("\n")))
        print()
    if options.write and plan.touched:
        _write(plan)
    print(_summary(plan, last, written=options.write))
    return 0 if plan.noted else FAILED


def _write(plan: Plan) -> None:
    try:
        write(plan)
    except Changed as file:
        raise Misused(f"{file} was changed meanwhile. Nothing was written; run it again.", FAILED) from None
    except OSError as error:
        raise Misused(
            f"{error.filename} could not be written: {error.strerror}. Each file is whole, as it was or as shown above; run it again.",
            FAILED,
        ) from None


def _summary(plan: Plan, last: str, *, written: bool) -> str:
    told = [spell_out(line) for line in plan.by_hand]
    left = as_text(plan.reading.problems, plan.reading.warnings)
    if left:
        told += ["What is left to mend after it:" if plan.touched else "What is left to mend:", left]
    files = "1 file" if len(plan.touched) == 1 else f"{len(plan.touched)} files"
    if plan.touched:
        told.append(
            f"{files} rewritten."
            if written
            else f"{files} to rewrite; nothing has been written. To write: storymaths upgrade --write"
        )
    if plan.noted and not (plan.touched or left or plan.by_hand):
        told.append(f"Nothing to change: the collection is as version {VERSION} has it.")
    elif plan.noted:
        noted = written or not plan.touched
        told.append(f"{SETTINGS} {'says' if noted else 'will say'} that version {VERSION} last checked the collection.")
    else:
        left = f"{count_problems(len(plan.reading.problems))} and {count_warnings(len(plan.reading.warnings))}"
        told.append(
            f"{left} are left: mend them, and run it again. Until then the collection counts as last checked with version {last}."
        )
    return "\n".join(told)


COMMAND = Command(add_arguments, in_project(run))
