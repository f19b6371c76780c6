"""The settings for a web server that the README gives, read from there. ``tests/bench/try_nginx.py`` tries them on nginx.

What each directive does: nginx.org's documentation of ngx_http_core_module, ngx_http_map_module, ngx_http_headers_module.
"""

from __future__ import annotations

import re

import pytest
from project import ROOT

README = (ROOT / "README.md").read_text("utf-8")
SETTINGS = re.search(r"```nginx\n(.*?)```", README, re.DOTALL)[1]  # type: ignore[index]


def chosen(name: str, uri: str) -> str:
    """What the map ``name`` gives for an address: the first pattern that fits, else its default."""
    body = re.search(rf"map \$uri \${name} \{{\n(.*?)\n\}}", SETTINGS, re.DOTALL)
    assert body
    rows = dict(re.findall(r'^\s*(\S+)\s+"([^"]*)";', body[1], re.MULTILINE))
    fits = (value for pattern, value in rows.items() if pattern[0] == "~" and re.search(pattern[1:], uri))
    return next(fits, rows["default"])


def test_an_address_that_moved_may_be_as_long_as_a_path() -> None:
    # A key of a map must fit into a bucket with its value's address and its length; Linux's PATH_MAX is 4,096.
    (bucket,) = re.findall(r"^map_hash_bucket_size (\d+);", SETTINGS, re.MULTILINE)
    assert int(bucket) >= 4096
    assert SETTINGS.index("map_hash_bucket_size") < SETTINGS.index("map $uri"), "read before the first map is made"


@pytest.mark.parametrize(
    ("uri", "alone"),
    [("/books/a/cover.svg", True), ("/look/mark.svg", True), ("/index.html", False), ("/a.svg/b.html", False)],
)
def test_a_drawing_opened_by_itself_may_do_nothing(uri: str, alone: bool) -> None:
    policy = chosen("policy", uri)
    assert ("default-src 'none'; style-src 'unsafe-inline'" in policy) == alone
    assert "frame-ancestors 'self'" in policy
    assert "add_header Content-Security-Policy $policy always;" in SETTINGS


@pytest.mark.parametrize(("ending", "kind"), [("csv", "text/csv"), ("ics", "text/calendar")])
def test_tables_and_calendars_say_what_they_are(ending: str, kind: str) -> None:
    # RFC 4180 and RFC 5545 register the two types; Debian's list for nginx has neither.
    assert f"location ~ \\.{ending}$ {{ types {{ {kind} {ending}; }} }}" in SETTINGS
    assert re.search(rf"charset_types .*\b{kind}\b", SETTINGS)


def test_no_part_of_the_server_leaves_out_the_headers_of_the_whole() -> None:
    # add_header is inherited only where a location has none of its own.
    assert [inner for inner in re.findall(r"location [^{]*\{(.*)\}", SETTINGS) if "add_header" in inner] == []
