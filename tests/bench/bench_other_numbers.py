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
from itertools import combinations, pairwise, permutations, product
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
    return sum(
        any(is_true(line.replace("___", sign)) for sign in signs)
        if "___" in line and not re.search("[<=>]", line)
        else sum(is_true(line.replace("___", str(number))) for number in (range(1001) if "___" in line else [0]))
        for line in (one.replace("?", "___") for one in fields.statements)
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
    """Bonds: every choice of characters that make the whole, or the one part or whole that is missing."""
    fields: Any = one.fields
    if fields.fact:
        values = list(facts_of(one).values())
        return sum(sum(way) == fields.whole for way in combinations(values, fields.parts))
    wholes = [fields.whole] if fields.task_name != "whole" else range(1001)
    return sum(
        sum(fields.known) == whole or fields.task_name != "whole" for whole in wholes if sum(fields.known) <= whole
    )


def count_chosen(one: Version) -> int:
    """Paying: every purse of coins that is worth the amount; buying: every choice of so many; change: every amount tried."""
    fields: Any = one.fields
    if fields.task_name == "change":
        bill = sum((fields.prices or {}).values()) + sum(fields.items)
        return sum(bill + change == sum(fields.paid) for change in range(10_001))
    if fields.task_name == "buy" and fields.prices:
        sizes = [fields.choose] if fields.choose else range(1, len(fields.prices) + 1)
        return sum(sum(way) == fields.amount for size in sizes for way in combinations(fields.prices.values(), size))
    if fields.fact:
        return sum(sum(way) == fields.amount for way in combinations(facts_of(one).values(), fields.choose))
    coins = sorted(fields.purse)
    return len({way for n in range(1, len(coins) + 1) for way in combinations(coins, n) if sum(way) == fields.amount})


def count_shared(one: Version) -> int:
    """Equal groups: every size of group tried, or every share among so many, or every amount that is offered."""
    fields: Any = one.fields
    if fields.task_name == "piles":
        return sum(amount % (fields.among or fields.each) == fields.left_over for amount in fields.piles)
    named = dict(fields)
    if groups := named.get("among") or named.get("each"):
        return sum(0 <= fields.total - groups * share < groups for share in range(fields.total + 1))
    return sum(fields.total % size == 0 for size in range(1, fields.total + 1))


def count_orders(one: Version) -> int:
    """Orders of a cast whose values all differ: one."""
    return int(len(set(facts_of(one).values())) == len(one.context.characters))


def count_rows(one: Version) -> int:
    """Rows: every step tried, and for a mistake every place that it may be at; a pattern's places once its unit is found."""
    fields: Any = one.fields
    if fields.task_name == "pattern-places":
        units = (size for size in range(1, len(fields.pattern) + 1) if fits_unit(fields.pattern, size))
        return len(fields.places) if next(units) else 0
    if fields.rule != "step" or fields.task_name not in ("gaps", "mistake"):
        raise ValueError(fields.rule)
    left_out = range(len(fields.terms)) if fields.task_name == "mistake" else [None]
    return sum(
        len(
            {at for at, term in enumerate(fields.terms) if at != place and term != "___"}
            - steady(fields.terms, step, place)
        )
        == 0
        for place in left_out
        for step in range(-200, 201)
    )


def fits_unit(pattern: tuple[str, ...], size: int) -> bool:
    return all(thing == pattern[at % size] for at, thing in enumerate(pattern))


def steady(terms: tuple[Any, ...], step: int, place: int | None) -> set[int]:
    """The places that go up by a step from the first that is given, one left out."""
    known = [(at, term) for at, term in enumerate(terms) if term != "___" and at != place]
    return {at for at, term in known if term == known[0][1] + step * (at - known[0][0])}


def count_on_dials(one: Version) -> int:
    """Clocks: every minute of a dial tried for each."""
    fields: Any = one.fields
    if fields.task_name not in ("read", "set"):
        raise ValueError(fields.task_name)
    times = fields.times or list(facts_of(one).values())
    return sum(minute == time % 720 for time in times for minute in range(720))


def count_measured(one: Version) -> int:
    """Measures: every order tried for one that never falls; of two, whichever is more."""
    fields: Any = one.fields
    if fields.task_name not in ("order", "compare"):
        raise ValueError(fields.task_name)
    if not (fields.things or fields.amounts):
        return count_orders(one) if fields.task_name == "order" else 1
    amounts = [amount.number for amount in (fields.things or {}).values()] or [one.number for one in fields.amounts]
    rising = [way for way in permutations(amounts) if all(a <= b for a, b in pairwise(way))]
    return len({*rising}) if fields.task_name == "order" else len(amounts) - 1


def count_questions(one: Version) -> int:
    """Charts that are read: an answer to each question."""
    fields: Any = one.fields
    if fields.task_name != "read" or not fields.questions:
        raise ValueError(fields.task_name)
    return len(fields.questions)


def count_parts(one: Version) -> int:
    """Fractions: every shape measured, every pair of fractions compared, every amount tried for a part."""
    fields: Any = one.fields
    if fields.task_name == "shape":
        sizes = [(1,) * shape.parts if isinstance(shape.parts, int) else shape.parts for shape in fields.shapes]
        shaded = [Fraction(sum(of[: shape.shaded]), sum(of)) for of, shape in zip(sizes, fields.shapes, strict=True)]
        return sum(part == fields.fraction.value for part in shaded) if fields.fraction else len(shaded)
    if fields.task_name == "equal" and not fields.up_to:
        return sum(a.value == b.value for a, b in combinations(fields.numbers, 2))
    if fields.task_name == "part" and fields.of:
        under = fields.fraction.value.denominator
        return sum(Fraction(part, under) == fields.of * fields.fraction.value for part in range(1001 * under))
    raise ValueError(fields.task_name)


SECOND_WAYS: dict[str, Callable[[Version], int]] = {
    "number-sentence": count_filled,
    "compare": count_compared,
    "balance": count_level,
    "bonds": count_bonds,
    "money": count_chosen,
    "share": count_shared,
    "order": count_orders,
    "sequence": count_rows,
    "clock": count_on_dials,
    "measure": count_measured,
    "chart": count_questions,
    "fraction": count_parts,
}


BY_ITS_KIND = "by its kind once more"


def counted_again(one: Version, worked: WorkedOut) -> tuple[int, str]:
    """How many answers there are, and how that was found."""
    assert worked.kind is not None
    try:
        return SECOND_WAYS[worked.kind.name](one), "tried one by one"
    except (KeyError, AttributeError, TypeError, ValueError):
        return len(worked.kind.solve(one.fields, one.context).answers), BY_ITS_KIND


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
    wrong, spent, found, once_more = [], 0.0, [], 0
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
                once_more += how == BY_ITS_KIND
                if count != promised or not is_in_order(facts_of(own), facts_of(one)) or not keeps_pins(one, worked):
                    wrong.append(f"{path} {worked.fields.title}: {count} and not {promised}")
            found.append(len(sets))
            print(f"{path:50} {worked.fields.title[:34]:35} {len(sets)} × {promised} answers {how}")
    print(f"{once_more} of them are counted by their kind once more.")
    print(f"{sum(found)} sets for {sum(map(bool, found))} of {len(found)} activities, {spent:.1f} s of processor time.")
    print(
        "\n".join(wrong)
        or "Each has as many answers as the author's, in the same order of the cast, with the pins kept."
    )
    sys.exit(bool(wrong))


if __name__ == "__main__":
    main()
