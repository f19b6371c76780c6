"""The rules activities keep. Their problems are raised here, after the checks of the pages they stand on."""

from __future__ import annotations

from ..check.rules import rules
from ..model.rule import COMMON_PRACTICE, HOUSE_RULE, Rule

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
    source="Programmes of study, key stages 1 and 2 (DfE, 2013); the page of each year.",
    wrong="year 1: masses that add to 34",
    right="year 1: masses that add to no more than 20",
)
NO_VERSION = Rule(
    name="activity-no-version",
    says="Where numbers are to be found for another year, there are some that fit the year and what the bend says.",
    why="The page promises it, and a version that does not fit is worse than none.",
    source=HOUSE_RULE,
    wrong="bends: {1: {up_to: 3, activities: {lightest: find}}} for six characters who all differ",
    right="bends: {1: {activities: {lightest: {cast: [penguin, hedgehog, snail]}}}}",
)
BEND_UNCLEAR = Rule(
    name="bend-activity-unknown",
    says="A bend names activities of its own page, each once, and characters of its book.",
    why="A name that means nothing would leave a year without its activity, and nobody would be told.",
    source=HOUSE_RULE,
    wrong="activities: {lightst: same}",
    right="activities: {lightest: same}",
)
NAME_TWICE = Rule(
    name="activity-name-twice",
    says="No two activities of a page have the same id, and none has another's title.",
    why="A bend that names one could mean the other.",
    source=HOUSE_RULE,
    wrong="two blocks with id: lightest",
    right="id: lightest … id: heaviest",
)
OUT_OF_PLACE = Rule(
    name="version-out-of-place",
    says="What an activity of a session or home page is for another year stands in the page's bend to that year.",
    why="Beside the bend's own words it is seen whether it keeps them; apart from them it soon does not.",
    source=HOUSE_RULE,
    wrong="years: {1: {whole: 5}} in the activity",
    right="bends: {1: {activities: {two-friends: {whole: 5}}}}",
)
PROMISE_BROKEN = Rule(
    name="bend-promise-broken",
    says="A version keeps what its bend says: how large, which signs, units and times, who takes part.",
    why="A sheet that contradicts the page it belongs to is found out in front of the class.",
    source=HOUSE_RULE,
    wrong="clock: o'clock … activities: {short-hand: {times: [8:00, 8:30]}}",
    right="clock: o'clock … activities: {short-hand: {times: [8:00, 11:00]}}",
)
SAME_NUMBERS = Rule(
    name="version-same-numbers",
    says="An activity that serves another year as it is, is named same; what is pinned is other than the class has.",
    why="A second copy of one task is paper, and a teacher looks for what differs.",
    source=HOUSE_RULE,
    wrong="activities: {two-level: {teams: 2}} where the class has teams: 2",
    right="activities: {two-level: same}",
)
EXIT_SHOWN = Rule(
    name="exit-answer-shown",
    says="The question that a session ends on has other numbers than the sums of its activities.",
    why="A child who turns the sheet over and copies tells nobody what was learnt.",
    source=COMMON_PRACTICE,
    wrong="an activity with 4 + 2 = ___ … exit_question: {answer: 4 + 2 = 6}",
    right="exit_question: {answer: 8 + 2 = 10}",
    since="0.2.0",
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
    BEND_UNCLEAR,
    NAME_TWICE,
    OUT_OF_PLACE,
    PROMISE_BROKEN,
    SAME_NUMBERS,
    EXIT_SHOWN,
)


def every_rule() -> dict[str, Rule]:
    """The rules of pages and of activities, by name."""
    return rules() | {rule.name: rule for rule in RULES}
