"""The site of the frozen collection, served to this machine only."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from built import built_site

from .server import serving


@pytest.fixture(scope="session")
def site() -> Path:
    """The folder of the finished site."""
    return built_site()


@pytest.fixture(scope="session")
def base(site: Path) -> Iterator[str]:
    """The address of the site, with a closing slash."""
    with serving(site) as address:
        yield address
