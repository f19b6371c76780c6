"""Every page the build makes itself: the one list of them, each with what it is about. Drawing goes by what that is."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from .address import (
    LISTS,
    concept_page,
    coverage_page,
    framework_page,
    governors_page,
    guide_page,
    objective_page,
    screen_page,
    theme_page,
    year_page,
)
from .concept import Concept, Theme
from .document import Document
from .objective import Framework, Objective
from .page_schemas import SCHEMAS
from .reference import Reference
from .series import Series
from .session import Session
from .year import YearLimits


@dataclass(frozen=True, slots=True)
class SinglePage:
    """A page there is one of, by its name in ``LISTS``."""

    name: str


@dataclass(frozen=True, slots=True)
class ClassScreen:
    """The class screen of a session."""

    session: Document[Session]


@dataclass(frozen=True, slots=True)
class ForGovernors:
    """What a series teaches, for governors."""

    series: Document[Series]


@dataclass(frozen=True, slots=True)
class YearCovered:
    """What the collection covers of a year."""

    limits: YearLimits


@dataclass(frozen=True, slots=True)
class CodedObjective:
    """An objective and the framework it has its code from."""

    framework: Framework
    objective: Objective


@dataclass(frozen=True, slots=True)
class GuideToKind:
    """Every field of a kind of page that authors write."""

    kind: str


FOR_AUTHORS = frozenset(
    {LISTS["guide"], LISTS["guide-names"], LISTS["guide-problems"], *(guide_page(kind) for kind in SCHEMAS)}
)
"""The authors' guide, by its sources: its author has it, and readers where ``site.yaml`` says so."""

Subject = (
    SinglePage
    | GuideToKind
    | ClassScreen
    | ForGovernors
    | YearCovered
    | CodedObjective
    | Concept
    | Theme
    | YearLimits
    | Framework
)


@dataclass(frozen=True, slots=True)
class GeneratedPage:
    """A page the build makes: its source, and what it is about."""

    source: str
    about: Subject


def generated_pages(
    reference: Reference, sessions: Iterable[Document[Session]], series: Iterable[Document[Series]]
) -> Iterator[GeneratedPage]:
    """Every page the build makes."""
    for name, source in LISTS.items():
        yield GeneratedPage(source, SinglePage(name))
    for kind in SCHEMAS:
        yield GeneratedPage(guide_page(kind), GuideToKind(kind))
    for page in series:
        yield GeneratedPage(governors_page(page.source), ForGovernors(page))
    for session in sessions:
        yield GeneratedPage(screen_page(session.source), ClassScreen(session))
    for concept in reference.concepts.values():
        yield GeneratedPage(concept_page(concept.id), concept)
    for theme in reference.themes.values():
        yield GeneratedPage(theme_page(theme.id), theme)
    for limits in reference.years.values():
        yield GeneratedPage(year_page(limits.year), limits)
        yield GeneratedPage(coverage_page(limits.year), YearCovered(limits))
    for framework in reference.frameworks.values():
        yield GeneratedPage(framework_page(framework.id), framework)
        for objective in framework.objectives:
            source = objective_page(framework.id, objective.code)
            yield GeneratedPage(source, CodedObjective(framework, objective))
