"""The tables. Times are UTC; what a keeper told us is only ever added to, never changed.

An `EntryRow` is one thing that somebody said or pressed; its readings and events belong to it.
A correction, an edit and an undo are new entries that *replace* an older one: what counts today
is what no later entry replaces, and history keeps the rest.
"""

from __future__ import annotations

from datetime import date, datetime
from typing import Any

from sqlalchemy import JSON, ForeignKey, Index, MetaData, Text, UniqueConstraint, false, text
from sqlalchemy.orm import DeclarativeBase, Mapped, mapped_column

from bot.store.types import UtcDateTime

NAMES = {
    "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    "uq": "uq_%(table_name)s_%(column_0_N_name)s",
    "ck": "ck_%(table_name)s_%(constraint_name)s",
    "fk": "fk_%(table_name)s_%(column_0_N_name)s",
    "pk": "pk_%(table_name)s",
}


class Base(DeclarativeBase):
    """The base of all tables, with fixed names for keys so that migrations are stable."""

    metadata = MetaData(naming_convention=NAMES)
    type_annotation_map = {  # noqa: RUF012 - SQLAlchemy reads this class attribute
        datetime: UtcDateTime,
        str: Text,
        dict[str, Any]: JSON,
    }


class ChatRow(Base):
    """A conversation with one person or a group on one messenger."""

    __tablename__ = "chats"
    __table_args__ = (UniqueConstraint("messenger", "external"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    messenger: Mapped[str]
    external: Mapped[str]
    is_group: Mapped[bool]
    zone: Mapped[str]
    zone_known: Mapped[bool]
    fahrenheit: Mapped[bool]
    us_gallons: Mapped[bool]
    language: Mapped[str]
    quiet: Mapped[str | None]
    paused_from: Mapped[datetime | None]
    """When a pause begins; NULL where it began as it was set."""
    paused_until: Mapped[datetime | None]
    tank_id: Mapped[int | None]
    """The tank used last; not a foreign key, so that either table can be made first."""
    created_at: Mapped[datetime]
    gone_at: Mapped[datetime | None]


class TankRow(Base):
    """A body of water that readings are about: a tank, or a source that tanks are filled from.

    `role` is tank, source or facet. `named` is false while a tank is the one made on the fly by a
    first reading. `source_id` is the source that a tank is filled from, where the keeper said so.
    A facet is what is measured of a source apart: in winter, in summer, or once it has stood.
    """

    __tablename__ = "tanks"
    __table_args__ = (UniqueConstraint("chat_id", "role", "name_key"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    chat_id: Mapped[int] = mapped_column(ForeignKey("chats.id"))
    name: Mapped[str]
    role: Mapped[str]
    name_key: Mapped[str | None]
    """The name casefolded: two tanks of a chat never differ by case alone. None once deleted,
    which frees the name."""
    named: Mapped[bool]
    kind: Mapped[str]
    volume_l: Mapped[float | None]
    soft: Mapped[bool]
    co2: Mapped[bool] = mapped_column(default=False, server_default=false())
    """Whether carbon dioxide is injected."""
    setup: Mapped[str | None]
    """What the keeper says that it is made for: planted, unplanted, reef or fish_only."""
    set_up_at: Mapped[datetime | None]
    """When the tank was set up, where the keeper said so."""
    source_id: Mapped[int | None] = mapped_column(ForeignKey("tanks.id"))
    facet_of: Mapped[int | None]
    """The source that a facet belongs to; no foreign key, which SQLite cannot add to a table."""
    facet: Mapped[str | None]
    """winter, summer or stood."""
    blend: Mapped[list[Any] | None] = mapped_column(JSON(none_as_null=True))
    """Where the source is mixed of others: each with its share and its id, or pure by its name."""
    created_at: Mapped[datetime]
    deleted_at: Mapped[datetime | None]


class KitRow(Base):
    """How a tank's kit reads one analyte: its basis, and what one drop stands for."""

    __tablename__ = "kits"
    __table_args__ = (UniqueConstraint("tank_id", "analyte"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    tank_id: Mapped[int] = mapped_column(ForeignKey("tanks.id"))
    analyte: Mapped[str]
    basis: Mapped[str | None]
    per_drop: Mapped[float | None]
    good_until: Mapped[date | None]


class ProductRow(Base):
    """A bought product: so much of it in so many litres raises an analyte, by label or learned."""

    __tablename__ = "products"
    __table_args__ = (UniqueConstraint("chat_id", "name_key", "analyte"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    chat_id: Mapped[int] = mapped_column(ForeignKey("chats.id"))
    name: Mapped[str]
    name_key: Mapped[str]
    amount: Mapped[float]
    unit: Mapped[str]
    litres: Mapped[float]
    analyte: Mapped[str]
    rise: Mapped[float]
    rise_low: Mapped[float]
    rise_high: Mapped[float]
    learned: Mapped[bool]
    kept_at: Mapped[datetime]


class EntryRow(Base):
    """One message, edit, correction, undo or button that stored something."""

    __tablename__ = "entries"
    __table_args__ = (UniqueConstraint("chat_id", "update_id"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    chat_id: Mapped[int] = mapped_column(ForeignKey("chats.id"))
    update_id: Mapped[str]
    message_ref: Mapped[str | None] = mapped_column(index=True)
    author_id: Mapped[str]
    author_name: Mapped[str]
    kind: Mapped[str]
    text: Mapped[str]
    at: Mapped[datetime]
    replaces: Mapped[int | None] = mapped_column(ForeignKey("entries.id"), index=True)


class ReadingRow(Base):
    """One value of an entry: as entered, and in canonical units (`low` = `high` for a number)."""

    __tablename__ = "readings"
    __table_args__ = (
        Index("ix_readings_newest", "tank_id", "measured_at"),
        Index("ix_readings_look_up", "tank_id", "analyte", "measured_at"),
    )

    id: Mapped[int] = mapped_column(primary_key=True)
    entry_id: Mapped[int] = mapped_column(ForeignKey("entries.id"), index=True)
    tank_id: Mapped[int] = mapped_column(ForeignKey("tanks.id"))
    analyte: Mapped[str]
    value: Mapped[float | None]
    low: Mapped[float | None]
    high: Mapped[float | None]
    qualifier: Mapped[str]
    unit: Mapped[str | None]
    canonical_low: Mapped[float | None]
    canonical_high: Mapped[float | None]
    canonical_unit: Mapped[str | None]
    basis: Mapped[str | None]
    measured_at: Mapped[datetime]


class EventRow(Base):
    """Something done to a tank or seen in it, as an entry told it."""

    __tablename__ = "events"
    __table_args__ = (Index("ix_events_look_up", "tank_id", "happened_at"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    entry_id: Mapped[int] = mapped_column(ForeignKey("entries.id"), index=True)
    tank_id: Mapped[int] = mapped_column(ForeignKey("tanks.id"))
    kind: Mapped[str]
    percent: Mapped[float | None]
    litres: Mapped[float | None]
    grams: Mapped[float | None]
    millilitres: Mapped[float | None]
    spoons: Mapped[float | None]
    count: Mapped[int | None]
    substance: Mapped[str | None]
    species: Mapped[str | None]
    text: Mapped[str | None]
    happened_at: Mapped[datetime]


class FindingRow(Base):
    """A finding that a keeper was told with an entry, so that it is not said again too soon."""

    __tablename__ = "findings"
    __table_args__ = (Index("ix_findings_look_up", "tank_id", "told_at"),)

    id: Mapped[int] = mapped_column(primary_key=True)
    entry_id: Mapped[int] = mapped_column(ForeignKey("entries.id"), index=True)
    tank_id: Mapped[int] = mapped_column(ForeignKey("tanks.id"))
    rule: Mapped[str]
    severity: Mapped[str]
    facts: Mapped[dict[str, Any]]
    told_at: Mapped[datetime]


class OfferRow(Base):
    """A reply that waits for an answer: its buttons, and what they would do."""

    __tablename__ = "offers"
    __table_args__ = (
        Index("ix_offers_latest", "chat_id", "id"),
        Index(
            "ix_offers_stands", "chat_id", "id",
            sqlite_where=text("stands"), postgresql_where=text("stands"),
        ),
    )  # fmt: skip

    id: Mapped[int] = mapped_column(primary_key=True)
    chat_id: Mapped[int] = mapped_column(ForeignKey("chats.id"))
    made_at: Mapped[datetime]
    message_ref: Mapped[str | None]
    entry_id: Mapped[int | None]
    """The entry that the reply confirms, so that answering the reply corrects that entry."""
    expects: Mapped[str | None]
    """What a plain answer to it would be ("volume", "tank"), None where only buttons count."""
    payload: Mapped[dict[str, Any]]
    used: Mapped[str | None]
    """The verb that was taken; a second press finds it and does no harm."""
    stands: Mapped[bool] = mapped_column(default=False, server_default=false())
    """It keeps what every message is held against until it is settled, such as a call for help."""


class ReminderRow(Base):
    """What is due and when; this table is the truth about reminders.

    `state` is due, sending, sent or parked and no other. `next_due` is the next occurrence by
    the rule (or as put off), `wake_at` when it may be said (quiet hours and holidays moved it),
    `open_due` the occurrence that was said and is not answered yet. A row ends, it is never
    deleted.
    """

    __tablename__ = "reminders"
    __table_args__ = (
        Index("ix_reminders_wake", "wake_at"),
        Index("ix_reminders_chat", "chat_id", "ended_at"),
    )

    id: Mapped[int] = mapped_column(primary_key=True)
    chat_id: Mapped[int] = mapped_column(ForeignKey("chats.id"))
    thread: Mapped[str | None]
    tank_id: Mapped[int | None] = mapped_column(ForeignKey("tanks.id"))
    what: Mapped[str]
    kind: Mapped[str]
    rule: Mapped[str]
    counts_from_done: Mapped[bool]
    anchor: Mapped[datetime]
    next_due: Mapped[datetime | None]
    wake_at: Mapped[datetime | None]
    open_due: Mapped[datetime | None]
    state: Mapped[str]
    owner: Mapped[str | None]
    lease_until: Mapped[datetime | None]
    not_before: Mapped[datetime | None]
    """Real time before which a failed delivery is not tried again."""
    attempts: Mapped[int]
    maybe_repeat: Mapped[bool]
    message_ref: Mapped[str | None]
    created_at: Mapped[datetime]
    created_by: Mapped[str]
    ended_at: Mapped[datetime | None]


class InboxRow(Base):
    """An update of a messenger, kept raw from before it is confirmed until it is answered."""

    __tablename__ = "inbox"
    __table_args__ = (
        UniqueConstraint("messenger", "update_id"),
        Index("ix_inbox_turn", "state", "chat", "id"),
    )

    id: Mapped[int] = mapped_column(primary_key=True)
    messenger: Mapped[str]
    update_id: Mapped[str]
    chat: Mapped[str]
    raw: Mapped[str]
    received_at: Mapped[datetime]
    state: Mapped[str]
    owner: Mapped[str | None]
    lease_until: Mapped[datetime | None]
    attempts: Mapped[int]
    replies: Mapped[str | None]
    sent: Mapped[int]
    unsure: Mapped[int] = mapped_column(server_default="0")
    """How often the next reply was sent and not acknowledged."""
    error: Mapped[str | None]
    answered_at: Mapped[datetime | None]
