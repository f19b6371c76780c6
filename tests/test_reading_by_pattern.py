"""Every module that reads text by pattern, and whose text that is: an author's or an outsider's, never the program's own.

What the program wrote itself it has as data. Where that is not so yet, the module stands in ``OWN_TEXT`` with what remains.
"""

from __future__ import annotations

import ast

from project import ROOT

CORE = ROOT / "hooks" / "storymaths"

AUTHORS = {
    "activities/author_demands.py": "an author's own words for a task",
    "activities/claims.py": "the answers an author says there are",
    "activities/clock/time.py": "times and lengths of time in an activity's data",
    "activities/order/clues.py": "clues in an activity's data",
    "activities/own_words.py": "an author's own words for a task",
    "activities/position/grid_moves.py": "moves in an activity's data",
    "activities/position/grid_squares.py": "names of squares in an activity's data",
    "activities/shape/named_shapes.py": "rules in an activity's data",
    "activities/sort/cards.py": "numbers to sort in an activity's data",
    "activities/told_claims.py": "an author's own words for a task",
    "activities/told_ways.py": "an author's own words for a task",
    "activities/unknowns/search.py": "names of unknowns in an activity's data",
    "check/adult_matters.py": "the prose of a page, by words in site_data/",
    "check/file_name_unusable.py": "names of content files",
    "check/html_found.py": "addresses, and lists of attributes, in an author's words",
    "check/link_broken.py": "addresses in an author's words",
    "check/number_beyond_year.py": "the prose of a page",
    "check/objective_without_trace.py": "the words of a session",
    "check/pupil_numbers.py": "the prose of a page",
    "check/things_in_prose.py": "the prose of a page, by words in site_data/",
    "check/things_used.py": "the prose of a page",
    "check/unit_beyond_year.py": "the prose of a page",
    "claims/calendar.py": "the prose of a page",
    "claims/cast_facts.py": "the prose of a page",
    "claims/cast_pictures.py": "an author's words for a picture",
    "claims/clock.py": "the prose of a page",
    "claims/coins.py": "the prose of a page",
    "claims/phrase_words.py": "the prose of a page",
    "claims/counting.py": "the prose of a page",
    "claims/factors.py": "the prose of a page",
    "claims/find.py": "the prose of a page",
    "claims/form.py": "the prose of a page",
    "claims/lesson_frame.py": "the prose of a page",
    "claims/named_numbers.py": "the prose of a page",
    "claims/own_question.py": "an author's question and its answer",
    "claims/parity.py": "the prose of a page",
    "claims/place_value.py": "the prose of a page",
    "claims/sentences.py": "the prose of a page",
    "claims/shapes.py": "the prose of a page",
    "claims/told_frame.py": "the prose of a page",
    "claims/units.py": "the prose of a page",
    "claims/ways.py": "the prose of a page",
    "covers/stages.py": "the task with symbols, and the names of materials",
    "desk/control.py": "keys of an author's page, for the ids of their boxes",
    "expression/number.py": "written numbers and amounts",
    "expression/signs.py": "arithmetic as authors type it",
    "expression/tokens.py": "arithmetic as authors type it",
    "model/book.py": "lines of a book's record",
    "model/address.py": "headings and names, for their addresses",
    "model/document.py": "front matter, for whether it is marked up",
    "model/body.py": "comments in an author's page",
    "model/fields.py": "dates",
    "activities/alike.py": "number sentences of an author, for the numbers that others are put in place of",
    "activities/number_sentence/solve_choice.py": "calculations of an author, to put other numbers into them",
    "activities/measure/say_comparing.py": "an author's name for a thing, for whether it has an article",
    "activities/other_numbers.py": "numbers of an author's task, to put others in their place",
    "activities/renumbered.py": "an author's title and question, for the number in it that is another now",
    "covers/starters.py": "an author's question, for a place in the lesson that paper does not show",
    "parse/old_plan/as_markdown.py": "an old plan, for signs that would be mark-up",
    "parse/old_plan/facts.py": "an old plan",
    "parse/old_plan/markdown.py": "an old plan",
    "parse/old_plan/sections.py": "an old plan",
    "parse/old_plan/times.py": "an old plan",
    "render/sheets/exit_slips.py": "an author's question, for whether it asks to draw",
    "render/sheets/recording_tasks.py": "an author's question, for what it asks to write",
    "check/activity_unread.py": "fences and comments of an author's page",
    "edits/apply.py": "a content file, to change a span of it",
    "edits/scalars.py": "what an author puts in, for how YAML writes it",
    "ideas/block_text.py": "names and words of a book's record, for how YAML writes them",
    "ideas/gather.py": "the record of a book",
    "ideas/seeds/clock.py": "the record of a book",
    "ideas/seeds/unknowns.py": "the record of a book",
    "ideas/story_text.py": "the words of a story",
    "parse/svg/attributes.py": "drawings in content/",
    "parse/svg/chains.py": "drawings in content/",
    "parse/svg/styles.py": "drawings in content/",
    "parse/svg/values.py": "drawings in content/",
    "parse/yaml_slips.py": "a content file that is no YAML",
    "propose/cautions.py": "the notes of a book",
    "propose/preparation.py": "the prose of a page",
    "propose/things.py": "the prose of a page",
    "propose/words.py": "the prose of a page",
    "render/sheets/pictures.py": "drawings in content/, for what paper cannot show",
    "upgrade/spans.py": "a content file, to change a span of it",
    "upgrade/to_bends.py": "a content file, to move a span of it",
    "model/names.py": "what a content file names",
    "model/phrases.py": "the phrases of site_data/phrases.yaml, which people write",
    "naming/answers.py": "the answers of an activity, which its author may word",
    "naming/facts.py": "what a content file names",
    "naming/where.py": "a content file, for the numbers and times in it",
    "model/prose.py": "the prose of a page",
    "parse/body.py": "Markdown",
    "parse/collection.py": "names of content files",
    "parse/cut_texts.py": "the prose of a page",
    "parse/document.py": "a content file, for where its front matter ends",
    "parse/excuses.py": "the prose of a page",
    "parse/letters.py": "a content file",
    "parse/number_sentence.py": "the prose of a page",
    "parse/page_text.py": "a content file, before anything is made of it",
    "parse/reading_level.py": "the words of a home page",
    "parse/starter_words.py": "what a starter says, to find it left as it was in an author's page",
    "render/body.py": "addresses in an author's words",
    "render/cleaning.py": "addresses in an author's words",
    "render/inline.py": "gaps in a line of an author's words",
    "render/quotes.py": "quotation marks in an author's words",
    "render/session_steps.py": "the prose of a page",
    "render/sheets/cast_cards.py": "the note to a material",
    "render/sheets/note_numbers.py": "the note to a material",
    "render/sheets/recording.py": "the note to a material",
    "render/sheets/words.py": "an author's words, for gaps and for where a line may end",
}
OUTSIDERS = {
    "publish/guide/fields.py": "the finished pages that the program carries",
    "publish/guide/names.py": "a list of site_data/ as YAML writes it: names of years in quotes",
    "publish/stands_on.py": "licences that packages carry",
    "commands/plan.py": "what is typed after a command",
    "commands/terminal.py": "messages, for signs that would act on a terminal",
    "publish/assets.py": "scripts and styles of the theme, for the notes in them",
    "publish/open_data/xml_out.py": "any text, for signs that XML has not",
    "publish/pack/contents.py": "names of files in a site",
    "publish/pack/first_page.py": "names of files in a site",
    "publish/pack/limits.py": "names in a zip file, which may be a stranger's",
    "publish/pack/manifest.py": "a manifest, which may be a stranger's",
    "publish/starter_examples.py": "the starters and finished pages that the program carries",
    "publish/starter_year.py": "the starters that the program carries",
    "publish/starters.py": "a title that an author gives a new page",
    "publish/weeks_page.py": "a style of the theme",
    "release/built_pages.py": "a finished site, read as a browser reads it",
    "release/links_lead.py": "a finished site, read as a browser reads it",
    "scripts/join.py": "the scripts of the site",
}
OWN_TEXT = {
    "activities/exit_shown.py": "what an activity answers, for the sums in it: an answer could hold them",
    "render/word_processor/parts.py": "the page drawn, of which a document for a word processor is made",
    "publish/linked_data/features.py": "the page drawn, for pictures with words: the page's content could say",
    "publish/pack/page_links.py": "pages drawn, to turn links out of a pack into words",
    "render/spoken.py": "the page drawn, for the maths in it, so that it is heard right",
    "render/word_links.py": "the page drawn, for the first time each word of the word bank stands in it",
}


def reads_by_pattern(text: str) -> bool:
    return any(
        isinstance(node, ast.Import) and any(name.name == "re" for name in node.names)
        for node in ast.walk(ast.parse(text))
    )


def test_every_module_that_reads_by_pattern_is_listed_with_what_it_reads() -> None:
    modules = {
        path.relative_to(CORE).as_posix()
        for path in CORE.rglob("*.py")
        if reads_by_pattern(path.read_text(encoding="utf-8"))
    }
    listed = [*AUTHORS, *OUTSIDERS, *OWN_TEXT]
    assert sorted(listed) == sorted(set(listed)), "a module is listed once"
    assert modules - set(listed) == set(), "say what it reads; it may not be what the program itself wrote"
    assert set(listed) - modules == set(), "it reads by pattern no more"
