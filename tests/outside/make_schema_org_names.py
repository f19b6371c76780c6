"""Makes ``schema_org_names.json``: the types we use, what they are kinds of, their properties, and what each may hold.

Get ``schema-dts`` 2.1.0 (the schema.org vocabulary as TypeScript declarations) by name from the npm registry with
``npm pack``, unpack it, and from ``tests/`` run ``python -m outside.make_schema_org_names FOLDER/dist/schema.d.ts``.
Facts only are kept: names, and which belongs to which.
"""

from __future__ import annotations

import json
import re
import sys
from pathlib import Path

NAMES = Path(__file__).parent / "schema_org_names.json"
USED = (
    "Book", "CollectionPage", "CreativeWork", "CreativeWorkSeries", "DataCatalog", "DataDownload", "Dataset",
    "DefinedTerm", "DefinedTermSet", "LearningResource", "Organization", "ShortStory", "WebPage", "WebSite",
)  # fmt: skip
"""The types our pages say they are; whoever adds one adds it here and makes the file again."""
_BASE = re.compile(r"^interface (\w+)Base extends (.+?) \{$(.*?)^\}", re.MULTILINE | re.DOTALL)
_LEAF = re.compile(r"^export interface (\w+)Leaf extends (\w+)Base \{", re.MULTILINE)
_PROPERTY = re.compile(r'^    "(\w+)"\?: SchemaValue<(.+?), "\w+">;', re.MULTILINE)


def names(declarations: str) -> dict[str, dict[str, object]]:
    """What the declarations say of the used types and of all they are kinds of."""
    bases = {name: (parents, body) for name, parents, body in _BASE.findall(declarations)}
    leaves = dict(_LEAF.findall(declarations))
    found: dict[str, dict[str, object]] = {}
    wanted = list(USED)
    while wanted:
        name = wanted.pop()
        if name in found:
            continue
        parents, body = bases.get(name, (f"{leaves.get(name, '')}Base", ""))
        above = sorted(parent for parent in re.findall(r"(\w+)Base", parents) if parent)
        holds = {key: sorted(set(kinds.split(" | ")) - {"IdReference"}) for key, kinds in _PROPERTY.findall(body)}
        found[name] = {"is_a": above, "properties": dict(sorted(holds.items()))}
        wanted += above
    return dict(sorted(found.items()))


def main() -> None:
    """Writes the file from the declarations named on the command line."""
    made = {
        "source": "schema.org vocabulary, as declared by npm schema-dts 2.1.0 (Apache-2.0)",
        "made_by": "tests/outside/make_schema_org_names.py",
        "types": names(Path(sys.argv[1]).read_text(encoding="utf-8")),
    }
    text = json.dumps(made, ensure_ascii=False, indent=1)
    # A list of names on a line of its own reads better than a name on each.
    text = re.sub(r"\[\s+([^\[\]{}]*?)\s+\]", lambda m: "[" + " ".join(m.group(1).split()) + "]", text)
    NAMES.write_text(text + "\n", encoding="utf-8")


if __name__ == "__main__":
    main()
