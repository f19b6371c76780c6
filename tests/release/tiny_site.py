"""A site of a few pages made in a moment, in as many versions as wanted; and whether what is published is one of them.

``python -m release.tiny_site DEST VERSION [WAY]`` publishes one, as the command does by ``--as WAY``, to be killed on the way.
"""

from __future__ import annotations

import datetime
import gzip
import sys
from pathlib import Path

from storymaths.model.reference import PublishedLimits
from storymaths.release.change_zip import zip_changes
from storymaths.release.plain_folder import publish_to_folder
from storymaths.release.publishing import Builder, Outcome, Request, publish
from storymaths.release.releases import Releases
from storymaths.render.policy import policy

PAGES = 30
LIMITS = PublishedLimits(page_bytes=100_000, file_bytes=100_000, site_bytes=10_000_000)
TODAY = datetime.date(2027, 1, 11)


def page(words: str, title: str = "A page", inside: str = "") -> str:
    """A page as every page is."""
    return (
        f'<!doctype html><html lang="en-GB"><head><meta charset="utf-8">'
        f'<meta http-equiv="Content-Security-Policy" content="{policy("page")}"><title>{title}</title></head>'
        f'<body><h1 id="top-of-it">{title}</h1><p>{words}</p>{inside}</body></html>\n'
    )


def pages_of(version: str, pages: int = PAGES) -> Builder:
    """Builds a version of the site: every page says which it is, many times over."""

    def build(folder: Path) -> None:
        (folder / "books").mkdir()
        for number in range(pages):
            next_one = f'<a href="page-{(number + 1) % pages}.html#top-of-it">next</a>'
            text = page(f"{version} " * 200, f"Page {number}", next_one)
            (folder / f"books/page-{number}.html").write_text(text, encoding="utf-8")
        (folder / "index.html").write_text(
            page(version, "First", '<a href="books/page-0.html">in</a>'), encoding="utf-8"
        )

    return build


def asked(build: Builder, **more: bool) -> Request:
    return Request(build, LIMITS, frozenset(), TODAY, **more)


def published(dest: Path, version: str, pages: int = PAGES) -> Outcome:
    return publish(Releases(dest), asked(pages_of(version, pages)))


def shown(dest: Path, pages: int = PAGES) -> str:
    """The version that is published, if it is whole from the first page to the last; else says what is wrong."""
    texts = {path: path.read_text(encoding="utf-8") for path in dest.rglob("*.html")}
    version = texts[dest / "index.html"].partition("<p>")[2].partition("</p>")[0]
    assert len(texts) == pages + 1, f"{len(texts)} pages of version {version}"
    for path, text in texts.items():
        assert text.endswith("</html>\n"), f"{path} is cut short"
        assert f"<p>{version}" in text, f"{path} is not of version {version}"
        assert gzip.decompress(path.with_name(f"{path.name}.gz").read_bytes()).decode() == text, (
            f"{path} is not its .gz"
        )
    return version


if __name__ == "__main__":
    place, way = Path(sys.argv[1]), "".join(sys.argv[3:])
    if way:
        act = publish_to_folder if way == "folder" else zip_changes
        act(place, asked(pages_of(sys.argv[2])), place.parent)
    else:
        published(place, sys.argv[2])
