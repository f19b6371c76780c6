"""The rules activities keep. Their problems are raised here, after the checks of the pages they stand on."""

from __future__ import annotations

from ..check.rules import rules
from ..model.rule import HOUSE_RULE, Rule

CANNOT_BE = Rule(
    name="activity-cannot-be",
    says="An activity can be worked out as it is written.",
    why="A puzzle that cannot be done is found out in front of thirty children.",
    source=HOUSE_RULE,
    wrong="kind: share … among: 0",
    right="kind: share … among: 4",
)
BROKEN = Rule(
    name="activity-broken",
    says="The data of an activity can be read, its kind is known, and its fields are those of its kind.",
    why="A misspelt field would be ignored in silence.",
    source=HOUSE_RULE,
    wrong="kind: balence",
    right="kind: balance",
)
FACT_MISSING = Rule(
    name="activity-fact-missing",
    says="The cast of an activity exists and has the fact it turns on.",
    why="A card without its number stops the game.",
    source=HOUSE_RULE,
    wrong="fact: masss",
    right="fact: mass",
)
CLAIM_WRONG = Rule(
    name="activity-claim-wrong",
    says="What an author says of the answers is what is found.",
    why="One missed answer is found by a child, in front of the class.",
    source=HOUSE_RULE,
    wrong="answers: 4 (there are 5)",
    right="answers: 5",
)
WAYS_MISCOUNTED = Rule(
    name="ways-miscounted",
    says="How many ways a section says there are is how many its activity finds, and how many it lists.",
    why="A class that was told five goes on looking for the fifth.",
    source=HOUSE_RULE,
    wrong="There are five ways. … (beside an activity that finds six)",
    right="There are six ways.",
)
NO_ANSWER = Rule(
    name="activity-no-answer",
    says="An activity has an answer, unless its author says answers: 0.",
    why="A puzzle without an answer is a trick, unless that is the point.",
    source=HOUSE_RULE,
    wrong="cast: {hen: {mass: 4}, goose: {mass: 9}} … two equal teams",
    right="answers: 0, when showing that there is none is the task",
)
TOO_MANY = Rule(
    name="activity-too-many-answers",
    says="An activity has no more answers than its limit, at_most.",
    why="A class cannot know it has found all of two hundred.",
    source=HOUSE_RULE,
    wrong="twelve characters, any two teams",
    right="six characters, or two a side",
)
TWICE = Rule(
    name="activity-twice",
    says="No two activities of a page are the same.",
    why="The second is a copy somebody forgot to change.",
    source=HOUSE_RULE,
    wrong="two blocks with the same data",
    right="one of them with other numbers",
)
BEYOND_YEAR = Rule(
    name="activity-beyond-year",
    says="The numbers, signs and units of an activity are within the reach of its year.",
    why="The task must be about its idea and not about numbers nobody has met.",
    source="Programmes of study, key stages 1 and 2 (DfE, 2013); site_data/years.yaml.",
    wrong="year 1: masses that add to 34",
    right="year 1: masses that add to no more than 20",
)
NO_VERSION = Rule(
    name="activity-no-version",
    says="An activity that names another year has a version that fits it.",
    why="The page promises it.",
    source=HOUSE_RULE,
    wrong="years: {1: {largest: 3}} for six characters who all differ",
    right="years: {1: {largest: 10}}",
)
RULES = (
    BROKEN,
    CANNOT_BE,
    FACT_MISSING,
    CLAIM_WRONG,
    WAYS_MISCOUNTED,
    NO_ANSWER,
    TOO_MANY,
    TWICE,
    BEYOND_YEAR,
    NO_VERSION,
)


def every_rule() -> dict[str, Rule]:
    """The rules of pages and of activities, by name."""
    return rules() | {rule.name: rule for rule in RULES}
