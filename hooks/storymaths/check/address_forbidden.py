"""Links that lead to anything but a page, a website or a mailbox."""

from __future__ import annotations

from collections.abc import Iterator

from ..model.collection import Collection
from ..model.markup import SCHEMES
from ..model.problem import Problem
from ..model.rule import HOUSE_RULE, Rule
from .html_found import addresses_in, texts_of

RULE = Rule(
    name="address-forbidden",
    says="A link leads to a page of the site, to a website (https:) or to a mailbox (mailto:), and says so in full.",
    why="An address that begins in another way can run a script, open a program or read a file where the page is read.",
    source=HOUSE_RULE,
    wrong="[the answers](javascript:show())",
    right="[the answers](session-1.md#answers)",
)


def check(collection: Collection) -> Iterator[Problem]:
    """A problem for each address of a link that leads out of the site in a way that is not listed."""
    for page in collection.documents:
        for text in texts_of(page):
            for address in addresses_in(text.content):
                out = address.leads_out
                if out is not None and out not in SCHEMES and not address.picture:
                    yield RULE.problem(
                        text.place(address.line, address.written),
                        f'A link does not begin with "{out}{"" if out == "//" else ":"}".',
                        "link to a page as it is written from the folder of this file, or to a website with https:// in full.",
                    )
