"""The build as MkDocs runs it: what it makes, what it refuses, and what it leaves as it was."""

from __future__ import annotations

import re
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from built import built_site, mkdocs_build
from links import broken_links, pages
from project import collection, copy_of_project
from run_folder import made_once
from storymaths.pipeline import start_build
from storymaths.publish.open_data.files import open_data

LIFT = "content/books/cliff-house-lift"


@pytest.fixture(scope="module")
def site() -> Path:
    """The site as it is: what MkDocs makes of it, byte for byte, as ``test_frames.py`` holds."""
    return built_site()


@pytest.fixture(scope="module")
def without_an_address() -> Path:
    """The project of a copy that has a draft and no address, with its site as MkDocs builds it."""
    return made_once("without-an-address", _build_without_an_address)


def _build_without_an_address(folder: Path) -> None:
    project = copy_of_project(folder)
    settings, draft = project / "site_data/site.yaml", project / LIFT / "session-4.md"
    text = re.sub(r"^address:.*\n", "", settings.read_text(encoding="utf-8"), flags=re.MULTILINE)
    settings.write_text(text.replace("sheets: true", "sheets: false"), encoding="utf-8")
    text = draft.read_text(encoding="utf-8")
    draft.write_text(text.replace("kind: session\n", "kind: session\nstatus: draft\n"), encoding="utf-8")
    done = mkdocs_build(project)
    assert done.returncode == 0, done.stdout + done.stderr


def test_every_kind_of_page_is_there(site: Path) -> None:
    for page in (
        "index.html", "find.html", "books/cliff-house-lift/index.html", "books/cliff-house-lift/session-1.html",
        "books/cliff-house-lift/home-1.html", "books/cliff-house-lift/story.html", "series/a-term-on-plover-quay.html",
        "concepts/equality.html", "themes/fairness.html", "years/year-2.html", "years/reception.html", "words.html",
        "objectives/england-content-domain/2c4.html", "objectives/england-ready-to-progress/2as-3.html", "materials.html",
        "safety.html", "checked.html", "finder-data.json", "pagefind/pagefind.js",
        "catalogue.html", "open-data.html", "open-data/catalogue.json", "open-data/catalogue.csv", "feed.xml", "sitemap.xml",
        "open-data/curricula/england-content-domain.json",
    ):  # fmt: skip
        assert (site / page).is_file(), page
    reference = collection().reference
    assert len(list((site / "objectives").glob("*/*.html"))) == len(reference.objectives) + len(reference.frameworks)
    assert len(list((site / "concepts").glob("*.html"))) == len(reference.concepts) + 1


def test_a_draft_is_left_out(without_an_address: Path) -> None:
    built = without_an_address / "site"
    assert not (built / "books/cliff-house-lift/session-4.html").exists()
    assert "session-4.html" not in (built / "books/cliff-house-lift/index.html").read_text(encoding="utf-8")
    addressed = start_build(without_an_address, address="https://ploverquay.example/").site
    assert addressed is not None
    files = open_data(addressed)
    assert "session-3.html" in files["sitemap.xml"]
    assert [name for name, text in files.items() if "cliff-house-lift/session-4" in text] == []


def test_every_link_leads_somewhere_and_every_id_is_used_once(site: Path, without_an_address: Path) -> None:
    for folder in (site, without_an_address / "site"):
        for path, page in pages(folder).items():
            assert len(page.ids) == len(set(page.ids)), f"{path}: {[i for i in page.ids if page.ids.count(i) > 1]}"
        assert broken_links(folder) == []


def test_there_is_one_sitemap_of_the_pages_that_are_there(site: Path) -> None:
    assert [path.name for path in site.rglob("*sitemap*")] == ["sitemap.xml"], "MkDocs' own would differ at each build"
    listed = re.findall(
        r"<loc>https://ploverquay\.example/(.*?)</loc>", (site / "sitemap.xml").read_text(encoding="utf-8")
    )
    there = {path.relative_to(site).as_posix() for path in pages(site)}
    assert {address or "index.html" for address in listed} == there


def test_without_an_address_nothing_is_published_that_needs_one(without_an_address: Path) -> None:
    built = without_an_address / "site"
    assert [name for name in ("sitemap.xml", "feed.xml", "open-data/curricula") if (built / name).exists()] == []
    text = (built / "open-data.html").read_text(encoding="utf-8")
    assert "catalogue.csv" in text
    assert "ploverquay.example" not in text


def test_each_page_says_what_it_is_and_where_the_feed_is(site: Path) -> None:
    for path in pages(site):
        text = path.read_text(encoding="utf-8")
        assert text.count('<script type="application/ld+json">') == 1, path
        assert text.count('type="application/atom+xml"') == 1, path


def test_nothing_is_loaded_from_elsewhere(site: Path) -> None:
    for path, page in pages(site).items():
        assert [link for link in page.loads if urlsplit(link).netloc] == [], path
    for style in site.glob("look/*.css"):
        assert not re.search(r"url\(\s*[\"']?(?:https?:)?//", style.read_text(encoding="utf-8"))


def test_no_two_pages_have_one_title(site: Path) -> None:
    titles = [re.search(r"<title>(.*?)</title>", path.read_text(encoding="utf-8"), re.DOTALL) for path in pages(site)]
    named = [title.group(1) for title in titles if title]
    assert len(named) == len(set(named)), [name for name in named if named.count(name) > 1]


def test_the_generator_is_named_on_the_credits_page_alone(site: Path) -> None:
    naming = [p.name for p in site.rglob("*.html") if "mkdocs" in p.read_text(encoding="utf-8").lower()]
    assert naming == ["credits.html"]


def test_problems_stop_the_build_and_leave_the_site_as_it_was(tmp_path: Path) -> None:
    project = copy_of_project(tmp_path)
    old = project / "site"
    old.mkdir()
    (old / "index.html").write_text("as it was", encoding="utf-8")
    page = project / LIFT / "session-1.md"
    page.write_text(
        page.read_text(encoding="utf-8").replace("minutes: 50", "minutes: 51", 1).replace("year: 2", "yeer: 2", 1),
        encoding="utf-8",
    )
    done = mkdocs_build(project)
    said = done.stdout + done.stderr
    assert done.returncode != 0
    assert "field-unknown" in said
    assert "Traceback" not in said
    assert "end of life" not in said, "what the site is built with is no reader's business"
    assert [(path.name, path.read_text(encoding="utf-8")) for path in old.rglob("*")] == [("index.html", "as it was")]
