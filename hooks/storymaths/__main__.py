"""``python -m storymaths``."""

from .commands.program import run

run()
