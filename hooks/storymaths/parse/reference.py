"""``site_data/`` into the model, as strictly as content: unknown and repeated keys are refused.

The program carries its lists; a collection's own add to them and correct them.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from ..model.asked import Asked
from ..model.concept import Area, Concept, Strand, Theme, Word
from ..model.document import Fault
from ..model.drawing_list import DrawingList
from ..model.fields import FileName, Strict, Text, year_name
from ..model.holiday import BankHolidays
from ..model.imprint import Imprint, Iri
from ..model.known_facts import KnownFacts
from ..model.locator import Locator
from ..model.material import Caution, Material
from ..model.money import Currency
from ..model.moved import Moved
from ..model.objective import Framework
from ..model.old_plans import OldPlanWords
from ..model.phrases import Phrases
from ..model.practice import Practice
from ..model.practice.rows import PracticeFile, PracticeRow
from ..model.practised_by import PractisedBy
from ..model.program_version import FIRST_VERSION, ProgramVersion
from ..model.proposing import Proposing
from ..model.prose_words import ProseWords
from ..model.reference import Limits, Reference
from ..model.site_settings import Colours, FrontWords, Language, Letterforms, SiteSettings
from ..model.task_years import TaskYears
from ..model.year import Met, YearLimits
from .drawing import LIST as DRAWINGS
from .reference_files import ReferenceFiles
from .reference_links import faults_in_links
from .reference_sums import faults_in_sums


class ReferenceBroken(Exception):
    """``site_data/`` cannot be used: every fault found in it, with its place."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        super().__init__("\n".join(f"{fault.place}  {fault.field} {fault.detail}" for fault in self.faults))


class YearsFile(Strict):
    """``years.yaml``."""

    years: tuple[YearLimits, ...]


class ConceptsFile(Strict):
    """``concepts.yaml``."""

    strands: tuple[Strand, ...]
    concepts: tuple[Concept, ...]


class ThemesFile(Strict):
    """``themes.yaml``."""

    themes: tuple[Theme, ...]


class AreasFile(Strict):
    """``areas.yaml``."""

    areas: tuple[Area, ...]


class WordsFile(Strict):
    """``words.yaml``."""

    words: tuple[Word, ...]


class MaterialsFile(Strict):
    """``materials.yaml``."""

    materials: tuple[Material, ...]


class CautionsFile(Strict):
    """``cautions.yaml``."""

    cautions: tuple[Caution, ...]


class SiteFile(Imprint):
    """``site.yaml``: who speaks, and how the site looks and begins."""

    name: Text
    description: Text
    address: Iri | None = None
    print_sheets: bool = True
    spelling: Language = "en-GB"
    colours: Colours = "harbour"
    mark: FileName | None = None
    letterforms: Letterforms = Letterforms()
    home: FrontWords = FrontWords()
    authors_guide: bool = False
    checked_with: ProgramVersion = FIRST_VERSION

    def settings(self) -> SiteSettings:
        """What it says, with the closing slash that addresses are made with."""
        url = f"{self.address.rstrip('/')}/" if self.address else ""
        return SiteSettings(
            self.name, self.description, url, self.print_sheets,
            self.spelling, self.colours, self.mark, self.letterforms, self.home, self.authors_guide,
            self.checked_with,
        )  # fmt: skip


class MovedFile(Strict):
    """``moved.yaml``."""

    moved: tuple[Moved, ...]


def _frameworks(files: ReferenceFiles) -> dict[str, Framework]:
    """Every framework in ``curricula/``, by id."""
    read = (files.read(name, Framework) for name in files.names("curricula"))
    return {framework.id: framework for framework in read if framework is not None}


def _practice(files: ReferenceFiles) -> dict[str, dict[int, PracticeRow]]:
    """What each kind practises, by the name of its file and by year."""
    found: dict[str, dict[int, PracticeRow]] = {}
    for name, part in Practice.model_fields.items():
        schema = part.annotation
        assert isinstance(schema, type)
        # Which row a file holds is known when it is read, not when types are checked.
        file: type[PracticeFile[PracticeRow]] = PracticeFile[schema]  # type: ignore[valid-type]
        read = files.read(f"practice/{name}.yaml", file)
        if read is not None:
            found[name] = {row.year: row for row in read.years}
    return found


def _years_without_practice(
    years: Iterable[YearLimits],
    practice: Mapping[str, Mapping[int, PracticeRow]],
    locators: Mapping[str, Locator],
) -> Iterator[Fault]:
    for name, by_year in practice.items():
        for year in years:
            if year.year not in by_year:
                place = locators[f"practice/{name}.yaml"].place(("years",))
                yield Fault("broken", place, "", f"there is no row for {year_name(year.year)}")


