"""The frame of every page: what stands around what the page itself says, from ``hooks/theme/``; and the files beside it there."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from posixpath import join
from urllib.parse import urlsplit

import jinja2

from ..model.address import LICENCE_IN_WORDS, link
from ..model.carried import carried
from ..model.imprint import Terms
from ..model.site_settings import FRONT, SiteSettings
from ..render.policy import policy
from ..render.quotes import curl
from ..render.site import Rendered
from .page_names import About
from .page_scripts import script_for

_THEME = carried("theme")
_TEMPLATES = jinja2.Environment(loader=jinja2.FileSystemLoader(_THEME), undefined=jinja2.StrictUndefined)
_TEMPLATES.filters["curl"] = curl
_NOTHING = About()


@dataclass(frozen=True)
class Drawn:
    """A page for its frame: its HTML, what is wrong with it, whether it is a draft, and what programs may read of it."""

    page: Rendered
    problems: str
    draft: bool
    for_machines: str = ""
    """What stands in the head for programs to read."""
    publisher: str = ""
    terms: Terms | None = None
    """What may be done with it; None where ``site_data/`` cannot be read."""
    about: About = _NOTHING

    @property
    def title(self) -> str:
        """What a browser's tab says, before the name of the site."""
        return self.about.title_of(self.page)

    @property
    def description(self) -> str:
        """What a search elsewhere shows below the title."""
        return self.about.description_of(self.page)

    @property
    def script(self) -> str:
        """The address of its script, from the site's root."""
        return script_for(self.page.kind)


class PageFrame:
    """Puts pages into their frame."""

    def __init__(self, settings: SiteSettings, serving: bool) -> None:
        """Under ``serving`` pages say to their author that they are shown to her."""
        self._settings, self._serving = settings, serving

    def put_around(self, drawn: Drawn) -> str:
        """A page whole, as a browser gets it."""
        source = drawn.page.source
        return _TEMPLATES.get_template("main.html").render(
            drawn=drawn,
            front=source == FRONT,
            serving=self._serving,
            settings=self._settings,
            publisher=drawn.publisher,
            terms=drawn.terms,
            licence_at=LICENCE_IN_WORDS,
            policy=policy(drawn.page.kind),
            to=lambda target: link(target, source),
        )

    def not_found(self) -> str:
        """The page for addresses that lead nowhere. It stands for any address, so its links begin at the site's root."""
        root = urlsplit(self._settings.url).path or "/"
        return _TEMPLATES.get_template("404.html").render(
            settings=self._settings,
            policy=policy("page"),
            to=lambda target: join(root, target),
        )


def theme_files() -> Mapping[str, Path]:
    """The files that stand beside the frame, by their address from the site's root."""
    files = (path for path in sorted(_THEME.rglob("*")) if path.is_file() and not path.name.startswith("."))
    return {
        path.relative_to(_THEME).as_posix(): path
        for path in files
        if path.suffix != ".html" and path.parent.name != "colours"
    }
