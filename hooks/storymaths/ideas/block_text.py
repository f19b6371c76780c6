"""The lines of an activity as an author types them: a key a line, short lists on it, longer ones below it."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping

from ..model.plain import Plain

_WIDTH, _STEP = 140, "  "
_PLAIN = re.compile(r"[A-Za-z_(][^:#\[\]{},\"'|>&*!%@`?\n]*(?<! )")
"""What YAML reads as the text it is, without quotation marks; in a list as well."""
_ON_A_LINE = re.compile(r"[A-Za-z_(](?:[^:#\"\n]|:(?! ))*(?<![ :])")
"""The same where nothing but the text stands on the line."""
_NO_TEXT = frozenset("true false yes no on off null y n ~".split())


def block_text(lines: Mapping[str, Plain]) -> str:
    """The block, ending with a line break."""
    return "".join(f"{line}\n" for key, value in lines.items() for line in _field(key, value, ""))


def _field(key: str, value: Plain, indent: str) -> Iterator[str]:
    inline = f"{indent}{key}: {_text(value, _ON_A_LINE) if isinstance(value, str) else _flow(value)}"
    if len(inline) <= _WIDTH or isinstance(value, (str, int)):
        yield inline
        return
    yield f"{indent}{key}:"
    if isinstance(value, dict):
        for name, part in value.items():
            yield from _field(_flow(name), part, indent + _STEP)
    else:
        yield from (f"{indent}{_STEP}- {_flow(part)}" for part in value)


def _flow(value: Plain) -> str:
    """A value as it stands within a list."""
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, int):
        return str(value)
    if isinstance(value, str):
        return _text(value, _PLAIN)
    if isinstance(value, dict):
        return f"{{{', '.join(f'{_flow(name)}: {_flow(part)}' for name, part in value.items())}}}"
    return f"[{', '.join(map(_flow, value))}]"


def _text(value: str, plain: re.Pattern[str]) -> str:
    bare = plain.fullmatch(value) and value.lower() not in _NO_TEXT
    return value if bare else json.dumps(value, ensure_ascii=False)
