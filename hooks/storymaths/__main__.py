"""``python -m storymaths``."""

from .cli import run

run()
