"""The one door to MkDocs: its build and its server carry what the core makes whole.

MkDocs loads this file once and never again, so it stays thin; under ``mkdocs serve`` the core is loaded afresh when
its own files have changed, and changes to it show without a restart. Changes to this file need one.
"""

from __future__ import annotations

import importlib
import logging
import sys
from pathlib import Path
from typing import Any

import jinja2
import storymaths.pipeline  # found because MkDocs puts this file's folder on the path while it loads it
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.pages import Page
from storymaths.commands.terminal import as_text, count_problems
from storymaths.release.staging import Staging

log = logging.getLogger("mkdocs.storymaths")
_HERE = Path(__file__).parent
_SCRIPTS = "script-src 'self'"
"""In the Content Security Policy of every page, at its head."""


class _Now:
    """What this run of MkDocs is doing, and its build. The one state there is: MkDocs' events share no other."""

    serving = False
    build: Any = None
    reader: Any = None
    """What has been read, and is not read again while it does not change."""
    code: object = None
    """When the core was last changed, as far as what is loaded knows."""
    staging: Staging | None = None


def on_startup(command: str, dirty: bool) -> None:
    """Notes whether pages are being written for publishing or served to their author."""
    _Now.serving = command == "serve"


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Reads and checks everything; a build with problems stops here, before any file is touched."""
    core, root = _fresh(), Path(config.docs_dir).parent
    address = config.site_url or "" if _Now.serving else ""
    _Now.reader = _Now.reader or core.ProjectReader(root)
    _Now.build = core.start_build(root, serving=_Now.serving, address=address, reader=_Now.reader)
    problems = _Now.build.reading.problems
    if problems:
        report = f"{count_problems(len(problems))} in the content\n\n{as_text(problems)}\n"
        if not _Now.serving:
            raise Abort(f"{report}\nNothing was built; the site is as it was.")
        log.error(report)
    warnings = _Now.build.reading.warnings
    if warnings:
        log.warning(f"{as_text((), warnings)}\n")
    if not _Now.serving:
        _Now.staging = Staging(Path(config.site_dir))
        config.site_dir = str(_Now.staging.folder)
    config.theme.static_templates.clear()
    # Its own look for pages would follow links in a circle; the core has found them, so it looks where none are.
    config.docs_dir = str(_HERE / "theme")
    # Nothing is left for MkDocs to convert, so its converter, made anew for each page, needs no extensions.
    config.markdown_extensions = []
    return config


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """In place of what MkDocs found, the pages of the site, empty as yet, and the files beside them."""
    site = [File.generated(config, page, content="", inclusion=InclusionLevel.NOT_IN_NAV) for page in _Now.build.pages]
    for address, content in _Now.build.files().items():
        what = {"abs_src_path": str(content)} if isinstance(content, Path) else {"content": content}
        site.append(File.generated(config, address, inclusion=InclusionLevel.INCLUDED, **what))
    return Files(site)


def on_env(env: jinja2.Environment, config: MkDocsConfig, files: Files) -> jinja2.Environment:
    """The core's pages come whole: what MkDocs fills is their words and nothing around them."""
    env.loader = jinja2.DictLoader({"main.html": "{{ html }}"})
    return env


def on_page_context(context: dict[str, Any], page: Page, config: MkDocsConfig, nav: Any) -> dict[str, Any]:
    """Draws a page. Under serve MkDocs puts a script within it, with numbers that change each time: there such may run."""
    html = _Now.build.page(page.file.src_uri)
    context["html"] = html.replace(_SCRIPTS, f"{_SCRIPTS} 'unsafe-inline'", 1) if _Now.serving else html
    return context


def on_post_build(config: MkDocsConfig) -> None:
    """Adds the sheets and the text index, and puts the finished site in place of the last one."""
    _Now.build.finish(Path(config.site_dir))
    if _Now.staging is not None:
        _Now.staging.put_in_place()
        config.site_dir = str(_Now.staging.out)
        log.info(f"The site is in {config.site_dir}")


def on_build_error(error: Exception) -> None:
    """A site that is not finished takes nothing's place."""
    if _Now.staging is not None:
        _Now.staging.discard()


def _fresh() -> Any:
    files = (path for path in (_HERE / "storymaths").rglob("*.*") if path.suffix != ".pyc")
    code = {path: path.stat().st_mtime_ns for path in files}
    if _Now.build is None or code == _Now.code:
        _Now.code = code
        return storymaths.pipeline
    _Now.code, _Now.build, _Now.reader = (
        code,
        None,
        None,
    )  # what the code of before has solved is no longer to be trusted
    for name in [name for name in sys.modules if name.split(".")[0] == "storymaths"]:
        del sys.modules[name]
    sys.path.insert(0, str(_HERE))
    try:
        return importlib.import_module("storymaths.pipeline")
    finally:
        sys.path.remove(str(_HERE))
