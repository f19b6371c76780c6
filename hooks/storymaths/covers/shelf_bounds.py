"""What a cover must cost at least, and which choices are too dear to be part of a cheap one.

Prices are set on rows so that no choice costs less than its rows do: a feasible solution of the dual programme of set
covering. No cover can then cost less than all rows together, and one with a given choice in it costs more by what that
choice is dearer than its rows.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

ONE = 720720
"""One book, or one minute, in parts small enough to be shared out among rows: divided by 1 to 16 without a rest."""


def affordable(
    cost: Mapping[int, int], size: Mapping[int, int], coverers: Sequence[Sequence[int]], room: int
) -> tuple[int, list[int]] | None:
    """The least any cover costs, and the choices that can be part of one within ``room``; None when none is.

    ``cost`` and ``size`` give each choice's cost and how many rows it covers; ``coverers`` the choices of each row,
    those with the fewest first. Costs and room are in parts, ``ONE`` to a book or minute.
    """
    left, even = dict(cost), {n: whole // size[n] for n, whole in cost.items()}
    least = 0
    for choices in coverers:  # each choice shares its cost out evenly; a row takes the smallest share it is offered
        share = min([even[n] for n in choices])
        least += share
        for n in choices:
            left[n] -= share
    for choices in coverers:  # and then whatever is left over
        if least > room:
            return None
        more = min([left[n] for n in choices])
        if more:
            least += more
            for n in choices:
                left[n] -= more
    if least > room:
        return None
    return least, [n for n in left if least + left[n] <= room]
