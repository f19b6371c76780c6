"""Names that an author picks from a list: the type of each says which, for whoever offers the list."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from .fields import Id, ListedId, Text

PickedFrom = Literal[
    "concepts", "themes", "areas", "words", "materials", "cautions", "books", "cast", "facts", "frameworks"
]
"""A list of ``site_data/``, the books of the collection, or the characters of the book and what is told of them."""


@dataclass(frozen=True, slots=True)
class OneOf:
    """Stands beside the type of a name that is one of a list."""

    of: PickedFrom


AreaId = Annotated[ListedId, OneOf("areas")]
BookId = Annotated[Id, OneOf("books")]
CastId = Annotated[Id, OneOf("cast")]
CautionId = Annotated[ListedId, OneOf("cautions")]
ConceptId = Annotated[ListedId, OneOf("concepts")]
MaterialId = Annotated[ListedId, OneOf("materials")]
ThemeId = Annotated[ListedId, OneOf("themes")]
BankWord = Annotated[Text, OneOf("words")]
"""A word of the word bank."""
FactName = Annotated[Text, OneOf("facts")]
"""What is told of the characters of a book, such as ``mass``."""
