"""A curriculum in the shape of CASE: a document, its items, and how they belong together.

Source: *Competencies and Academic Standards Exchange (CASE) Service* 1.1, 1EdTech, the CFPackage class. The codes
and years are the published facts; the statements are our own short words, and each package says so.
"""

from __future__ import annotations

from typing import Any

from ...model.address import LISTS
from ...model.fields import year_name
from ...model.objective import Framework, Objective
from ...render.site import Site
from ..linked_data.node import licence_at
from .latest import midnight
from .stable_ids import StableIds

Record = dict[str, Any]
_LANGUAGE = "en"
_OURS = "The codes and years are those of the published documents; the words of each statement are ours."
_OWN_PART = "A part of the objective above it, split off and worded by us; the document gives it no code."
_OWN_LABEL = "The document gives no code; this label is ours."


def address(framework: str) -> str:
    """Where a framework's package stands, from the site's root."""
    return f"open-data/curricula/{framework}.json"


def curriculum(framework: Framework, site: Site) -> Record:
    """The package of one framework. The site's address must be known."""
    return _Package(framework, site).whole()


class _Package:
    """One framework on its way into a package: its ids and addresses, and the moment it last changed."""

    def __init__(self, framework: Framework, site: Site) -> None:
        self._framework, self._site = framework, site
        self._ids = StableIds(site.collection.reference.imprint.identity)
        self._changed = midnight(framework.revised)
        self._licence_at = licence_at(site, LISTS["open-data"], site.settings.full_address)

    def whole(self) -> Record:
        strands = [self._strand(key, name) for key, name in self._framework.strands.items()]
        objectives = [self._objective(objective) for objective in self._framework.objectives]
        return {
            "CFDocument": self._document(),
            "CFItems": [*strands, *objectives, *self._parts()],
            "CFAssociations": [*self._hierarchy(), *self._of_parts(), *self._order(), *self._successors()],
            "CFDefinitions": {"CFLicenses": [self._licence()]},
        }

    def _named(self, *name: str, of: str = "") -> Record:
        """Id, address and time of change; the address leads into the package of framework ``of``, or this one."""
        made = str(self._ids.of(*name))
        uri = f"{self._site.settings.full_address(address(of or self._framework.id))}#{made}"
        return {"identifier": made, "uri": uri, "lastChangeDateTime": self._changed}

    def _link(self, title: str, *name: str, of: str = "") -> Record:
        named = self._named(*name, of=of)
        return {"title": title, "identifier": named["identifier"], "uri": named["uri"]}

    def _document(self) -> Record:
        framework, imprint = self._framework, self._site.collection.reference.imprint
        documents = "; ".join(
            f"{source.title} ({source.publisher}, {source.date}{f', {source.reference}' if source.reference else ''})"
            for source in framework.sources
        )
        document: Record = {
            **self._named("framework", framework.id),
            "uri": self._site.settings.full_address(address(framework.id)),
            "caseVersion": "1.1",
            "title": framework.name,
            "creator": "; ".join(dict.fromkeys(source.publisher for source in framework.sources)),
            "publisher": imprint.publisher,
            "description": f"Made from: {documents}.",
            "subject": ["Mathematics"],
            "language": _LANGUAGE,
            "version": framework.revised.isoformat(),
            "statusStartDate": framework.taught_from.isoformat(),
            "licenseURI": self._link(imprint.licence.terms.name, "licence", self._licence_at),
            "notes": _OURS,
        }
        if framework.status == "statutory":
            document["adoptionStatus"] = "Adopted"
        if framework.taught_until:
            document["statusEndDate"] = framework.taught_until.isoformat()
        return document

    def _licence(self) -> Record:
        return {
            **self._named("licence", self._licence_at),
            "title": self._site.collection.reference.imprint.licence.terms.name,
            "licenseText": self._licence_at,
        }

    def _strand(self, key: str, name: str) -> Record:
        item: Record = {
            **self._named("strand", self._framework.id, key),
            "CFItemType": "Strand",
            "fullStatement": name,
            "language": _LANGUAGE,
        }
        # Where the document gives a strand no code, it goes by its name.
        return item if key.casefold() == name.casefold() else item | {"humanCodingScheme": key}

    def _objective(self, objective: Objective) -> Record:
        item: Record = {
            **self._named("objective", self._framework.id, objective.code),
            "CFItemType": "Objective",
            "fullStatement": objective.says,
            "humanCodingScheme": objective.code,
            "educationLevel": [year_name(objective.year)],
            "language": _LANGUAGE,
        }
        ideas = self._site.ideas_of.get((self._framework.id, objective.code), [])
        if ideas:
            item["conceptKeywords"] = [idea.name for idea in ideas]
        if objective.own_label:
            item["notes"] = _OWN_LABEL
        return item

    def _parts(self) -> list[Record]:
        return [
            {
                **self._named("part", self._framework.id, objective.code, part.id),
                "CFItemType": "Part",
                "fullStatement": part.says,
                "educationLevel": [year_name(objective.year)],
                "language": _LANGUAGE,
                "notes": _OWN_PART,
            }
            for objective in self._framework.objectives
            if objective.has_parts
            for part in objective.parts
        ]

    def _of_parts(self) -> list[Record]:
        return [
            self._association(
                "isChildOf",
                self._link(part.says, "part", self._framework.id, objective.code, part.id),
                self._item_link(objective),
                sequenceNumber=number,
            )
            for objective in self._framework.objectives
            if objective.has_parts
            for number, part in enumerate(objective.parts, 1)
        ]

    def _association(self, kind: str, origin: Record, destination: Record, **more: int) -> Record:
        return {
            **self._named("association", kind, origin["identifier"], destination["identifier"]),
            "associationType": kind,
            **more,
            "originNodeURI": origin,
            "destinationNodeURI": destination,
        }

    def _item_link(self, objective: Objective) -> Record:
        return self._link(objective.code, "objective", self._framework.id, objective.code)

    def _hierarchy(self) -> list[Record]:
        framework, found = self._framework, list[Record]()
        top = self._link(framework.name, "framework", framework.id)
        top["uri"] = self._site.settings.full_address(address(framework.id))
        for place, (key, name) in enumerate(framework.strands.items(), 1):
            strand = self._link(name, "strand", framework.id, key)
            found.append(self._association("isChildOf", strand, top, sequenceNumber=place))
            within = [objective for objective in framework.objectives if objective.strand == key]
            found += [
                self._association("isChildOf", self._item_link(objective), strand, sequenceNumber=number)
                for number, objective in enumerate(within, 1)
            ]
        return found

    def _order(self) -> list[Record]:
        by_code = {objective.code: objective for objective in self._framework.objectives}
        return [
            self._association("precedes", self._item_link(by_code[before]), self._item_link(objective))
            for objective in self._framework.objectives
            for before in objective.follows
        ]

    def _successors(self) -> list[Record]:
        found = []
        for objective in self._framework.objectives:
            if objective.replaced_by:
                other, _, code = objective.replaced_by.partition(":")
                successor = self._link(code, "objective", other, code, of=other)
                found.append(self._association("replacedBy", self._item_link(objective), successor))
        return found
