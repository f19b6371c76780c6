"""The one file that knows MkDocs: each build event is handed to one call of the core.

MkDocs loads this file once and never again, so it stays thin; under ``mkdocs serve`` the core is loaded
afresh before each rebuild, and changes to it show without a restart. Changes to this file need one.
"""

from __future__ import annotations

import importlib
import logging
import sys
from pathlib import Path
from typing import Any

import storymaths.build  # found because MkDocs puts this file's folder on the path while it loads it
from mkdocs.config.defaults import MkDocsConfig
from mkdocs.exceptions import Abort
from mkdocs.structure.files import File, Files
from mkdocs.structure.pages import Page
from storymaths.commands.terminal import as_text

log = logging.getLogger("mkdocs.storymaths")
_HERE = str(Path(__file__).parent)


class _Now:
    """What this run of MkDocs is doing, and its build. The one state there is: MkDocs' events share no other."""

    serving = False
    build: Any = None


def on_startup(command: str, dirty: bool) -> None:
    """Notes whether pages are being written for publishing or served to their author."""
    _Now.serving = command == "serve"


def on_config(config: MkDocsConfig) -> MkDocsConfig:
    """Reads and checks everything; a build with problems stops here, before any file is touched."""
    root, wanted = Path(config.config_file_path).parent, bool(config.extra.get("print_sheets"))
    core, only = _fresh(), str(config.extra.get("only_series") or "")
    settings = core.SiteSettings(config.site_name, config.site_description or "", config.site_url or "")
    _Now.build = core.Build(root, serving=_Now.serving, print_sheets=wanted, settings=settings, only_series=only)
    config.theme.static_templates.discard("sitemap.xml")  # MkDocs' own takes its days from the clock
    if _Now.build.problems:
        report = f"{len(_Now.build.problems)} problem(s) in the content\n\n{as_text(_Now.build.problems)}\n"
        if not _Now.serving:
            raise Abort(f"{report}\nNothing was built; the site is as it was.")
        log.error(report)
    if only and not _Now.build.shows_series(only):
        raise Abort(f'There is no series "{only}" that is ready. Nothing was built; the site is as it was.')
    # Nothing is left for MkDocs to convert, so its converter, made anew for each page, needs no extensions.
    config.markdown_extensions = []
    return config


def on_files(files: Files, config: MkDocsConfig) -> Files:
    """Leaves out drafts, and adds the pages and files the core makes itself."""
    for file in list(files):
        if _Now.build.is_left_out(file.src_uri):
            files.remove(file)
        elif file.src_uri.endswith(".md"):
            # Its words are read by the core; given empty, it is not read and parsed a second time here.
            files.remove(file)
            files.append(File.generated(config, file.src_uri, content=""))
    for source in _Now.build.generated_sources:
        files.append(File.generated(config, source, content=""))
    for name, content in _Now.build.assets().items():
        files.append(File.generated(config, name, content=content))
    return files


def on_env(env: Any, config: MkDocsConfig, files: Files) -> Any:
    """Gives the frame each page's Content Security Policy."""
    env.globals["policy"] = _Now.build.policy
    return env


def on_page_markdown(markdown: str, page: Page, config: MkDocsConfig, files: Files) -> str:
    """Nothing is left for MkDocs to convert: the core renders pages whole."""
    return ""


def on_page_context(context: dict[str, Any], page: Page, config: MkDocsConfig, nav: Any) -> dict[str, Any]:
    """Gives the frame its page."""
    context["drawn"] = _Now.build.draw(page.file.src_uri)
    context["to"] = _Now.build.linker(page.file.src_uri)
    return context


def on_post_build(config: MkDocsConfig) -> None:
    """Indexes the text of the finished site."""
    _Now.build.finish(Path(config.site_dir))


def _fresh() -> Any:
    if _Now.serving and _Now.build is not None:
        for name in [name for name in sys.modules if name.split(".")[0] == "storymaths"]:
            del sys.modules[name]
        sys.path.insert(0, _HERE)
        try:
            return importlib.import_module("storymaths.build")
        finally:
            sys.path.remove(_HERE)
    return storymaths.build
