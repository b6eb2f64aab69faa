"""The new water of a tank: the source it is filled from, one that is named, or a blend of them."""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from bot.chat.supply import Supply, Unclear, latitude, pure_supply, read, treated
from bot.chat.turn import Turn
from bot.chat.words import waters as words
from bot.store.tanks import Facet, StoredTank
from core.advice.blending import blended, pure
from core.advice.seasons import SEASONS, Season, in_force, outdated
from core.advice.state import Measured, State, newest
from core.message import blends
from core.message.fold import fold
from core.message.waters import PURE, kind_of, mentioned, one_of

LOOKED_AT: Final = 400
"""Newest readings of a source that are looked through."""


@dataclass
class Waters:
    """The sources of a chat, looked up once a turn."""

    turn: Turn
    sources: Sequence[StoredTank]
    warm: float | None = None
    """Temperature of water that nobody measured, where it is blended: the tank's. [°C]"""
    held: dict[int, Supply] = field(default_factory=dict)

    @classmethod
    async def of(cls, turn: Turn, warm: float | None = None) -> Waters:
        """Look the sources of the chat up."""
        return cls(turn, await turn.uow.tanks.sources_of_chat(turn.chat.id), warm)

    def as_warm_as(self, reading: Measured | None) -> Waters:
        """The same once a tank's warmth is known: what is blended is blended again."""
        warm = None if reading is None else reading.value
        held = {of: supply for of, supply in self.held.items() if not supply.parts}
        return Waters(self.turn, self.sources, warm, held)

    def default_for(self, stored: StoredTank) -> StoredTank | None:
        """The source that a tank is filled from: the chosen one, else the first one."""
        chosen = next((each for each in self.sources if each.id == stored.source_id), None)
        return chosen or (self.sources[0] if self.sources else None)

    def named(self, name: str) -> StoredTank | None:
        """The source that a name means: spelt so, or of the same kind in other words."""
        plain = " ".join(fold(name).split())
        for source in self.sources:
            if fold(source.name) == plain:
                return source
        kind = kind_of(name)
        alike = [each for each in self.sources if kind and kind_of(each.name) == kind]
        return alike[0] if alike else None

    def by_id(self, source_id: int) -> StoredTank:
        """The source of an id that the store itself gave out."""
        return next(source for source in self.sources if source.id == source_id)

    async def is_measured(self, source: StoredTank) -> bool:
        """Whether a source has readings of its own."""
        return bool(await self.turn.uow.log.readings(source.id, limit=1))

    async def supply(self, source: StoredTank) -> Supply:
        """A source as it stands today; of a blend, its parts as they do."""
        if source.id not in self.held:
            made = self._blend(source) if source.blend else self._measured(source)
            self.held[source.id] = await made
        return self.held[source.id]

    async def of_name(self, name: str) -> Supply | None:
        """The water of a name: a source, or pure water; None for one that nobody knows."""
        source = self.named(name)
        if source is not None:
            return await self.supply(source)
        kind = kind_of(name)
        return pure_supply(self.turn, kind) if kind in PURE else None

    async def mixed(self, parts: Sequence[tuple[Supply, float]], name: str) -> Supply:
        """A blend of waters, also in the other season and stood where its parts tell."""
        flat = Supply(
            name,
            blended([(part.state, share) for part, share in parts], name, warm=self.warm),
            treated=math.fsum(part.treated * share for part, share in parts),
            parts=tuple((part.name, share) for part, share in parts),
            certain=all(part.certain for part, _ in parts),
            season=next((part.season for part, _ in parts if part.season), None),
            measured_at=min((p.measured_at for p, _ in parts if p.measured_at), default=None),
            pure=all(part.pure for part, _ in parts),
        )
        if any(part.stood for part, _ in parts):
            stood = [(part.stood or part.state, share) for part, share in parts]
            flat = replace(flat, stood=blended(stood, name, warm=self.warm))
        if any(part.other for part, _ in parts):
            other = [(part.other or part, share) for part, share in parts]
            flat = replace(flat, other=replace(await self.mixed(other, name), other=None))
        return flat

    async def _blend(self, source: StoredTank) -> Supply:
        by_id = {each.id: each for each in self.sources}
        parts: list[tuple[Supply, float]] = []
        for part in source.blend:
            if part.source_id is None:
                parts.append((pure_supply(self.turn, part.pure or "ro"), part.share))
            elif part.source_id in by_id:
                parts.append((await self.supply(by_id[part.source_id]), part.share))
        return await self.mixed(parts, source.name)

    async def _measured(self, source: StoredTank) -> Supply:
        told = await self._readings(source)
        profiles = {
            season: await self._readings(source.facets[season])
            for season in SEASONS
            if season in source.facets
        }
        now, place = self.turn.local_now, latitude(self.turn)
        found = in_force(told, profiles, now, place)
        kind = kind_of(source.name)
        lacking = pure(source.name, now).readings if kind in PURE else {}
        supply = Supply(
            source.name,
            State(source.tank, now, readings={**lacking, **found.readings}),
            season=found.season,
            certain=found.certain,
            measured_at=None if lacking else outdated(found.readings, now, place),
            pure=bool(lacking),
        )
        supply = replace(supply, treated=treated(supply))
        if (once_stood := source.facets.get("stood")) is not None:
            stood = newest(await self._readings(once_stood))
            if stood:
                state = supply.state
                held = replace(state, readings={**state.readings, **stood})
                supply = replace(supply, stood=held)
        if found.other:
            other = replace(supply.state, readings=found.other)
            season: Season = "winter" if found.season == "summer" else "summer"
            apart = replace(supply, state=other, season=season, stood=None)
            supply = replace(supply, other=apart)
        return supply

    async def _readings(self, body: StoredTank) -> list[Measured]:
        rows = await self.turn.uow.log.readings(body.id, limit=LOOKED_AT)
        return read(self.turn, rows, body.tank)

    async def asked(
        self, said: str | None, text: str, stored: StoredTank
    ) -> Supply | Unclear | None:
        """The new water that a question names; None where it names none.

        Parameters
        ----------
        said : str or None
            A blend in the keeper's words.
        text : str
            The question.
        stored : StoredTank
            The tank.
        """
        # Only here the keeper's own names are known, which may be of several words.
        blend = blends.find(self.turn.incoming.text, self.names)
        if blend is None:
            blend = blends.find(text, self.names) if said is None else self.find_blend(said)
        if blend is not None:
            return await self.of_blend(blend, stored)
        name = self._mentioned(text)
        return None if name is None else await self.of_name(name)

    def find_blend(self, said: str) -> blends.Blend | None:
        """The blend of words that are known to speak of new water alone."""
        return blends.find(f"30% with {said}", self.names)

    @property
    def names(self) -> list[str]:
        """The keeper's names of their waters."""
        return [source.name for source in self.sources]

    async def all_named(self, text: str) -> list[Supply]:
        """Every water that a text names, each once: the keeper's own, and pure ones."""
        said = {" ".join(fold(name).split()): name for name in self.names}
        own = re.findall(rf"(?<!\w)(?:{one_of(said)})(?!\w)", fold(text)) if said else []
        told = [said[" ".join(name.split())] for name in own]
        told += [kind for _, _, kind in mentioned(text)]
        found = [await self.of_name(name) for name in told]
        return list({supply.name: supply for supply in found if supply is not None}.values())

    async def of_blend(self, blend: blends.Blend, stored: StoredTank | None) -> Supply | Unclear:
        """The water of a blend in words; what it leaves open is the tank's own source."""
        if not blend.adds_up:
            return Unclear("shares", tuple(p.name for p in blend.parts), blend.total)
        parts: list[tuple[Supply, float]] = []
        for part in blend.parts:
            found = await self.of_name(part.name)
            if found is None:
                return Unclear("unknown", (part.name,))
            parts.append((found, part.share or 0.0))
        if blend.rest > 0.0:
            own = None if stored is None else self.default_for(stored)
            if own is None:
                return Unclear("rest", tuple(p.name for p in blend.parts), blend.rest)
            parts.append((await self.supply(own), blend.rest))
        whole = math.fsum(share for _, share in parts)
        parts = [(part, share / whole) for part, share in parts]
        name = words.blend([(part.name, share) for part, share in parts])
        return await self.mixed(parts, name)

    def _mentioned(self, text: str) -> str | None:
        """The water that a text names: one of the keeper's own first, the longest of them."""
        own = {" ".join(fold(source.name).split()): source.name for source in self.sources}
        if own:
            found = re.search(rf"(?<!\w)(?:{one_of(own)})(?!\w)", fold(text))
            if found is not None:
                return own[" ".join(found[0].split())]
        for _, _, kind in mentioned(text):
            if kind in PURE or any(kind_of(source.name) == kind for source in self.sources):
                return kind
        return None


FACETS: Final[tuple[Facet, ...]] = ("winter", "summer", "stood")
