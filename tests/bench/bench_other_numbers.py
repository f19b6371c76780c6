"""Other numbers of every activity of a collection: how many sets there are, what they cost, and each counted a second way.

``python tests/bench/bench_other_numbers.py [project]`` prints a line for each activity: sets found, answers promised, how they
were counted again, and whether the order of the cast and the author's pins are kept. It ends with what did not hold (nothing,
or it fails) and with the processor time of all the searching. The second way tries all there is to try, by plain
arithmetic, and knows nothing of the kinds; where it has no way of its own it says so, and the kind solves once more.
"""

from __future__ import annotations

import re
import sys
import time
from collections.abc import Callable
from fractions import Fraction
from itertools import combinations, permutations, product
from pathlib import Path
from typing import Any

sys.path.insert(0, str(Path(__file__).parent.parent.parent / "hooks"))

from storymaths.activities.bending import Version
from storymaths.activities.work_out import WorkedOut
from storymaths.reading import read_and_check

Facts = dict[str, int]


def is_true(line: str) -> bool:
    """Whether a number sentence of figures is true."""
    told = line.replace("−", "-").replace("×", "*").replace("÷", "/").replace("≠", "!=")
    told = re.sub(r"(?<![<>!=])=(?!=)", "==", told)
    if not re.fullmatch(r"[\d+\-*/=!<> ().]+", told):
        raise ValueError(line)
    return bool(eval(re.sub(r"\d+", r"Fraction(\g<0>)", told), {"Fraction": Fraction}))


def facts_of(one: Version) -> Facts:
    fact = one.fields.fact
    return {who.id: int(who.facts[fact]) for who in one.context.characters} if fact else {}


def count_filled(one: Version) -> int:
    """Number sentences: every gap tried with every number that may stand in it."""
    fields: Any = one.fields
    count = 0
    for line in fields.sentences:
        gaps = line.count("___")
        if not gaps:
            count += is_true(line)
            continue
        room = list(fields.gaps) if fields.gaps else range(1001)
        ways = permutations(room, gaps) if fields.each_once else product(room, repeat=gaps)
        found = [way for way in ways if is_true(fill(line, way))]
        count += len({tuple(sorted(way)) for way in found}) if fields.swapped == "same" else len(found)
    return count


def fill(line: str, way: tuple[int, ...]) -> str:
    for number in way:
        line = line.replace("___", str(number), 1)
    return line


def count_compared(one: Version) -> int:
    """Comparisons: every sign tried, and lines without one judged."""
    fields: Any = one.fields
    signs = fields.signs or ("<", "=", ">")
    lines = (line.replace("___", "?") for line in fields.statements)
    return sum(
        any(is_true(line.replace("?", sign)) for sign in signs) if "?" in line else is_true(line) for line in lines
    )


def count_level(one: Version) -> int:
    """Balances: everybody tried on the left, on the right and on the quay; mirror images once."""
    fields: Any = one.fields
    values, found = list(facts_of(one).values()), set()
    for places in product((0, 1, 2), repeat=len(values)):
        left, right = ([n for n, place in enumerate(places) if place == side] for side in (1, 2))
        if not left or not right or sum(values[n] for n in left) != sum(values[n] for n in right):
            continue
        if (fields.teams == "all" and 0 in places) or (
            isinstance(fields.teams, int) and not len(left) == len(right) == fields.teams
        ):
            continue
        found.add(frozenset((frozenset(left), frozenset(right))))
    return len(found)


def count_bonds(one: Version) -> int:
    """Bonds: every choice of characters that make the whole, or the one part that is missing."""
    fields: Any = one.fields
    if fields.fact:
        values = list(facts_of(one).values())
        return sum(sum(way) == fields.whole for way in combinations(values, fields.parts))
    return int(sum(fields.known) <= fields.whole)


def count_chosen(one: Version) -> int:
    """Paying: every purse of coins that is worth the amount; buying: every choice of so many."""
    fields: Any = one.fields
    if fields.fact:
        return sum(sum(way) == fields.amount for way in combinations(facts_of(one).values(), fields.choose))
    coins = sorted(fields.purse)
    return len({way for n in range(1, len(coins) + 1) for way in combinations(coins, n) if sum(way) == fields.amount})


def count_shared(one: Version) -> int:
    """Equal groups: every size of group tried, or every amount that is offered."""
    fields: Any = one.fields
    if fields.task_name == "piles":
        return sum(amount % (fields.among or fields.each) == fields.left_over for amount in fields.piles)
    return sum(fields.total % size == 0 for size in range(1, fields.total + 1))


def count_orders(one: Version) -> int:
    """Orders of a cast whose values all differ: one."""
    return int(len(set(facts_of(one).values())) == len(one.context.characters))


SECOND_WAYS: dict[str, Callable[[Version], int]] = {
    "number-sentence": count_filled,
    "compare": count_compared,
    "balance": count_level,
    "bonds": count_bonds,
    "money": count_chosen,
    "share": count_shared,
    "order": count_orders,
}


def counted_again(one: Version, worked: WorkedOut) -> tuple[int, str]:
    """How many answers there are, and how that was found."""
    assert worked.kind is not None
    try:
        return SECOND_WAYS[worked.kind.name](one), "tried one by one"
    except (KeyError, AttributeError, ValueError):
        return len(worked.kind.solve(one.fields, one.context).answers), "by its kind once more"


def is_in_order(old: Facts, new: Facts) -> bool:
    """Whether whoever had more has more still, and equals are equal."""
    return all((old[a] > old[b]) == (new[a] > new[b]) for a, b in permutations(old, 2))


def keeps_pins(one: Version, worked: WorkedOut) -> bool:
    """Whether what the author pins for its own year is as it was."""
    assert worked.fields is not None
    pins = worked.fields.years.get(worked.year or 0, {})
    own, new = dict(worked.fields), dict(one.fields)
    return all(own.get(name) == new.get(name) for name in pins if name in own and name not in ("ask", "title"))


def main() -> None:
    root = Path(sys.argv[1]) if len(sys.argv) > 1 else Path(__file__).parent.parent.parent
    wrong, spent, found = [], 0.0, []
    for path, activities in read_and_check(root).activities.items():
        for worked in (one.worked for one in activities if one.worked.done):
            assert worked.kind is not None
            assert worked.fields is not None
            assert worked.solution is not None
            assert worked.context is not None
            started = time.process_time()
            sets = worked.other_sets
            spent += time.process_time() - started
            promised, how = len(worked.solution.answers), ""
            own = Version(worked.fields, worked.context, worked.solution, "")
            for one in sets:
                count, how = counted_again(one, worked)
                if count != promised or not is_in_order(facts_of(own), facts_of(one)) or not keeps_pins(one, worked):
                    wrong.append(f"{path} {worked.fields.title}: {count} and not {promised}")
            found.append(len(sets))
            print(f"{path:50} {worked.fields.title[:34]:35} {len(sets)} × {promised} answers {how}")
    print(f"{sum(found)} sets for {sum(map(bool, found))} of {len(found)} activities, {spent:.1f} s of processor time.")
    print(
        "\n".join(wrong)
        or "Each has as many answers as the author's, in the same order of the cast, with the pins kept."
    )
    sys.exit(bool(wrong))


if __name__ == "__main__":
    main()
