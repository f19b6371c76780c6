"""The letterforms that are served: small, with every sign we print, and within their licence."""

from __future__ import annotations

import io

import pytest
from fontTools.ttLib import TTFont
from project import PROJECT, ROOT
from storymaths.publish.font_subsetting import ACCENTS, cut
from storymaths.publish.font_subsetting import SIGNS as SIGNS_CUT
from storymaths.publish.fonts import _FONTS, _file, letterforms

KEPT = PROJECT / ".cache" / "letterforms"

SIGNS = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789+−×÷=≠<>£½¼¾°“”‘’–…é"


@pytest.mark.parametrize("address", ["fonts/text.woff2", "fonts/child.woff2"])
def test_every_sign_we_print_is_there(address: str) -> None:
    font = TTFont(io.BytesIO(letterforms(KEPT)[address]))
    assert [sign for sign in SIGNS if ord(sign) not in font.getBestCmap()] == []


def test_they_do_not_tell_when_they_were_cut(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "86400")  # what fontTools takes for the clock
    cut_again = cut(_file(_FONTS["abeezee"]), "Storymaths Child")
    assert cut_again == letterforms(KEPT)["fonts/child.woff2"]


def test_they_are_small() -> None:
    sizes = {name: len(content) for name, content in letterforms(KEPT).items()}
    assert sizes["fonts/text.woff2"] + sizes["fonts/child.woff2"] < 21_000
    assert sum(sizes.values()) < 35_000


@pytest.mark.parametrize("face", ["text", "child"])
def test_each_sign_is_asked_of_the_file_that_has_it(face: str) -> None:
    """CSS Fonts 4, 4.5: of a family's files a browser fetches only those whose ``unicode-range`` has a sign of the page."""
    values = (ROOT / "hooks/theme/look/values.css").read_text(encoding="utf-8")
    for part in ("", "-accents"):
        rule = values.split(f'url("../fonts/{face}{part}.woff2")')[1].split("}")[0]
        ranges = [
            one.strip().removeprefix("U+").split("-")
            for one in rule.split("unicode-range:")[1].rstrip(" ;\n").split(",")
        ]
        asked = {sign for first, *last in ranges for sign in range(int(first, 16), int([first, *last][-1], 16) + 1)}
        held = {*TTFont(io.BytesIO(letterforms(KEPT)[f"fonts/{face}{part}.woff2"])).getBestCmap()}
        assert held <= asked, sorted(map(chr, held - asked))
        assert asked == (ACCENTS if part else SIGNS_CUT)


def test_a_changed_face_does_not_go_by_its_reserved_name_and_keeps_its_licence() -> None:
    # SIL Open Font License 1.1, clauses 2 and 3.
    for content in letterforms(KEPT).values():
        names = {record.nameID: str(record) for record in TTFont(io.BytesIO(content))["name"].names}
        assert "ABeeZee" not in names[1] + names[4] + names[6]
        assert "Copyright" in names[0]
        assert "SIL Open Font License" in names[13]


def test_the_stylesheet_asks_for_no_other_file() -> None:
    values = (ROOT / "hooks/theme/look/values.css").read_text(encoding="utf-8")
    assert {f"fonts/{part.split(chr(34))[0]}" for part in values.split('url("../fonts/')[1:]} == set(letterforms(KEPT))