def _in_order(limits: Iterable[YearLimits], practice: Mapping[str, Mapping[int, PracticeRow]]) -> Iterator[YearLimits]:
    """The years, each with all that the ones before it met, and with what it practises."""
    met = Met()
    for year in sorted(limits, key=lambda one: one.year):
        rows = {name: by_year[year.year] for name, by_year in practice.items()}
        full = year.with_what_came_before(met, Practice.model_construct(None, **rows))
        met = full.met
        yield full


def read_reference(root: Path, folder: str = "site_data") -> Reference:
    """The reference data of a project: the program's, with the project's own. Raises ``ReferenceBroken`` with all faults at once."""
    reader = ReferenceFiles(root, folder)
    frameworks = _frameworks(reader)
    years = reader.read("years.yaml", YearsFile)
    concepts = reader.read("concepts.yaml", ConceptsFile)
    themes = reader.read("themes.yaml", ThemesFile)
    areas = reader.read("areas.yaml", AreasFile)
    words = reader.read("words.yaml", WordsFile)
    asked = reader.read("asked.yaml", Asked)
    materials = reader.read("materials.yaml", MaterialsFile)
    cautions = reader.read("cautions.yaml", CautionsFile)
    bank = reader.read("bank_holidays.yaml", BankHolidays)
    limits = reader.read("limits.yaml", Limits)
    old_plans = reader.read("old_plans.yaml", OldPlanWords)
    site = reader.read("site.yaml", SiteFile)
    money = reader.read("money.yaml", Currency)
    facts = reader.read("facts.yaml", KnownFacts)
    phrases = reader.read("phrases.yaml", Phrases)
    prose = reader.read("prose.yaml", ProseWords)
    proposals = reader.read("proposals.yaml", Proposing)
    moved = reader.read("moved.yaml", MovedFile, absent=MovedFile(moved=()))
    tasks = reader.read("tasks.yaml", TaskYears)
    drawings = reader.read(DRAWINGS, DrawingList)
    practised_by = reader.read("practised.yaml", PractisedBy)
    practice = _practice(reader)
    reader.note_strangers()
    if years is not None:
        reader.faults += _years_without_practice(years.years, practice, reader.locators)
    if reader.faults or not (
        tasks and practised_by and years and concepts and themes and areas and words and asked and materials and cautions and bank
        and limits and site and money and facts and phrases and prose and proposals and old_plans and moved and drawings
    ):  # fmt: skip
        raise ReferenceBroken(reader.faults)
    reference = Reference(
        frameworks=frameworks,
        years={limit.year: limit for limit in _in_order(years.years, practice)},
        tasks=tasks,
        practised_by=practised_by,
        strands={strand.id: strand for strand in concepts.strands},
        concepts={concept.id: concept for concept in concepts.concepts},
        themes={theme.id: theme for theme in themes.themes},
        areas={area.id: area for area in areas.areas},
        words={word.word: word for word in words.words},
        asked=asked,
        materials={material.id: material for material in materials.materials},
        cautions={caution.id: caution for caution in cautions.cautions},
        bank_holidays=bank,
        limits=limits,
        old_plans=old_plans,
        imprint=site,
        site=site.settings(),
        money=money,
        facts=facts.model_copy(update={"phrases": phrases}),
        prose=prose,
        proposals=proposals,
        moved={page.was: page for page in moved.moved},
        moved_places={
            page.was: reader.locators["moved.yaml"].place(("moved", index)) for index, page in enumerate(moved.moved)
        },
        objectives={
            (name, objective.code): objective
            for name, framework in frameworks.items()
            for objective in framework.objectives
        },
        locators=reader.locators,
    )
    listed = {
        "concepts.yaml": [("concepts", c.id) for c in concepts.concepts],
        "themes.yaml": [("themes", t.id) for t in themes.themes],
        "areas.yaml": [("areas", a.id) for a in areas.areas],
        "words.yaml": [("words", w.word) for w in words.words],
        "asked.yaml": [("asked", meaning.id) for meaning in asked.asked],
        "materials.yaml": [("materials", m.id) for m in materials.materials],
        "cautions.yaml": [("cautions", c.id) for c in cautions.cautions],
        "bank_holidays.yaml": [("holidays", str(day.date)) for day in bank.holidays],
        "moved.yaml": [("moved", m.was) for m in moved.moved],
    } | {f"curricula/{name}.yaml": [("objectives", o.code) for o in f.objectives] for name, f in frameworks.items()}
    faults = [*faults_in_links(reference, listed, reader.locators), *faults_in_sums(reference, reader.locators)]
    if faults:
        raise ReferenceBroken(faults)
    return reference
