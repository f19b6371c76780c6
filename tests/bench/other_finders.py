"""The same pages under the two searches ours is measured beside: the theme's own, and Pagefind with nothing around it."""

from __future__ import annotations

import html
import re
import subprocess
import sys
from pathlib import Path

_MAIN = re.compile(r"<main\b.*?</main>", re.DOTALL)
_GAP = re.compile(r"</(?:p|li|h\d|dt|dd|td|th|section|div|summary)>")
_TAG = re.compile(r"<[^>]*>")
_SETTINGS = """site_name: Plain
theme: {name: material, font: false}
plugins: [search]
use_directory_urls: false
nav: [index.md]
not_in_nav: |
  /**
"""
_PAGE = """<!doctype html><html lang="en-GB"><meta charset="utf-8"><title>Plain</title>
<input id="q"><ol id="results"></ol><script type="module">
let index;
document.querySelector("#q").addEventListener("input", async ({ target }) => {
  index ??= await import("./plain-index/pagefind.js");
  await index.init();
  const found = await index.search(target.value);
  const first = await Promise.all(found.results.slice(0, 10).map((result) => result.data()));
  document.querySelector("#results").replaceChildren(...first.map((page) => {
    const item = document.createElement("li");
    item.innerHTML = page.excerpt;
    return item;
  }));
});
</script></html>
"""


def build(project: Path, site: Path) -> None:
    """Runs ``mkdocs build`` and raises when it fails."""
    command = [sys.executable, "-m", "mkdocs", "build", "-q", "-d", str(site)]
    done = subprocess.run(
        command,
        cwd=project,
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode:
        raise RuntimeError(done.stdout + done.stderr)


def add_plain_pagefind(site: Path) -> None:
    """A page ``plain.html`` with a box and a list, over an index of every page of the site, all choices as they come."""
    command = [sys.executable, "-m", "pagefind", "--site", str(site), "--output-subdir", "plain-index", "--quiet"]
    subprocess.run(command, check=True, capture_output=True)
    (site / "plain.html").write_text(_PAGE, encoding="utf-8")


def build_theme_search(ours: Path, project: Path) -> Path:
    """The words of every page of our site as Markdown, built with the theme and its own search. Returns that site."""
    for page in sorted((ours / "books").rglob("*.html")):
        words = _words(page.read_text(encoding="utf-8"))
        target = project / "docs" / page.relative_to(ours).with_suffix(".md")
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(words, encoding="utf-8")
    (project / "docs" / "index.md").write_text("# Plain\n", encoding="utf-8")
    (project / "mkdocs.yml").write_text(_SETTINGS, encoding="utf-8")
    build(project, project / "site")
    return project / "site"


def _words(page: str) -> str:
    main = _MAIN.search(page)
    text = html.unescape(_TAG.sub("", _GAP.sub("\n\n", main.group() if main else page)))
    paragraphs = [" ".join(part.split()) for part in re.split(r"\n\s*\n", text)]
    first, *rest = [part for part in paragraphs if part]
    return "\n\n".join([f"# {first}", *rest]) + "\n"
