"""The files of a collection in the form of this version: each change of the table made, and nothing else."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import yaml

from ..edits.edit import EditRefused
from .changes import Change, Given, Joined, Renamed
from .spans import Edit, Yaml, child, edited, entries, front_matter_in, line_break_of, yaml_in
from .to_bends import ByHand, to_bends


@dataclass
class Rewriting:
    """Texts by their path in the collection, as they are being rewritten."""

    texts: dict[str, str]
    """A file that has become part of another is no longer among them."""
    by_hand: list[str] = field(default_factory=list)
    """What its author has to do, in a line each."""

    def make(self, changes: Sequence[Change]) -> None:
        """Makes every change."""
        for change in changes:
            if isinstance(change, Renamed):
                for path in self._of(change.file, change.kinds):
                    self._edit(path, self._rename(path, change))
            elif isinstance(change, Joined):
                self._join(change)
            elif isinstance(change, Given):
                if change.file in self.texts:
                    self._edit(change.file, self._give(change))
            else:
                for path in self._of("", change.kinds):
                    try:
                        self._edit(path, to_bends(self.texts[path]))
                    except (ByHand, EditRefused) as why:
                        self.by_hand.append(f"{path}: {str(why).rstrip('.')}.")

    def set_line(self, path: str, field: str, value: str) -> None:
        """Gives a field at the outermost level of a file its value; one that is not there yet goes to the end."""
        text = self.texts[path]
        part = yaml_in(text)
        there = child(part.root, field) if part else None
        if part and there:
            start, end = there[1].start_mark.index, there[1].end_mark.index
            self._edit(path, [Edit(part.at + start, part.at + end, value if end > start else f" {value}")])
        elif part:
            nl = line_break_of(text)
            self.texts[path] = f"{text.rstrip()}{nl}{field}: {value}{nl}"

    def _edit(self, path: str, edits: Sequence[Edit] | Iterator[Edit]) -> None:
        self.texts[path] = edited(self.texts[path], edits)

    def _of(self, file: str, kinds: Sequence[str]) -> list[str]:
        """The paths of a file that is there, or of every page of some kinds."""
        if file:
            return [file] if file in self.texts else []
        return [path for path in self.texts if path.endswith(".md") and self._kind(path) in kinds]

    def _kind(self, path: str) -> str:
        part = self._part(path)
        kind = child(part.root, "kind") if part else None
        return str(kind[1].value) if kind else ""

    def _part(self, path: str) -> Yaml | None:
        text = self.texts[path]
        return front_matter_in(text) if path.endswith(".md") else yaml_in(text)

    def _rename(self, path: str, change: Renamed) -> Iterator[Edit]:
        part = self._part(path)
        for mapping, (key, _) in entries(part.root, change.was.split(".")) if part else ():
            assert part is not None
            if child(mapping, change.now):
                self.by_hand.append(f"{path}: {change.was} is now called {change.now}, and both are there; keep one.")
            else:
                yield Edit(part.at + key.start_mark.index, part.at + key.end_mark.index, change.now)

    def _join(self, change: Joined) -> None:
        was, now = self.texts.get(change.was), self.texts.get(change.now)
        if was is None or now is None:
            return
        one, other = yaml_in(was), yaml_in(now)
        if one is None or other is None or one.root.flow_style or other.root.flow_style:
            self.by_hand.append(f"{change.was}: put what it says into {change.now}, and take the file away.")
            return
        both = [key.value for key, _ in one.root.value if child(other.root, key.value)]
        if both:
            self.by_hand.append(f"{change.was}: {change.now} says {', '.join(both)} as well; keep one of each there.")
            return
        nl = line_break_of(now)
        self.texts[change.now] = f"{now.rstrip()}{nl}{nl}{nl.join(one.words.splitlines())}{nl}"
        del self.texts[change.was]

    def _give(self, change: Given) -> Iterator[Edit]:
        part = self._part(change.file)
        *above, name = change.field.split(".")
        for _, (_, mapping) in entries(part.root, above) if part else ():
            if part and isinstance(mapping, yaml.MappingNode) and mapping.value and not child(mapping, name):
                first = mapping.value[0][0].start_mark
                between = ", " if mapping.flow_style else line_break_of(part.words) + " " * first.column
                at = part.at + first.index
                yield Edit(at, at, f"{name}: {change.value}{between}")
