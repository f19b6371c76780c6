"""Clocks, held against the calendar's own arithmetic."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime, time, timedelta

import pytest
import yaml
from activities.contexts import the_reference
from activities.trials import answers_of, first_version, fits, never_breaks, read, refused, solved, spoilt
from hypothesis import given, settings
from hypothesis import strategies as st
from pydantic import TypeAdapter
from storymaths.activities.clock import KIND
from storymaths.activities.clock.time import Length, Time, digits, in_words, long
from storymaths.activities.kind import ActivityFields, Unsolvable
from storymaths.model.activity import Answer, Context
from storymaths.model.year import Met

DAY = date(2001, 1, 1)
MINUTES = st.integers(0, 1439)
LENGTHS = st.integers(1, 700)


def at(minutes: int) -> datetime:
    return datetime.combine(DAY, time()) + timedelta(minutes=minutes)


def hhmm(moment: datetime) -> str:
    return moment.strftime("%H:%M")


def test_the_example_is_a_year_2_lesson() -> None:
    solution = solved(KIND, KIND.example)
    assert [answer.data["minutes"] for answer in solution.answers] == [35, 40, 45, 30]
    assert fits(solution, 2)


def test_every_minute_of_the_day_is_told_and_read_back() -> None:
    reader = TypeAdapter(Time)
    for minutes in range(1440):
        moment = at(minutes)
        assert digits(minutes) == hhmm(moment)
        assert reader.validate_python(hhmm(moment)) == minutes
        half = moment.strftime("%I:%M %p").lstrip("0").lower()
        if minutes % 720:
            assert digits(minutes, "12") == half
        assert reader.validate_python(half) == minutes
        assert reader.validate_python(in_words(minutes)) % 720 == minutes % 720
        if minutes >= 60:
            assert reader.validate_python(yaml.safe_load(hhmm(moment).lstrip("0"))) == minutes
    assert digits(720, "12") == "12 noon"
    assert digits(0, "12") == "12 midnight"


def test_every_length_is_told_and_read_back() -> None:
    reader = TypeAdapter(Length)
    for minutes in range(1, 1441):
        assert reader.validate_python(long(minutes)) == minutes
        assert reader.validate_python(minutes) == minutes


@given(MINUTES, MINUTES, st.integers(3, 6), st.sampled_from(["12", "24", None]))
@settings(max_examples=150, deadline=None)
def test_a_duration_is_the_difference_of_two_moments(start: int, end: int, year: int, clock: str | None) -> None:
    data = {"find": "duration", "spans": [[digits(start), digits(end)]]} | ({"clock": clock} if clock else {})
    if start == end:
        refused(KIND, data, year, rule="activity-cannot-be")
        return
    passed = at(end) - at(start) if end > start else at(end) + timedelta(days=1) - at(start)
    assert answers_of(KIND, data, year) == [
        {"from": hhmm(at(start)), "to": hhmm(at(end)), "minutes": passed.total_seconds() // 60}
    ]


@given(MINUTES, st.lists(st.integers(1, 400), min_size=1, max_size=3))
@settings(max_examples=100, deadline=None)
def test_ends_and_starts_are_moments_moved_by_lengths(known: int, lasts: list[int]) -> None:
    moved = timedelta(minutes=sum(lasts))
    [end] = answers_of(KIND, {"find": "end", "starts": digits(known), "lasts": lasts}, 4)
    assert end == {"ends": hhmm(at(known) + moved), "minutes": sum(lasts)}
    [start] = answers_of(KIND, {"find": "start", "ends": end["ends"], "lasts": lasts}, 4)
    assert start["began"] == hhmm(at(known))


@given(MINUTES, MINUTES, LENGTHS)
@settings(max_examples=60, deadline=None)
def test_what_comes_round_again_is_found_by_waiting(start: int, until: int, every: int) -> None:
    data = {"find": "repeats", "starts": digits(start), "until": digits(until), "every": every}
    if until < start:
        refused(KIND, data, 3, rule="activity-cannot-be")
        return
    moments, now = [], at(start)
    while now <= at(until):
        moments.append(hhmm(now))
        now += timedelta(minutes=every)
    if len(moments) > 500:
        refused(KIND, data, 3, rule="activity-too-many-answers")
    else:
        assert [answer["time"] for answer in answers_of(KIND, data, 3)] == moments


@given(st.dictionaries(st.sampled_from("gull crab seal puffin whelk limpet".split()), MINUTES, min_size=2))
@settings(max_examples=60, deadline=None)
def test_the_order_of_a_day_is_that_of_the_moments(wakes: dict[str, int]) -> None:
    cast = {name: {"wakes": digits(minutes)} for name, minutes in wakes.items()}
    [answer] = answers_of(KIND, {"find": "order", "fact": "wakes", "cast": cast}, 3)
    assert answer["order"] == sorted(wakes, key=lambda name: at(wakes[name]).time())
    assert sorted(map(len, answer["together"])) == sorted(
        count for minutes in set(wakes.values()) if (count := list(wakes.values()).count(minutes)) > 1
    )


def a_trip(times: list[int], stopping: tuple[bool, bool, bool]) -> list[int | None]:
    """Rising times at three stops, without those it passes by."""
    return [minutes if stops else None for minutes, stops in zip(sorted(times), stopping, strict=True)]


TRIP = st.builds(
    a_trip,
    st.lists(MINUTES, min_size=3, max_size=3, unique=True),
    st.tuples(st.booleans(), st.booleans(), st.booleans()),
)


@given(
    st.lists(TRIP, min_size=1, max_size=5),
    st.none() | MINUTES,
    st.none() | MINUTES,
    st.sampled_from([None, "first", "last", "shortest", "longest"]),
    st.sampled_from([("Quay", "Cove"), ("Quay", "Rock"), ("Rock", "Cove")]),
)
@settings(max_examples=100, deadline=None)
def test_a_timetable_offers_what_reading_every_trip_finds(
    trips: list[list[int | None]], after: int | None, by: int | None, pick: str | None, way: tuple[str, str]
) -> None:
    stops = ["Quay", "Rock", "Cove"]
    data = {"find": "timetable", "stops": stops, "board": way[0], "alight": way[1]}
    data["trips"] = [[None if t is None else digits(t) for t in trip] for trip in trips]
    data |= {"after": digits(after)} if after is not None else {}
    data |= {"by": digits(by)} if by is not None else {}
    data |= {"pick": pick} if pick else {}
    expected = []
    for number, trip in enumerate(trips, 1):
        leaves, arrives = trip[stops.index(way[0])], trip[stops.index(way[1])]
        late = arrives is None or (by is not None and at(arrives) > at(by))
        if leaves is not None and arrives is not None and not late and (after is None or at(leaves) >= at(after)):
            expected.append((leaves, arrives - leaves, number))
    keys = {"first": lambda t: t[0], "last": lambda t: -t[0], "shortest": lambda t: t[1], "longest": lambda t: -t[1]}
    if pick and expected:
        best = min(map(keys[pick], expected))
        expected = [trip for trip in expected if keys[pick](trip) == best]
    found = [(answer["leaves"], answer["minutes"], answer["trip"]) for answer in answers_of(KIND, data, 5)]
    assert found == [
        (hhmm(at(leaves)), minutes, number) for leaves, minutes, number in sorted(expected, key=lambda t: (t[0], t[2]))
    ]


@given(MINUTES)
@settings(max_examples=60, deadline=None)
def test_the_two_clocks_agree(minutes: int) -> None:
    to_24 = answers_of(KIND, {"find": "convert", "times": [digits(minutes)], "clock": "24"}, 4)
    to_12 = answers_of(KIND, {"find": "convert", "times": [digits(minutes)], "clock": "12"}, 4)
    assert to_24[0]["told"] == hhmm(at(minutes))
    assert (
        TypeAdapter(Time).validate_python(
            to_12[0]["told"].removeprefix("12 ") if minutes % 720 == 0 else to_12[0]["told"]
        )
        == minutes
    )
    [face] = answers_of(KIND, {"find": "set", "times": [digits(minutes)]}, 4)
    twelfth = at(minutes).hour % 12 or 12
    assert face["minute_hand"] == at(minutes).minute
    assert face["hour_hand"][0] == twelfth
    [shown] = answers_of(KIND, {"find": "read", "times": [digits(minutes)]}, 4)
    assert shown["time"] == hhmm(at(minutes))


@pytest.mark.parametrize(
    ("data", "year", "rule"),
    [
        ({"find": "read"}, 2, "activity-broken"),
        ({"find": "read", "times": ["7:30"], "lasts": [5]}, 2, "activity-broken"),
        ({"find": "read", "times": ["7:35"]}, 1, "activity-beyond-year"),
        ({"find": "read", "times": ["7:36"]}, 2, "activity-beyond-year"),
        ({"find": "read", "times": ["19:30"], "clock": "24"}, 2, "activity-beyond-year"),
        ({"find": "convert", "times": ["19:30"]}, 2, "activity-beyond-year"),
        ({"find": "read", "times": ["7:30"], "roman": True}, 2, "activity-beyond-year"),
        ({"find": "duration", "spans": [["7:00", "8:00"]], "pick": "first"}, 3, "activity-broken"),
        ({"find": "duration", "to_fact": "home", "cast": {"gull": {"home": "7:30"}}}, 2, "activity-cannot-be"),
        ({"find": "read", "fact": "wakes", "cast": {"gull": {}}}, 2, "activity-fact-missing"),
        ({"find": "read", "fact": "wakes", "cast": {"gull": {"wakes": "dawn"}}}, 2, "activity-cannot-be"),
        ({"find": "end", "starts": "7:00", "lasts": ["23 hours", "1 hour"]}, 3, "activity-cannot-be"),
        ({"find": "repeats", "starts": "7:00", "every": 5, "until": "6:00"}, 3, "activity-cannot-be"),
        ({"find": "order", "events": {"tea": "7:00"}}, 2, "activity-cannot-be"),
        ({"find": "timetable", "stops": ["Quay"], "trips": [["7:00", "8:00"]]}, 3, "activity-cannot-be"),
        ({"find": "timetable", "stops": ["Quay", "Rock"], "trips": [["8:00", "7:00"]]}, 3, "activity-cannot-be"),
        ({"find": "timetable", "stops": ["Quay", "Rock"], "trips": [["7:00", "8:00", "9:00"]]}, 3, "activity-cannot-be"),
        ({"find": "timetable", "stops": ["Quay", "Rock"], "trips": [["7:00", "8:00"]], "board": "Rock"}, 3, "activity-cannot-be"),
        ({"find": "timetable", "stops": ["Quay", "Rock"], "trips": [["7:00", "8:00"]], "board": "Bay"}, 3, "activity-cannot-be"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_refused_in_plain_words(data: dict[str, object], year: int, rule: str) -> None:
    refused(KIND, data, year, rule=rule)


@pytest.mark.parametrize(
    "text", ["25:00", "7:60", "13 pm", "half to 7", "70 past 3", "7", "noonish", 5, 1440, 7.5, "x" * 50]
)
def test_what_is_no_time_is_refused(text: object) -> None:
    assert "half past 7" in refused(KIND, {"find": "read", "times": [text]}, 3)


GOOD = [
    {"find": "read", "times": ["7:30", "quarter to 4"]},
    {"find": "set", "times": ["half past 3", "25 to 9"]},
    {"find": "duration", "spans": [["8:45", "10:20"]], "pick": "longest"},
    {"find": "end", "starts": "8:45", "lasts": ["20 minutes", 70]},
    {"find": "start", "ends": "10:20", "lasts": [35]},
    {"find": "repeats", "starts": "6:10", "every": 25, "until": "8:00"},
    {"find": "order", "events": {"breakfast": "7:30", "tea": "17:00", "school": "9:00"}},
]
TRIPS = {"find": "timetable", "stops": ["Quay", "Rock"], "trips": [["9:00", "9:25"], ["9:40", None]], "by": "10:00"}
TO_24 = {"find": "convert", "times": ["7:35 pm", "9:05"], "clock": "24"}


@pytest.mark.parametrize("data", [*GOOD, TRIPS, TO_24], ids=lambda data: data["find"])
def test_bad_input_never_breaks_it(data: dict[str, object]) -> None:
    for bad in spoilt(data, list(data)):
        never_breaks(KIND, bad, 4)


@pytest.mark.parametrize("data", [yaml.safe_load(KIND.example), *GOOD], ids=lambda data: data["find"])
@pytest.mark.parametrize("year", [1, 2, 3, 4, 5, 6])
def test_year_versions_fit_and_keep_the_order(data: dict[str, object], year: int) -> None:
    version = first_version(KIND, data, year)
    assert version is not None
    fields, context, why, _ = version
    before, was = read(KIND, data)
    assert why

    def times(of: ActivityFields, there: Context) -> list[int]:
        reader = TypeAdapter(Time)
        stated = of.model_dump(include={"times", "spans", "events"})
        listed = [*stated.get("times", ()), *(time for span in stated.get("spans", ()) for time in span)]
        named = [fact for fact in (of.fact, of.model_dump().get("to_fact")) if fact]
        facts = [reader.validate_python(p.facts[fact]) for p in there.characters for fact in named]
        return [*listed, *(stated.get("events") or {}).values(), *facts]

    old, new = times(before, was), times(fields, context)
    assert [a < b for a in old for b in old] == [a < b for a in new for b in new]
    assert all(minutes % the_reference().years[year].clock_minutes == 0 for minutes in new)


@pytest.mark.parametrize("data", [TRIPS, TO_24], ids=lambda data: data["find"])
@pytest.mark.parametrize("year", [3, 4, 5, 6])
def test_digital_times_come_from_year_3(data: dict[str, object], year: int) -> None:
    assert first_version(KIND, data, year, 4) is not None


@given(st.dictionaries(st.sampled_from("gull crab seal puffin otter".split()), st.integers(300, 1439), min_size=2))
@settings(max_examples=100, deadline=None)
def test_in_reception_a_day_is_ordered_by_its_parts(wakes: dict[str, int]) -> None:
    """Clocks are first read in Year 1 (programme of study, 2013): before that a day has a morning and an evening."""

    def part(minutes: int) -> int:
        if minutes == 720:
            return 1
        return 0 if minutes < 720 else 2 if minutes < 1080 else 3 if minutes < 1260 else 4

    data = {"find": "order", "fact": "wakes", "cast": {name: {"wakes": hhmm(at(m))} for name, m in wakes.items()}}
    if len({part(minutes) for minutes in wakes.values()}) == 1:
        refused(KIND, data, 0, "activity-beyond-year")
        return
    solution = solved(KIND, data, 0)
    [answer] = solution.answers
    assert answer.data["order"] == sorted(wakes, key=lambda name: part(wakes[name]))
    assert [set(group) for group in answer.data["together"]] == [
        same for p in range(5) if len(same := {name for name in wakes if part(wakes[name]) == p}) > 1
    ]
    assert not solution.demands.units
    assert "o'clock" not in solution.task.ask + "".join(map(str, solution.task.shows))


def test_a_reception_day_in_words() -> None:
    events = {"supper": "17:30", "stars out": "21:30", "breakfast": "7:35", "bath": "18:00", "lunch bell": "12:00"}
    solution = solved(KIND, {"find": "order", "events": events}, 0)
    assert solution.task.ask == "Put these in the order of the day, from morning to night."
    assert str(solution.task.lines[0]) == "supper: in the afternoon"
    assert solution.answers[0].says == "Breakfast, then lunch bell, then supper, then bath, then stars out"
    assert solution.answers[0].worked == (
        "In the morning (breakfast), then in the middle of the day (lunch bell), then in the afternoon (supper), "
        "then in the evening (bath), then at night (stars out)."
    )
    assert solution.steps == 4
    refused(KIND, {"find": "order", "events": {**events, "boats home": "4:59"}}, 0, "activity-beyond-year")
    version = first_version(KIND, {"find": "order", "events": events}, 0)
    assert version is not None
    assert version[3].answers == solution.answers


def test_hours_that_mislead_are_told_with_their_half_of_the_day() -> None:
    solution = solved(KIND, {"find": "order", "events": {"lunch": "18:44", "walk": "12:37"}}, 3)
    assert list(map(str, solution.task.lines)) == ["lunch: 6:44 pm", "walk: 12:37 pm"]
    assert solution.answers[0].says == "Walk, then lunch"
    plain = solved(KIND, {"find": "order", "events": {"lunch": "18:44", "walk": "13:37"}}, 3)
    assert list(map(str, plain.task.lines)) == ["lunch: 6:44", "walk: 1:37"]


@given(st.lists(MINUTES, min_size=1, max_size=4))
@settings(max_examples=60, deadline=None)
def test_a_clock_demands_what_its_times_are_read_to(times: list[int]) -> None:
    demands = solved(KIND, {"find": "read", "times": list(map(digits, times))}, 4).demands
    finest = demands.clock
    assert finest is not None
    assert all(minutes % finest == 0 for minutes in times)
    assert fits(solved(KIND, {"find": "read", "times": list(map(digits, times))}, 4), 4)


def test_a_country_of_quarter_hours_needs_other_data_alone() -> None:
    """A made-up Year 1 that reads quarters of an hour in digits, on 24 hours, and multiplies by five."""
    first = the_reference().years[1]
    clock = first.practice.clock.model_copy(update={"tells": "digits", "clocks": (12, 24), "roman": True})
    met = Met(signs=frozenset("+−×="), units=first.met.units)
    practice = first.practice.model_copy(update={"clock": clock})
    year = first.model_copy(update={"clock_minutes": 15, "tables": (5,)}).with_what_came_before(met, practice)
    fields, context = read(KIND, {"find": "read", "times": ["15:45"], "clock": "24", "roman": True}, 1)
    [answer] = KIND.solve(fields, replace(context, year=year)).answers
    assert answer.says == "Clock A shows quarter to 4, 15:45"
    assert answer.worked == "The hour hand is nearly at 4 and the minute hand is at 9. 9 × 5 = 45."
    late, _ = read(KIND, {"find": "read", "times": ["15:40"]}, 1)
    with pytest.raises(Unsolvable, match="to 15 minutes"):
        KIND.solve(late, replace(context, year=year))
    older, there = read(KIND, {"find": "read", "times": ["15:47"], "clock": "24", "roman": True}, 4)
    versions = list(KIND.versions(older, there, year))
    assert versions[0][0].model_dump(include={"clock", "roman"}) == {"clock": "24", "roman": True}
    assert versions[1][0].model_dump(include={"times"}) == {"times": (945,)}


def test_a_key_says_nothing_twice() -> None:
    hands = Answer("12:00: the hour hand is at 12", "The hour hand is at 12.", None)
    assert (hands.why, Answer("9 ≠ 6", "9 ≠ 6.", None).why) == ("", "")
    assert Answer("1 hour", "From 2 it is 1 hour to 3.", None).why
