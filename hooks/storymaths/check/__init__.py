"""The rules: each a file with a ``RULE`` and a ``check``, from the collection to problems."""
