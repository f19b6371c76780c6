"""Each session and home activity as a document for a word processor, beside its page.

A document is made from its page as it was drawn, so the two cannot differ, and kept in a cache folder by its content.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from functools import cache as cache_once
from hashlib import sha256
from importlib.metadata import version
from pathlib import Path

from ..activities.work_out import WorkedOut
from ..model.activity import Figure
from ..model.document import Document
from ..model.home import Home
from ..model.page_fields import PageFields
from ..model.session import Session
from ..render.figures.table import draw
from ..render.sheets.letters import edition
from ..render.sheets.pictures import standing_alone
from ..render.site import Rendered, Site
from ..render.word_processor.document import About, write_document
from ..render.word_processor.elements import read_elements
from ..render.word_processor.parts import parts_of_page
from ..render.word_processor.pictures import as_pictures
from .sheet_cache import forget_all_but, keep

_PROGRAM = Path(parts_of_page.__code__.co_filename).parent


def write_documents(
    site: Site, drawn: Callable[[str], Rendered], folder: Path, cache: Path, *, forget: bool = True
) -> None:
    """Puts the document of every session and home activity beside its page in the site's ``folder``.

    ``drawn`` gives a page by its source. Unless told not to, forgets what is kept and no longer used. Raises ``OSError``.
    """
    keys = []
    for page in [*site.collection.of_kind(Session), *site.collection.of_kind(Home)]:
        kept = document_of(site, page, drawn(page.source), cache)
        to = folder / f"{page.source.removesuffix('.md')}.docx"
        to.parent.mkdir(parents=True, exist_ok=True)
        to.write_bytes(kept.read_bytes())
        keys.append(kept.stem)
    if forget:
        forget_all_but(cache, keys)


def has_document(page: Document[PageFields]) -> bool:
    """Whether its page offers one."""
    return isinstance(page.fields, (Session, Home))


def document_of(site: Site, page: Document[PageFields], rendered: Rendered, cache: Path) -> Path:
    """The document of one page as it was drawn, in ``cache``, where it is made if it is not there. Raises ``OSError``."""
    about = _about(site, page)
    key = sha256(b"\0".join([_made_with(), repr(about).encode(), rendered.html.encode()])).hexdigest()
    kept = cache / f"{key}.docx"
    if not kept.is_file():
        cache.mkdir(parents=True, exist_ok=True)
        keep(kept, _made(site, page, rendered, about))
    return kept


def _about(site: Site, page: Document[PageFields]) -> About:
    publisher, terms = site.collection.reference.imprint.publisher, site.terms(page.source)
    return About(page.fields.title, publisher, site.settings.language, f"{publisher} · {terms.line}")


def _made(site: Site, page: Document[PageFields], rendered: Rendered, about: About) -> bytes:
    figures = {
        figure.alt: standing_alone(draw(figure.data))
        for activity in site.activities_of(page)
        for figure in _figures(activity.worked)
    }
    return write_document(parts_of_page(read_elements(rendered.html)), about, as_pictures(figures))


def _figures(worked: WorkedOut) -> Iterator[Figure]:
    for solution in (worked.solution, *(other.solution for other in worked.versions.values())):
        if solution is not None:
            yield from (*solution.task.figures, *solution.answer_figures)


@cache_once
def _made_with() -> bytes:
    """Names everything besides the page that decides what a document holds."""
    versions = [version(name).encode() for name in ("python-docx", "typst", "pillow")]
    sources = [path.read_bytes() for path in sorted(_PROGRAM.glob("*.*"))]
    return sha256(b"\0".join([edition().encode(), *versions, *sources])).digest()
