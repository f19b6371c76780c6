"""What words claim: false claims are found with what is so, true ones and all that is doubtful are left alone."""

from __future__ import annotations

from pathlib import Path

import pytest
from project import collection, reference
from storymaths.claims.find import FalseClaim, find_false_claims
from storymaths.claims.table import CLASSES
from storymaths.model.document import Document
from storymaths.parse.document import parse_document
from yaml_files import read_yaml

BY_CLASS = read_yaml(Path(__file__).parent / "sentences.yaml")
UNTRUE = [(name, text, so) for name, told in BY_CLASS.items() for text, so in told["untrue"].items()]
LEFT = [(name, text) for name, told in BY_CLASS.items() for text in told["left"]]
ORDINARY = (Path(__file__).parent / "left_alone.txt").read_text(encoding="utf-8").splitlines()
"""True sentences as teachers put them, of every class."""


def claims_in(words: str) -> list[FalseClaim]:
    page = parse_document(
        "content/page.md", f"---\nkind: page\ntitle: Words\nsummary: Some.\n---\n\nHere it is. {words}\n"
    )
    assert isinstance(page, Document)
    return list(find_false_claims(page.prose, reference().facts))


@pytest.mark.parametrize(("name", "text", "so"), UNTRUE)
def test_what_does_not_hold_is_found(name: str, text: str, so: str) -> None:
    (claim,) = claims_in(text)
    assert claim.of == name
    assert so in claim.so


@pytest.mark.parametrize(("name", "text"), LEFT)
def test_what_holds_or_is_doubtful_is_left(name: str, text: str) -> None:
    assert claims_in(text) == []


@pytest.mark.parametrize("text", ORDINARY)
def test_ordinary_true_sentences_are_left(text: str) -> None:
    assert claims_in(text) == []


def test_every_class_is_tried() -> None:
    assert [each.name for each in CLASSES] == list(BY_CLASS)


def test_a_sentence_may_run_over_the_end_of_a_line() -> None:
    (claim,) = claims_in("It is clear that 9\nis less\nthan 6.")
    assert claim.words == "9 is less than 6"


def test_no_false_alarm_in_the_collection() -> None:
    facts = reference().facts
    assert [claim for page in collection().documents for claim in find_false_claims(page.prose, facts)] == []
