"""The table of what is proposed for a session, in the order of its fields."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from ..model.collection import Collection
from .cautions import propose_cautions
from .draft import Draft, draft_of
from .materials import propose_materials
from .minutes import propose_minutes
from .objectives import propose_objectives, propose_revisits
from .preparation import propose_preparation
from .proposal import Proposal
from .signs import propose_signs
from .stems import propose_stems
from .versions import propose_versions
from .words import propose_words

FIELDS: tuple[Callable[[Draft], Iterator[Proposal]], ...] = (
    propose_minutes,
    propose_objectives,
    propose_revisits,
    propose_words,
    propose_signs,
    propose_stems,
    propose_materials,
    propose_cautions,
    propose_versions,
    propose_preparation,
)


def proposals(collection: Collection, path: str, text: str) -> tuple[Proposal, ...]:
    """What could be put into a session, whose text is as it stands now; nothing for a page that is none.

    ``path`` is from the project root. A value that is there is never changed by any of them.
    """
    draft = draft_of(collection, path, text)
    return () if draft is None else proposals_for(draft)


def proposals_for(draft: Draft) -> tuple[Proposal, ...]:
    """What could be put into a session as far as it is written."""
    return tuple(one for propose in FIELDS for one in propose(draft))
