"""What cannot be done as asked, in words for the person who asked."""

from __future__ import annotations


class Refused(Exception):
    """Nothing was changed; the message says why and what to do."""
