"""The author's command, ``storymaths``: one module a command, its arguments beside it; ``table.py`` lists them."""
