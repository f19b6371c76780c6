"""Puts made-up input through every stage of the program and counts what breaks it.

``python tests/bench/fuzz.py [--seed N] [--from N] [--inputs N] [--of SORT] [--report FILE]``. An input is a page, an activity, a
file of site data, a drawing or a tree of files, changed at random (``fuzzing/make.py``); each is read and checked, drawn as
it is served, and where the check has nothing to say drawn as it is built, put on the class screen, made ready to be
printed, listed and packed (``fuzzing/stages.py``). One in fifty that pass is really set in type.

What counts as broken: any exception, one that the program caught and told as its own fault, more than two seconds, or
memory that grows by more than 100 MB. Each finding is made as small as it goes and written to the report as a line of
JSON; the same fault counts once. It ends with 1 if there is any.
"""

from __future__ import annotations

import argparse
import faulthandler
import gc
import json
import resource
import signal
import sys
import time
import traceback
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from types import FrameType

sys.path.insert(0, str(Path(__file__).parent.parent))

from bench.fuzzing.inputs import Input
from bench.fuzzing.make import MAKERS, make_input
from bench.fuzzing.stages import PASSED, Stage, run_through

LONGEST = 2.0
"""Seconds of work."""
_HANGS = 20
"""Seconds after which it is stopped."""
_GROWS = 100_000
"""Kilobytes."""
_SET_IN_TYPE = 50
_TELLS = 1000
_LOOKS_FOR_LITTER = 20_000
_ROOM = 6_000_000_000
_SMALLER = 4.0
"""Seconds given to making a finding smaller."""


class TooLong(Exception):
    """An input takes so long that nobody waits for it."""


@dataclass(frozen=True, slots=True)
class Finding:
    """One fault, the first input that showed it, and at which stage."""

    key: str
    stage: str
    given: Input
    number: int
    seconds: float


@dataclass
class Tally:
    """What a run came to."""

    done: Counter[str] = field(default_factory=Counter)
    passed: Counter[str] = field(default_factory=Counter)
    faults: Counter[str] = field(default_factory=Counter)
    slow: int = 0
    findings: dict[str, Finding] = field(default_factory=dict)
    before: int = 0
    after: int = 0


def put_through(given: Input, in_type: bool = False) -> tuple[bool, str, str, float]:
    """Whether an input passed, what it broke (empty for nothing), at which stage, and in how many seconds."""
    stage, started = Stage(), time.process_time()
    signal.setitimer(signal.ITIMER_PROF, _HANGS)
    try:
        passed, broke = run_through(given, stage, in_type) == PASSED, ""
    except Exception as error:  # whatever it is, it is what is looked for
        passed, broke = False, _key_of(error)
    finally:
        signal.setitimer(signal.ITIMER_PROF, 0)
    took = time.process_time() - started
    if not broke and took > LONGEST and stage.now != "sheets set in type":
        broke = f"slow in {stage.now}"
    return passed, broke, stage.now, took


def _key_of(error: Exception) -> str:
    frames = traceback.extract_tb(error.__traceback__)
    inside = [frame for frame in frames if "storymaths" in frame.filename] or list(frames)
    last = inside[-1]
    told = f" {str(error)[:80]}" if type(error).__name__ == "Stumbled" else ""
    return f"{type(error).__name__} in {Path(last.filename).name}:{last.name}{told}"


def made_smaller(finding: Finding) -> Finding:
    """The same fault with as few lines as will show it."""
    lines, until = finding.given.text.split("\n"), time.process_time() + _SMALLER
    size = max(1, len(lines) // 2)
    while size and time.process_time() < until:
        at = 0
        while at < len(lines) and time.process_time() < until:
            fewer = lines[:at] + lines[at + size :]
            if put_through(replace(finding.given, text="\n".join(fewer)))[1] == finding.key:
                lines = fewer
            else:
                at += size
        size //= 2
    return replace(finding, given=replace(finding.given, text="\n".join(lines)))


def fuzz(seed: int, numbers: Sequence[int], of: str = "", until: float = float("inf")) -> Tally:
    """Puts the inputs of these numbers through; stops early when the clock passes ``until``."""
    tally = Tally()
    warm = len(numbers) // 10
    for place, number in enumerate(numbers):
        if time.time() > until:
            break
        given = make_input(seed, number, of)
        passed, broke, stage, took = put_through(given, number % _SET_IN_TYPE == 0)
        tally.done[given.of] += 1
        tally.passed[given.of] += passed
        if broke:
            tally.slow += took > LONGEST
            tally.faults[broke] += 1
            if broke not in tally.findings:
                print(f"{given.of} {number}: {broke} ({stage}, {took:.1f} s)", file=sys.stderr, flush=True)
            tally.findings.setdefault(broke, Finding(broke, stage, given, number, took))
        if (place + 1) % _TELLS == 0:
            print(f"{place + 1:,} done; {_resident():.0f} MB now", file=sys.stderr, flush=True)
        tally.after = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
        tally.before = tally.after if place <= warm else tally.before
    return tally


def _resident() -> float:
    """Megabytes this process holds now."""
    pages = int(Path("/proc/self/statm").read_text(encoding="ascii").split()[1])
    return pages * resource.getpagesize() / 1_000_000


def report(tally: Tally, seed: int, file: Path | None) -> bool:
    """Says what came of a run; whether nothing broke."""
    for sort, number in tally.done.items():
        print(f"{sort:10} {number:7,} put in, {tally.passed[sort]:6,} passed the check and everything after it")
    grew = tally.after - tally.before
    print(
        f"{tally.done.total():,} in all; {tally.faults.total()} broke something, in {len(tally.findings)} ways;",
        end=" ",
    )
    print(
        f"{tally.slow} took more than {LONGEST:.0f} s; memory {tally.before / 1000:.0f} to {tally.after / 1000:.0f} MB"
    )
    for key, times in tally.faults.most_common():
        found = made_smaller(tally.findings[key])
        print(f"  {times:5} {key}  ({found.stage}, number {found.number}, {found.seconds:.1f} s)")
        if file:
            record = {"fault": key, "times": times, "stage": found.stage, "seed": seed, "number": found.number}
            with file.open("a", encoding="utf-8") as lines:
                lines.write(json.dumps(record | {"path": found.given.path, "text": found.given.text}) + "\n")
    return not tally.faults and grew < _GROWS


def _stop(_: int, __: FrameType | None) -> None:
    raise TooLong


def main() -> int:
    """0 if nothing broke."""
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("--seed", type=int, default=20270111)
    parser.add_argument("--from", dest="first", type=int, default=0)
    parser.add_argument("--inputs", type=int, default=1000)
    parser.add_argument("--minutes", type=float, default=float("inf"), help="stop after so long, however many are done")
    parser.add_argument("--of", choices=MAKERS, default="")
    parser.add_argument("--report", type=Path)
    given = parser.parse_args()
    signal.signal(signal.SIGPROF, _stop)
    gc.set_threshold(_LOOKS_FOR_LITTER)  # what stands around the inputs stays: looking it over again costs an eighth
    faulthandler.register(signal.SIGUSR1)  # what hangs inside a pattern no exception reaches
    resource.setrlimit(resource.RLIMIT_DATA, (_ROOM, _ROOM))
    numbers = range(given.first, given.first + given.inputs)
    tally = fuzz(given.seed, numbers, given.of, time.time() + given.minutes * 60)
    return 0 if report(tally, given.seed, given.report) else 1


if __name__ == "__main__":
    sys.exit(main())
