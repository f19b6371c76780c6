"""The site's scripts, ``hooks/scripts/``: modules joined into one script for a page, and run here where Python asks."""
