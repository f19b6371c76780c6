"""Data for the scripts of the pages, each file twice: as JSON, and as a script for where pages may not fetch."""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from ..render.site import Site
from .finder_columns import finder_columns
from .finder_words import questions, shelves
from .plan_data import plan_data
from .shelf_page import shelf_data
from .weeks_data import weeks_data


def data_files(site: Site) -> Mapping[str, str]:
    """Each file's address from the site's root, and what is in it.

    From a memory stick a page may load scripts but not fetch files, so ``finder-data.js`` gives a page what
    ``finder-data.json`` would. Pages load the one or the other, never both. Words to ask in come apart from what is
    asked: the finder shows its list without them.
    """
    columns = finder_columns(site)
    data: dict[str, Any] = {
        "asked": columns.pop("asked"),
        "finder-data": columns,
        "questions": questions(site),
        "plan-data": plan_data(site),
        "shelf-data": shelf_data(site),
        **shelves(site),
        **weeks_data(site),
    }
    files: dict[str, str] = {}
    for name, value in data.items():
        text = json.dumps(value, ensure_ascii=False, separators=(",", ":"))
        files[f"{name}.json"] = text
        files[f"{name}.js"] = f'(window.storymathsData??={{}})["{name}"]={text};\n'
    return files
