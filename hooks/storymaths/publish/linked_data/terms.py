"""Objectives, concepts, themes and years as defined terms, and the sets they are terms of."""

from __future__ import annotations

from ...model.address import LISTS, concept_page, framework_page, objective_page, theme_page, year_page
from ...model.concept import Concept, Theme
from ...model.fields import year_name
from ...model.objective import Framework, Objective, Part
from ...parse.body import words_of
from .node import At, Node


def _term(source: str, name: str, within: str, at: At) -> Node:
    return {"@type": "DefinedTerm", "@id": at(source), "name": words_of(name), "inDefinedTermSet": at(within)}


def objective_term(framework: Framework, objective: Objective, at: At) -> Node:
    """An objective: its code, and our words for it."""
    term = _term(objective_page(framework.id, objective.code), objective.says, framework_page(framework.id), at)
    return term | {"termCode": objective.code}


def part_term(framework: Framework, objective: Objective, part: Part, at: At) -> Node:
    """One part of an objective, which has our words and no code."""
    source = objective_page(framework.id, objective.code)
    term = _term(source, part.says, framework_page(framework.id), at)
    return term | {"@id": f"{term['@id']}#part-{part.id}"}


def concept_term(concept: Concept, at: At) -> Node:
    """An idea."""
    return _term(concept_page(concept.id), concept.name, LISTS["concepts"], at) | {"termCode": concept.id}


def theme_term(theme: Theme, at: At) -> Node:
    """What a story is about."""
    return _term(theme_page(theme.id), theme.name, LISTS["themes"], at) | {"termCode": theme.id}


def year_term(year: int, at: At) -> Node:
    """A school year."""
    return _term(year_page(year), year_name(year), LISTS["years"], at)


def told(term: Node, says: str) -> Node:
    """A term on its own page: with its address and what it means."""
    return term | {"url": term["@id"], "description": words_of(says)}


def term_set(source: str, name: str, says: str, at: At) -> Node:
    """A set of terms; each term names the set it is in, so that the set need not list them all again."""
    url = at(source)
    return {
        "@type": "DefinedTermSet",
        "@id": url,
        "url": url,
        "name": name,
        "description": says,
    }


def framework_set(framework: Framework, at: At) -> Node:
    """A framework as a set of terms: whose document it was made from, and when it last changed here."""
    documents = "; ".join(f"{source.title}, {source.publisher}, {source.date}" for source in framework.sources)
    says = f"Codes from: {documents}. The words beside the codes are ours."
    node = term_set(framework_page(framework.id), framework.name, says, at)
    return node | {"dateModified": framework.revised.isoformat()}
