"""Replies that wait for an answer: what their buttons do, kept where a restart cannot lose it."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any, Final, cast

from sqlalchemy import Integer, Row, Table, and_, bindparam, or_, select, update
from sqlalchemy.ext.asyncio import AsyncSession

from bot.store.models import OfferRow
from bot.store.rows import new_row

AT_HAND = 3
"""The newest offers that every message is held against: whose buttons can be typed out, and the
last of which may be a question."""

READ_AT_ONCE = 12
"""So many of them are read where any are: most messages look at more than the last three."""


@dataclass(frozen=True, slots=True)
class Choice:
    """One button of an offer: its words, the verb it stands for, and what the verb needs.

    `meaning` is the word that does the same when typed (more, yes, no, done), or "".
    """

    label: str
    verb: str
    meaning: str = ""
    arguments: dict[str, Any] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Offer:
    """A reply's choices. `expects` says what a plain answer to it would be, if anything.

    `line` is the message that it answers and whose that is, with `passed` once another came of
    which nothing was kept.
    """

    choices: tuple[Choice, ...]
    made_at: datetime
    expects: str | None = None
    context: dict[str, Any] = field(default_factory=dict)
    entry_id: int | None = None
    used: str | None = None
    line: dict[str, str] = field(default_factory=dict)
    id: int = 0
    chat_id: int = 0


UNHEARD: Final = "unheard"
"""Of a message that was not understood: no reply waits for it, so that it is none of the newest."""

BESIDE: Final = "beside"
"""Of a reply whose buttons can be pressed, but which is no step of the talk: nor is it."""

BAG: Final = "bag"
"""Under which is kept how much of a thing was told to be at hand, of which a share may go in."""

STANDING: Final = frozenset({"called", "eased", "nameless", "asked_of", "resized", BAG})
"""Keys of a context under which is kept what every message is held against until it is settled."""

STANDING_AMONG: Final = 240
"""The newest replies with such a key that are looked through; what stands is some days old."""

_TABLE = cast("Table", OfferRow.__table__)
"""The table itself: for what every message reads, mapped objects cost more than all else."""
_ALL = select(_TABLE).where(_TABLE.c.chat_id == bindparam("chat")).order_by(_TABLE.c.id.desc())
_LATEST = _ALL.where(
    or_(_TABLE.c.expects.is_(None), and_(_TABLE.c.expects != UNHEARD, _TABLE.c.expects != BESIDE))
).limit(bindparam("most", type_=Integer))
_UNHEARD = _ALL.where(_TABLE.c.expects == UNHEARD, _TABLE.c.made_at >= bindparam("since")).limit(1)
_STANDING = (
    select(_TABLE.c.made_at, _TABLE.c.payload)
    .where(_TABLE.c.chat_id == bindparam("chat"), _TABLE.c.stands)
    .order_by(_TABLE.c.id.desc())
    .limit(STANDING_AMONG)
)
_NEW = _TABLE.insert()
_SENT = (
    _TABLE.update()
    .where(_TABLE.c.id == bindparam("offer"))
    .values(message_ref=bindparam("sent_as"))
)


class Offers:
    """Queries about offers, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session
        self._seen: dict[int, tuple[int, list[Offer]]] = {}
        """Of each chat the newest offers and how many were asked for, until one changes."""
        self._unheard: dict[int, tuple[datetime, Offer | None]] = {}
        """Of each chat since when the newest message not understood was sought, and that one."""
        self._standing: dict[int, list[tuple[datetime, Mapping[str, Any]]]] = {}
        """Of each chat the contexts that hold what stands, until another such comes."""
        self.stood = 0
        """How many replies were added that keep what stands."""

    def _forget(self) -> None:
        """Read again what is asked for next: an offer is not what it was."""
        self._seen.clear()
        self._unheard.clear()
        self._standing.clear()

    async def add(self, chat_id: int, offer: Offer) -> int:
        """Keep an offer and return its id, which its buttons carry."""
        stands = any(offer.context.get(key) for key in STANDING)
        columns = {
            "chat_id": chat_id,
            "stands": stands,
            "made_at": offer.made_at,
            "entry_id": offer.entry_id,
            "expects": offer.expects,
            "payload": {
                "context": offer.context,
                **({"line": offer.line} if offer.line else {}),
                "choices": [
                    {
                        "label": choice.label,
                        "verb": choice.verb,
                        "meaning": choice.meaning,
                        "arguments": choice.arguments,
                    }
                    for choice in offer.choices
                ],
            },
        }
        offer_id = await new_row(self._session, _NEW, columns)
        if stands:
            self.stood += 1
            self._standing.pop(chat_id, None)
        if offer.expects == UNHEARD:
            self._unheard.pop(chat_id, None)
        elif offer.expects != BESIDE and chat_id in self._seen:
            payload = json.loads(json.dumps(columns["payload"]))
            kept = replace(
                offer,
                id=offer_id,
                chat_id=chat_id,
                context=payload["context"],
                choices=_choices(payload),
            )
            most, seen = self._seen[chat_id]
            self._seen[chat_id] = (most + 1, [kept, *seen])
        return offer_id

    async def get(self, offer_id: int) -> Offer | None:
        """Give one offer; None where the id was never given out."""
        for _, seen in self._seen.values():
            if (known := next((each for each in seen if each.id == offer_id), None)) is not None:
                return known
        row = await self._session.get(OfferRow, offer_id)
        return None if row is None else _offer(row)

    async def by_message(self, chat_id: int, message_ref: str) -> Offer | None:
        """Find the offer that a sent message carries."""
        row = await self._session.scalar(
            select(OfferRow).where(OfferRow.chat_id == chat_id, OfferRow.message_ref == message_ref)
        )
        return None if row is None else _offer(row)

    async def latest(self, chat_id: int, limit: int = AT_HAND) -> Sequence[Offer]:
        """Give the newest offers of a chat, newest first."""
        most, seen = self._seen.get(chat_id, (0, []))
        if limit <= most:
            return seen[:limit]
        most = max(limit, READ_AT_ONCE)
        rows = await self._session.execute(_LATEST, {"chat": chat_id, "most": most})
        found = [_offer(row) for row in rows]
        self._seen[chat_id] = (most, found)
        return found[:limit]

    async def unheard(self, chat_id: int, since: datetime) -> Offer | None:
        """Give the newest message since a moment that was not understood, as it was kept."""
        sought, newest = self._unheard.get(chat_id, (None, None))
        if sought is None or since < sought:
            asked = {"chat": chat_id, "since": since}
            row = (await self._session.execute(_UNHEARD, asked)).one_or_none()
            newest = None if row is None else _offer(row)
            self._unheard[chat_id] = (since, newest)
        return newest if newest is not None and newest.made_at >= since else None

    async def told_of(self, chat_id: int, key: str) -> list[tuple[datetime, Mapping[str, Any]]]:
        """When replies were made that keep something under a key of `STANDING`, and what.

        Newest first; what was set aside since is none.
        """
        return [(made_at, held) for _key, made_at, held in await self.told_in_order(chat_id, [key])]

    async def told_in_order(
        self, chat_id: int, keys: Sequence[str]
    ) -> list[tuple[str, datetime, Mapping[str, Any]]]:
        """The same of several keys, each with its key; what was kept last comes first."""
        if not STANDING.issuperset(keys):
            raise KeyError(f"nothing stands under all of {keys}")
        return [
            (key, made_at, context[key])
            for made_at, context in await self._stand(chat_id)
            for key in keys
            if context.get(key)
        ]

    async def _stand(self, chat_id: int) -> list[tuple[datetime, Mapping[str, Any]]]:
        """The moment and the context of each reply that keeps what stands, read once a message."""
        if chat_id not in self._standing:
            rows = await self._session.execute(_STANDING, {"chat": chat_id})
            self._standing[chat_id] = [(made_at, payload["context"]) for made_at, payload in rows]
        return self._standing[chat_id]

    async def take(self, offer_id: int, verb: str) -> bool:
        """Take an offer once; False where it was taken before."""
        self._forget()
        taken = await self._session.scalar(
            update(OfferRow)
            .where(OfferRow.id == offer_id, OfferRow.used.is_(None))
            .values(used=verb)
            .returning(OfferRow.id)
        )
        return taken is not None

    async def close(self, offer_id: int) -> None:
        """Stop expecting a plain answer to an offer."""
        self._forget()
        await self._session.execute(
            update(OfferRow).where(OfferRow.id == offer_id).values(expects=None)
        )

    async def unshown(self, offer_id: int) -> None:
        """Take the buttons from an offer that nobody saw; what it would have answered stays."""
        self._forget()
        row = await self._session.get(OfferRow, offer_id)
        if row is not None:
            row.payload = {**row.payload, "choices": []}
            await self._session.flush()

    async def pass_by(self, offer_id: int) -> None:
        """Keep with an offer that a message came since of which nothing was kept."""
        self._forget()
        row = await self._session.get(OfferRow, offer_id)
        if row is not None:
            line = {**row.payload.get("line", {}), "passed": "yes"}
            row.payload = {**row.payload, "line": line}
            await self._session.flush()

    async def set_aside(self, chat_id: int, key: str, tank_id: int | None) -> None:
        """Take what a context holds of a tank, or of none, from a key of it; it stays beside."""
        self._forget()
        rows = await self._session.scalars(
            select(OfferRow).where(OfferRow.chat_id == chat_id, OfferRow.stands)
        )
        for row in rows:
            context = dict(row.payload["context"])
            if (held := context.get(key)) and held["tank"] in {tank_id, None}:
                del context[key]
                row.payload = {**row.payload, "context": {**context, f"{key}_aside": held}}
        await self._session.flush()

    async def note_sent(self, offer_id: int, message_ref: str) -> None:
        """Keep the messenger's id of the message that carries an offer."""
        await self._session.execute(_SENT, {"offer": offer_id, "sent_as": message_ref})


def _offer(row: OfferRow | Row[Any]) -> Offer:
    return Offer(
        id=row.id,
        chat_id=row.chat_id,
        made_at=row.made_at,
        entry_id=row.entry_id,
        expects=row.expects,
        used=row.used,
        context=row.payload["context"],
        line=row.payload.get("line", {}),
        choices=_choices(row.payload),
    )


def _choices(payload: Mapping[str, Any]) -> tuple[Choice, ...]:
    return tuple(Choice(**choice) for choice in payload["choices"])
