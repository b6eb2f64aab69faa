"""Tanks, the sources that they are filled from, and their kits."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, field, replace
from datetime import datetime
from typing import Any, Literal, cast

from sqlalchemy import Row, Select, Table, bindparam, func, select, update
from sqlalchemy.ext.asyncio import AsyncSession

from bot.store.models import KitRow, TankRow
from core.message.model import Basis, Kit
from core.tank import Setup, Tank, TankKind

Role = Literal["tank", "source", "facet"]
Facet = Literal["winter", "summer", "stood"]
"""What is measured of a source apart: by season, or once it has stood in air."""


@dataclass(frozen=True, slots=True)
class Share:
    """A part of a blend: so much of a source by its id, or of a pure water by its name."""

    share: float
    source_id: int | None = None
    pure: str | None = None


@dataclass(frozen=True, slots=True)
class StoredTank:
    """A tank with the id that the store knows it by."""

    id: int
    chat_id: int
    tank: Tank
    role: Role = "tank"
    source_id: int | None = None
    facet: Facet | None = None
    facet_of: int | None = None
    facets: Mapping[Facet, StoredTank] = field(default_factory=dict)
    blend: tuple[Share, ...] = ()

    @property
    def name(self) -> str:
        """The tank's name as the keeper spells it."""
        return self.tank.name


_TANKS, _KIT = cast("Table", TankRow.__table__), cast("Table", KitRow.__table__)
"""The tables themselves: for what every message reads, mapped objects cost more than all else."""
_LIVING: Select[Any] = (
    select(*_TANKS.c, _KIT.c.analyte, _KIT.c.basis, _KIT.c.per_drop, _KIT.c.good_until)
    .outerjoin(_KIT, _KIT.c.tank_id == _TANKS.c.id)
    .where(
        _TANKS.c.chat_id == bindparam("chat"),
        _TANKS.c.role == "tank",
        _TANKS.c.deleted_at.is_(None),
    )
    .order_by(_TANKS.c.id, _KIT.c.id)
)
_WATERS = (
    select(_TANKS)
    .where(
        _TANKS.c.chat_id == bindparam("chat"),
        _TANKS.c.role != "tank",
        _TANKS.c.deleted_at.is_(None),
    )
    .order_by(_TANKS.c.id)
)
_KITS = select(KitRow).where(KitRow.tank_id == bindparam("tank"))


class Tanks:
    """Queries about tanks, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session
        self._sources: dict[int, list[StoredTank]] = {}
        """Of each chat its sources, until a tank or a source changes."""

    async def of_chat(self, chat_id: int) -> list[StoredTank]:
        """All tanks of a chat that were not deleted, oldest first, with their kits."""
        found = await self._session.execute(_LIVING, {"chat": chat_id})
        tanks: dict[int, tuple[Row[Any], dict[str, Kit]]] = {}
        for row in found:
            _, kits = tanks.setdefault(row.id, (row, {}))
            if row.analyte is not None:
                kits[row.analyte] = _kit(row)
        return [_stored(row, kits) for row, kits in tanks.values()]

    async def sources_of_chat(self, chat_id: int) -> list[StoredTank]:
        """All source waters of a chat, oldest first, with their facets."""
        if chat_id in self._sources:
            return list(self._sources[chat_id])
        rows = await self._session.execute(_WATERS, {"chat": chat_id})
        held = [_stored(row, {}) for row in rows]
        facets: dict[int, dict[Facet, StoredTank]] = {}
        for water in held:
            if water.facet is not None and water.facet_of is not None:
                facets.setdefault(water.facet_of, {})[water.facet] = water
        sources = [water for water in held if water.facet is None]
        told = [replace(source, facets=facets.get(source.id, {})) for source in sources]
        self._sources[chat_id] = told
        return list(told)

    async def facet(self, source: StoredTank, facet: Facet, now: datetime) -> StoredTank:
        """Give one facet of a source, made where it is new."""
        if facet in source.facets:
            return source.facets[facet]
        made = await self.add(source.chat_id, Tank(f"{source.name} {facet}"), now, role="facet")
        await self.change(made.id, facet_of=source.id, facet=facet)
        return replace(made, facet=facet, facet_of=source.id)

    async def get(self, tank_id: int) -> StoredTank:
        """Give the tank of an id that the store itself gave out, deleted or not."""
        row = await self._session.get_one(TankRow, tank_id)
        kits = await self._session.scalars(_KITS, {"tank": tank_id})
        return _stored(row, {kit.analyte: _kit(kit) for kit in kits})

    async def add(
        self, chat_id: int, tank: Tank, now: datetime, *, role: Role = "tank"
    ) -> StoredTank:
        """Add a tank or a source; its name must not be taken by another of its role."""
        self._sources.clear()
        row = TankRow(
            chat_id=chat_id,
            role=role,
            name=tank.name,
            name_key=tank.name.casefold(),
            named=tank.named,
            kind=tank.kind,
            volume_l=tank.volume_l,
            soft=tank.soft,
            co2=tank.co2,
            setup=tank.setup,
            set_up_at=tank.set_up,
            created_at=now,
        )
        self._session.add(row)
        await self._session.flush()
        return _stored(row, {})

    async def change(self, tank_id: int, **columns: Any) -> None:
        """Set columns of one tank by name; a new name sets its key, a deletion frees it."""
        self._sources.clear()
        if "name" in columns:
            columns["name_key"] = columns["name"].casefold()
        if columns.get("deleted_at") is not None:
            columns["name_key"] = None
        await self._session.execute(update(TankRow).where(TankRow.id == tank_id).values(**columns))

    async def set_blend(self, source_id: int, blend: Sequence[Share]) -> None:
        """Let a source be mixed of others; of none, be a water of its own again."""
        held = [asdict(part) for part in blend] or None
        await self.change(source_id, blend=held)

    async def set_kit(self, tank_id: int, analyte: str, kit: Kit) -> None:
        """Keep how this tank's kit reads an analyte; what `kit` leaves None stays as it was."""
        row = await self._session.scalar(
            select(KitRow).where(KitRow.tank_id == tank_id, KitRow.analyte == analyte)
        )
        if row is None:
            row = KitRow(tank_id=tank_id, analyte=analyte)
            self._session.add(row)
        row.basis = kit.basis or row.basis
        row.per_drop = kit.per_drop or row.per_drop
        row.good_until = kit.good_until or row.good_until
        await self._session.flush()

    async def any_at_all(self) -> bool:
        """Tell whether this database holds a tank of anybody."""
        return bool(await self._session.scalar(select(func.count()).select_from(TankRow)))


def _kit(row: KitRow | Row[Any]) -> Kit:
    return Kit(
        basis=cast("Basis | None", row.basis), per_drop=row.per_drop, good_until=row.good_until
    )


def _stored(row: TankRow | Row[Any], kits: Mapping[str, Kit]) -> StoredTank:
    return StoredTank(
        id=row.id,
        chat_id=row.chat_id,
        role=cast("Role", row.role),
        source_id=row.source_id,
        facet=cast("Facet | None", row.facet),
        facet_of=row.facet_of,
        blend=tuple(Share(**part) for part in row.blend or ()),
        tank=Tank(
            name=row.name,
            kind=cast("TankKind", row.kind),
            volume_l=row.volume_l,
            soft=row.soft,
            co2=row.co2,
            setup=cast("Setup | None", row.setup),
            set_up=row.set_up_at,
            named=row.named,
            kits=kits,
        ),
    )
