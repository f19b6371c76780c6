"""The table of rules, and the one call that keeps them all."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Protocol

from ..model.collection import Collection
from ..model.problem import Problem
from ..model.rule import Rule
from . import (
    activity_unread,
    address_forbidden,
    allergen_unnoted,
    answer_unlike_question,
    apparatus_not_modelled,
    area_unknown,
    bend_without_objective,
    book_fact_untrue,
    book_unknown,
    books_out_of_order,
    cast_fact_unlike,
    cast_twice,
    caution_missing,
    caution_unknown,
    claim_untrue,
    concept_unknown,
    dates_out_of_order,
    drawing_unusable,
    field_duplicate,
    field_missing,
    field_mistyped,
    field_unknown,
    file_name_unusable,
    file_unreadable,
    fraction_beyond_year,
    front_matter_broken,
    holiday_unreadable,
    home_too_hard,
    html_not_on_list,
    isbn_wrong,
    kind_unknown,
    lesson_contradicted,
    letter_misleading,
    link_broken,
    list_unlike,
    material_unknown,
    minutes_do_not_add,
    mistake_is_true,
    moved_page_broken,
    name_unknown,
    needs_forward,
    nothing_set_out,
    number_beyond_year,
    number_sentence_untrue,
    objective_part_unknown,
    objective_unknown,
    objective_without_concept,
    objective_without_trace,
    objective_wrong_year,
    objectives_none,
    page_name_taken,
    page_outside_book,
    phrase_forbidden,
    picture_from_elsewhere,
    picture_missing,
    picture_without_words,
    program_fault,
    quotes_too_long,
    reading_backwards,
    reference_data,
    rights_missing,
    section_empty,
    series_book_twice,
    session_number_gap,
    small_parts_unnoted,
    starter_unfilled,
    step_too_long,
    step_without_section,
    stop_outside_reading,
    story_pages_differ,
    symbol_beyond_year,
    symbol_not_introduced,
    text_cut,
    theme_unknown,
    thing_not_at_home,
    title_twice,
    together_too_long,
    unit_beyond_year,
    version_untold,
    word_beyond_year,
    word_not_taught,
    word_unknown,
)


class RuleModule(Protocol):
    """What each rule's file offers."""

    @property
    def RULE(self) -> Rule:
        """The rule it keeps."""

    def check(self, collection: Collection) -> Iterator[Problem]:
        """The problems it finds."""


# In the order the report and `explain` list them: files, front matter, names, years, pages and steps, words and
# signs, numbers, cautions, rights and reading.
TABLE: tuple[RuleModule, ...] = (
    file_unreadable,
    file_name_unusable,
    page_name_taken,
    letter_misleading,
    front_matter_broken,
    kind_unknown,
    field_unknown,
    field_missing,
    field_mistyped,
    field_duplicate,
    text_cut,
    name_unknown,
    starter_unfilled,
    activity_unread,
    section_empty,
    book_unknown,
    objective_unknown,
    objective_part_unknown,
    objectives_none,
    objective_without_concept,
    concept_unknown,
    theme_unknown,
    area_unknown,
    word_unknown,
    material_unknown,
    caution_unknown,
    objective_wrong_year,
    objective_without_trace,
    bend_without_objective,
    page_outside_book,
    stop_outside_reading,
    reading_backwards,
    minutes_do_not_add,
    step_without_section,
    together_too_long,
    nothing_set_out,
    session_number_gap,
    needs_forward,
    word_not_taught,
    word_beyond_year,
    symbol_beyond_year,
    symbol_not_introduced,
    apparatus_not_modelled,
    number_beyond_year,
    fraction_beyond_year,
    unit_beyond_year,
    number_sentence_untrue,
    claim_untrue,
    book_fact_untrue,
    lesson_contradicted,
    list_unlike,
    answer_unlike_question,
    mistake_is_true,
    caution_missing,
    small_parts_unnoted,
    allergen_unnoted,
    phrase_forbidden,
    thing_not_at_home,
    rights_missing,
    quotes_too_long,
    home_too_hard,
    picture_without_words,
    picture_missing,
    picture_from_elsewhere,
    drawing_unusable,
    link_broken,
    moved_page_broken,
    address_forbidden,
    html_not_on_list,
    isbn_wrong,
    title_twice,
    story_pages_differ,
    cast_twice,
    cast_fact_unlike,
    dates_out_of_order,
    series_book_twice,
    books_out_of_order,
    version_untold,
)

OF_A_PLAN: tuple[Rule, ...] = (holiday_unreadable.RULE, step_too_long.RULE)
"""Kept when a plan of the weeks is asked for: they turn on what is asked, not on the collection alone."""


OF_ALL_PAGES: tuple[RuleModule, ...] = (
    file_unreadable,
    file_name_unusable,
    page_name_taken,
    letter_misleading,
    front_matter_broken,
    kind_unknown,
    field_unknown,
    field_missing,
    field_mistyped,
    field_duplicate,
    text_cut,
    book_unknown,
    books_out_of_order,
    word_not_taught,
    symbol_not_introduced,
    objective_without_concept,
    picture_missing,
    drawing_unusable,
    link_broken,
    moved_page_broken,
    title_twice,
)
"""Rules that hold pages of several books against each other, look at the files beside them, or at the lists alone.

Every other rule finds in the pages of one book, or in a page of none, what it would find there among all others.
"""
_OF_A_PART = tuple(module for module in TABLE if module not in OF_ALL_PAGES)


def check_all(collection: Collection) -> list[Problem]:
    """Every problem of the collection, in the order of files and lines."""
    return sorted({*check_parts(collection), *check_whole(collection)})


def check_parts(collection: Collection) -> Iterator[Problem]:
    """What is wrong within the parts of a collection (``Collection.parts``)."""
    return (problem for module in _OF_A_PART for problem in module.check(collection))


def check_whole(collection: Collection) -> Iterator[Problem]:
    """What shows only where all pages are looked at together."""
    return (problem for module in OF_ALL_PAGES for problem in module.check(collection))


def rules() -> dict[str, Rule]:
    """Every rule by its name."""
    found = (reference_data.RULE, program_fault.RULE, *(module.RULE for module in TABLE), *OF_A_PLAN)
    return {rule.name: rule for rule in found}
