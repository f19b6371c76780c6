"""Claims about shapes, judged: can there be a shape with these counts?"""

from __future__ import annotations

from collections.abc import Sequence

from ...model.activity import Answer, Context, LikelyError, Solution, Task
from ..met import demands_met
from ..saying import capital, listed
from .claims import Claim, Verdict, judged
from .set import with_article


def claimed_solution(claims: Sequence[Claim], context: Context, ask: str | None) -> Solution:
    """A verdict on each claim, in the order given."""
    verdicts = [judged(claim, index, context.year.year) for index, claim in enumerate(claims)]
    answers = [
        Answer(
            _says(claim, verdict),
            verdict.why,
            {"claim": index, "can": verdict.can, "shapes": list(verdict.shapes)},
        )
        for index, (claim, verdict) in enumerate(zip(claims, verdicts, strict=True), 1)
    ]
    solid = any(claim.given().keys() & {"faces", "edges", "vertices"} for claim in claims)
    what = "a solid with flat faces" if solid else "a closed shape with straight sides"
    asked = f"Somebody says there is {what} like these. Can it be? If it can, name one or make one. If not, say why."
    task = Task(ask or asked, context.characters[:1], lines=tuple(f"{capital(claim.said())}." for claim in claims))
    note = (
        "Shapes with straight sides; they may have dents."
        if not solid
        else (
            "Solids with flat faces, without dents or holes: faces and vertices together are always 2 more than the edges."
        )
    )
    tables = {int(number) for verdict in verdicts for number in ("2", "3") if f"{number} × " in verdict.why}
    demands = demands_met(task, answers, ("face", "edge", "vertex", "symmetry", "right angle"), tables)
    cannot = next((claim for claim, verdict in zip(claims, verdicts, strict=True) if not verdict.can), None)
    likely_error = (
        LikelyError("Takes one number alone, which some shape has.", f"“It can”, for {cannot.said()}.")
        if cannot
        else None
    )
    return Solution(task, tuple(answers), demands, max(len(claim.given()) for claim in claims), note, likely_error)


def _says(claim: Claim, verdict: Verdict) -> str:
    if not verdict.can:
        return f"{capital(claim.said())}: it cannot be."
    named = f", as {listed([with_article(name) for name in verdict.shapes])}" if verdict.shapes else ""
    return f"{capital(claim.said())}: it can be{named}."
