"""Files that stand beside the pages: the finder's catalogue, and letterforms from their packages."""

from __future__ import annotations

from collections.abc import Mapping
from importlib.util import find_spec
from pathlib import Path

from ..render.site import Site
from .catalogue import catalogue

_FONTS = {
    "fonts/lexend.ttf": ("fontpkg_lexend", "Lexend[wght].ttf"),
    "fonts/abeezee.ttf": ("fontpkg_abeezee", "ABeeZee-Regular.ttf"),
    "fonts/abeezee-italic.ttf": ("fontpkg_abeezee", "ABeeZee-Italic.ttf"),
}
"""Both under the SIL Open Font License; ABeeZee has letterforms a six-year-old knows, but no ≠."""


def assets(site: Site) -> Mapping[str, bytes | str]:
    """Each file's address from the site's root, and what is in it."""
    fonts = {name: _font(package, file) for name, (package, file) in _FONTS.items()}
    return {"catalogue.json": catalogue(site), **fonts}


def _font(package: str, file: str) -> bytes:
    spec = find_spec(package)
    if spec is None or spec.origin is None:
        raise RuntimeError(f"the package {package.replace('_', '-')} is not installed: run pip install -e . again")
    return (Path(spec.origin).parent / "files" / file).read_bytes()
