"""The kinds of page an author may write, each by its schema. How each is drawn and published: ``publish/page_kinds/``."""

from __future__ import annotations

from collections.abc import Mapping

from .any_book import AnyBook
from .book import Book
from .home import Home
from .page import Page
from .page_fields import PageFields
from .series import Series
from .session import Session
from .story import Story

SCHEMAS: Mapping[str, type[PageFields]] = {
    schema.kind_name(): schema for schema in (Book, Story, Session, Home, AnyBook, Series, Page)
}
"""By what authors write as ``kind:``, in the order in which authors are told of them."""
