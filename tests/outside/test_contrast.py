"""Every pair of colours the site uses, by the contrast formula of WCAG 2.2, by day, by night and on paper.

The formula is that of WCAG 2.2, definitions of "contrast ratio" and "relative luminance" (W3C, 2023), written out
here again and held against figures others have published. No rounding: 4.499 is not 4.5 (W3C working group,
27 October 2016, reported at davidmacd.com/test/check-color.html).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from itertools import product
from typing import get_args

import pytest
from project import ROOT
from storymaths.model.site_settings import Colours

LOOK = ROOT / "hooks/theme/look"
VALUES = (LOOK / "values.css").read_text(encoding="utf-8")
OTHERS = sorted(path.stem for path in (LOOK / "colours").glob("*.css"))
"""Colours a collection may choose instead."""
TEXT, SHAPE = 4.5, 3.0
"""Least contrast of text (success criterion 1.4.3) and of what must be seen but not read (1.4.11)."""

YEARS = [f"year-{n}" for n in range(7)]
STRANDS = [
    f"strand-{name}"
    for name in ("number", "calculation", "fractions", "measures", "shape", "position", "statistics", "reasoning")
]
PAPERS = ["paper", "paper-raised", "paper-sunk"]
TINTS = ["warm-soft", "cool-soft", "gold-soft"]

PAIRS: list[tuple[str, str, float]] = [
    *((ink, on, TEXT) for ink, on in product(["ink", "ink-soft"], PAPERS + TINTS)),
    *((accent, on, TEXT) for accent, on in product(["warm", "cool"], ["paper", "paper-raised", "paper-sunk"])),
    *((mark, on, TEXT) for mark, on in product(YEARS + STRANDS, ["paper", "paper-raised"])),
    ("warm", "warm-soft", TEXT),  # minutes, and the numbers of steps
    ("warm", "cool-soft", TEXT),  # "new" on a word's card
    ("cool", "cool-soft", TEXT),  # folds and links on tinted ground
    ("cool", "gold-soft", TEXT),
    ("cool", "warm-soft", TEXT),
    ("on-accent", "cool", TEXT),
    ("on-accent", "warm", TEXT),
    ("paper", "ink", TEXT),  # the link that skips to the page
    ("ink", "figure-fill", TEXT),
    ("ink", "figure-soft", TEXT),
    ("figure-fill", "figure-soft", SHAPE),  # which parts are shaded
    ("warm", "figure-soft", SHAPE),
    ("window-ink", "window", SHAPE),
    *((line, on, SHAPE) for line, on in product(["control-edge", "outline", "focus"], PAPERS + TINTS)),
]
DECORATION = {"rule", "gold", "scene", "roof-warm", "roof-cool", "roof-plum"}
"""Never the only sign of anything: rules between rows, edges of cards, roofs, the paper of drawings."""


def named_colours(block: str) -> dict[str, str]:
    return dict(re.findall(r"--([a-z0-9-]+): (#[0-9a-f]{3,6});", block))


def modes(chosen: str = "") -> Mapping[str, Mapping[str, str]]:
    day, rest = VALUES.split("@media (prefers-color-scheme: dark)")
    night, paper = rest.split("@media print")
    light, dark, printed = named_colours(day), named_colours(night), named_colours(paper)
    if chosen:
        by_day, by_night = (LOOK / f"colours/{chosen}.css").read_text("utf-8").split("(prefers-color-scheme: dark)")
        light, dark = light | named_colours(by_day), dark | named_colours(by_night)
    return {"day": light, "night": light | dark, "print": light | printed}


def luminance(colour: str) -> float:
    digits = colour.removeprefix("#")
    whole = "".join(digit * 2 for digit in digits) if len(digits) == 3 else digits
    parts = [int(whole[i : i + 2], 16) / 255 for i in (0, 2, 4)]
    red, green, blue = (part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


@pytest.mark.parametrize(
    ("one", "other", "published"),
    [
        ("#000000", "#ffffff", 21.0),  # WCAG 2.2, "contrast ratio", note 1: ratios run from 1 to 21
        ("#ffffff", "#ffffff", 1.0),
        ("#777777", "#ffffff", 4.48),  # davidmacd.com/test/check-color.html: the case on which rounding was settled
        ("#767676", "#ffffff", 4.54),  # slimutils.com/blog/wcag-contrast-ratio-explained
    ],
)
def test_the_formula_gives_what_others_published(one: str, other: str, published: float) -> None:
    assert contrast(one, other) == pytest.approx(published, abs=0.005)
    assert contrast(one, other) == contrast(other, one)


@pytest.mark.parametrize("chosen", ["", *OTHERS])
@pytest.mark.parametrize("mode", ["day", "night", "print"])
def test_every_pair_has_contrast_enough(mode: str, chosen: str) -> None:
    colours = modes(chosen)[mode]
    pairs = PAIRS if mode != "print" else [pair for pair in PAIRS if {"on-accent", "focus"}.isdisjoint(pair[:2])]
    short = {
        f"{one} on {other}": round(ratio, 2)
        for one, other, least in pairs
        if (ratio := contrast(colours[one], colours[other])) < least
    }
    assert short == {}


def test_no_colour_is_left_out() -> None:
    named = set(modes()["day"])
    assert named - {name for pair in PAIRS for name in pair[:2]} == DECORATION
    assert (
        named_colours(VALUES.split("@media (prefers-color-scheme: dark)")[1].split("@media print")[0]).keys() == named
    )


def test_what_may_be_chosen_instead_is_named_and_whole() -> None:
    assert {"harbour", *OTHERS} == set(get_args(Colours))
    for name in OTHERS:
        by_day, by_night = (LOOK / f"colours/{name}.css").read_text("utf-8").split("(prefers-color-scheme: dark)")
        assert named_colours(by_day).keys() == named_colours(by_night).keys() <= set(modes()["day"]), name


def test_only_the_values_name_colours() -> None:
    for sheet in (ROOT / "hooks/theme/look").glob("*.css"):
        if sheet.name != "values.css":
            rules = re.sub(r"/\*.*?\*/", "", sheet.read_text(encoding="utf-8"), flags=re.DOTALL)
            assert not re.search(r"#[0-9a-fA-F]{3,8}\b(?=[^{}]*[;}])|\brgb\((?!0 0 0 / var)", rules), sheet.name
