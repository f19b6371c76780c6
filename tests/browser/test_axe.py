"""Axe finds what is planted in every window and light; a page that was found right is read again once it is another."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from . import axe_kept
from .axe import faults_in_every_light
from .pages_of_every_kind import TEMPLATES
from .server import serving

PLANTED = """() => {
    const styles = document.styleSheets[0];
    const only = (when, rule) => styles.insertRule(when ? `@media ${when} { ${rule} }` : rule, styles.cssRules.length);
    const wide = '(min-width: 60rem)', night = '(prefers-color-scheme: dark)';
    only(night, '#by-night { color: #333; background: #222 }');
    only(`${wide} and (prefers-color-scheme: light)`, '#wide { color: #ddd; background: #eee }');
    only(`${wide} and ${night}`, '#wide-by-night { color: #333; background: #222 }');
    only('', '#wide-alone { display: none }');
    only(wide, '#wide-alone { display: block }');
    only(wide, '#small button { width: 9px; height: 9px; min-height: 0; min-width: 0; padding: 0; border: 0; margin: 0 }');
    document.querySelector('main').insertAdjacentHTML('beforeend', `
        <img id="unnamed" src="look/mark.svg"><p id="by-night">By night</p><p id="wide">Wide</p>
        <p id="wide-by-night">Wide by night</p><div id="wide-alone"><button></button></div>
        <p id="small"><button aria-label="one"></button><button aria-label="two"></button></p>`);
}"""
FOUND = {
    "narrow, by day": "image-alt",
    "colours, narrow, by night": "color-contrast",
    "wide, by day": "target-size",
    "seen wide alone, by day": "button-name",
    "colours, wide, by day": "color-contrast",
    "colours, wide, by night": "color-contrast",
}


def test_what_is_planted_is_found_where_it_shows(page: Page, base: str) -> None:
    page.goto(base + TEMPLATES["not found"])
    page.evaluate(PLANTED)
    found = faults_in_every_light(page)
    assert {where: {fault.split(":")[0] for fault in faults} for where, faults in found.items()} == {
        where: {rule} for where, rule in FOUND.items()
    }


SITE = {
    "index.html": '<!doctype html><link rel="stylesheet" href="style.css"><p><img src="one.svg" alt=""></p><input>',
    "style.css": "p { background: url(ground.svg) }",
    "one.svg": '<svg xmlns="http://www.w3.org/2000/svg"/>',
    "ground.svg": '<svg xmlns="http://www.w3.org/2000/svg"/>',
}


def test_a_page_that_was_found_right_is_read_again_once_anything_of_it_is_another(
    page: Page, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    read: list[axe_kept.Faults] = []

    def hash_of_page(name: str = "", change: str = "", then: str = "") -> str:
        for file, text in SITE.items():
            (tmp_path / file).write_text(text + (change if file == name else ""), "utf-8")
        with serving(tmp_path) as address:
            page.goto(address)
            page.evaluate(then)
            read.append(axe_kept.unless_kept(page, lambda: {"read": ["again"]}))
            return axe_kept.hash_of(page)

    monkeypatch.setattr(axe_kept, "run_folder", lambda: tmp_path)
    first = hash_of_page()
    monkeypatch.setattr(axe_kept, "_kept", lambda: {first})
    assert hash_of_page() == first, "from another port"
    others = [hash_of_page(name, " ") for name in SITE if name != "index.html"]
    others += [hash_of_page("index.html", "<p>more</p>"), hash_of_page(then="document.querySelector('input').focus()")]
    others += [hash_of_page(then="document.querySelector('input').value = 'typed'")]
    assert len({first, *others}) == 1 + len(others)
    again = {"read": ["again"]}
    assert read == [again, {}, *([again] * len(others))]
