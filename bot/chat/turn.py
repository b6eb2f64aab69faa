"""One turn of a conversation: what came in, from which chat, and what the chat has."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Iterable, Mapping
from dataclasses import dataclass, field, replace
from datetime import datetime
from typing import Any, Final

from bot.chat.model import Incoming, Line, Reply
from bot.chat.offering import make_reply
from bot.chat.words.first_evening import is_given
from bot.store.chats import Chat, NewChat
from bot.store.tanks import StoredTank
from bot.store.uow import UnitOfWork
from core.advice.products import Product, never
from core.advice.state import State
from core.message.model import Context, Look, Parsed
from core.tank import Tank

ABOUT: Final = "about_value"
"""Of a reply that a value was never read: which, and the tank, for a number said right after."""

ASKED: Final = "asked"
"""Under which an offer keeps the question that it answers."""

WAITS: Final = "waits"
"""Of a reply to a question: what of `litres`, `start` and `target` it needs, first what it asks."""

Route = Callable[["Turn", Parsed], Awaitable[list[Reply]]]
Answer = Callable[["Turn"], Awaitable[list[Reply]]]


@dataclass
class Turn:
    """What a topic of the conversation works with.

    `now` is when the person acted, by the chat's clock: what they say dates from it.
    """

    uow: UnitOfWork
    incoming: Incoming
    chat: Chat
    tanks: list[StoredTank]
    now: datetime
    products: list[Product] = field(default_factory=list)
    """Bought products that the chat knows, but none that by its name is nothing for animals."""
    spoken_of: str | None = None
    """The one of them that was just spoken of, where a message has a word for it."""
    came_back: bool = False
    """True where nothing could be sent to this chat until now."""
    waters: list[StoredTank] = field(default_factory=list)
    """The sources that the chat's tanks are filled from and their facets, once looked up."""
    asked: Mapping[str, Any] | None = None
    """The question of a plan that is being answered, kept with its replies for a follow-up."""
    parts: int | None = None
    """In how many parts a plan is wished."""
    put_in: bool = False
    """Asked how much of it went in, not how much to put in."""
    first: Tank | None = None
    """The tank that a chat's first reading makes, where its words tell its water."""
    unheard: bool = False
    """Nothing was found in what was said."""
    whole: bool = False
    """All of it was read as one sentence, so that none of its numbers is left over."""
    poison_free: set[int] = field(default_factory=set)
    """Ids of tanks that were looked through for a poison that stands, and have none."""
    states: dict[tuple[int, datetime], tuple[object, State]] = field(default_factory=dict)
    """Of a tank and a moment its state, and what that was read from: see `bot.chat.state`."""
    line: Mapping[str, str] = field(default_factory=dict)
    """The message that is answered, and its author; empty for a `/command` and for presses."""
    route: Route | None = None
    """How a text that is said again finds its topic; set by the router."""
    typed: Answer | None = None
    """How a text is answered as if it had just been typed; set by the router."""

    @classmethod
    async def begin(cls, uow: UnitOfWork, incoming: Incoming, new: NewChat) -> Turn:
        """Find or make the chat that something came in from, with its tanks."""
        chat = await uow.chats.ensure(
            incoming.address, group=incoming.group, new=new, now=incoming.at
        )
        tanks = await uow.tanks.of_chat(chat.id)
        turn = cls(uow, incoming, chat, tanks, incoming.at, came_back=chat.gone_at is not None)
        if incoming.kind == "message" and not incoming.text.startswith("/"):
            turn.line = {"id": incoming.update_id, "author": incoming.author_id}
        await turn.know_products()
        return turn

    async def know_products(self) -> None:
        """Look up the chat's products, as they are now."""
        kept = await self.uow.products.of_chat(self.chat.id)
        self.products = [product for product in kept if never(product.name) is None]

    @property
    def local_now(self) -> datetime:
        """`now` as the chat's clock shows it."""
        return self.now.astimezone(self.chat.zone)

    @property
    def author(self) -> str:
        """Who acts, as told to others; empty where it need not be said."""
        return self.incoming.author_name if self.incoming.group else ""

    def context(self) -> Context:
        """What the words of a message depend on in this chat."""
        kits = {stored.name: stored.tank.kits for stored in self.tanks if stored.tank.kits}
        seas = {stored.name for stored in self.tanks if stored.tank.is_sea}
        if (current := self.current_tank) is not None:
            kits[""] = current.tank.kits
            seas |= {""} if current.tank.is_sea else set()
        return Context(
            now=self.local_now,
            zone=self.chat.zone,
            tanks=tuple(stored.name for stored in self.tanks),
            kits=kits,
            group=self.incoming.group,
            fahrenheit=self.chat.fahrenheit,
            us_gallons=self.chat.us_gallons,
            products=tuple(product.name for product in self.products),
            spoken_of=self.spoken_of,
            seas=frozenset(seas),
            looks=tuple(self._look(stored) for stored in self.tanks),
        )

    def context_apart(self) -> Context:
        """Likewise for what is told of another water, which is none of the chat's seas."""
        return replace(self.context(), seas=frozenset())

    def _look(self, stored: StoredTank) -> Look:
        tank = stored.tank
        in_use = stored is self.current_tank
        planted, given = tank.setup == "planted", is_given(stored.name)
        return Look(stored.name, tank.kind, tank.volume_l, planted, in_use, given)

    def tank_named(self, name: str) -> StoredTank | None:
        """The tank that is spelt so, whatever its case."""
        key = name.casefold()
        return next((tank for tank in self.tanks if tank.name.casefold() == key), None)

    def tank_by_id(self, tank_id: int | None) -> StoredTank | None:
        """The living tank of an id."""
        return next((tank for tank in self.tanks if tank.id == tank_id), None)

    async def know_waters(self) -> None:
        """Look up what an entry may be about beside the tanks: sources and their facets."""
        sources = await self.uow.tanks.sources_of_chat(self.chat.id)
        self.waters = [body for each in sources for body in (each, *each.facets.values())]

    def body_by_id(self, body_id: int) -> StoredTank | None:
        """The tank, source or facet of an id."""
        found = self.tank_by_id(body_id)
        return found or next((body for body in self.waters if body.id == body_id), None)

    @property
    def current_tank(self) -> StoredTank | None:
        """The tank used last, or the only one; None where it must be asked or made."""
        used = self.tank_by_id(self.chat.tank_id)
        if used is not None:
            return used
        return self.tanks[0] if len(self.tanks) == 1 else None

    @property
    def example_tank(self) -> str | None:
        """The name of one of the keeper's own tanks for an example; None where none has a name."""
        tanks = [self.current_tank, *self.tanks]
        return next((each.name for each in tanks if each is not None and each.tank.named), None)

    async def use_tank(self, stored: StoredTank) -> None:
        """Let what is said next without a tank be about this one."""
        if self.chat.tank_id != stored.id:
            await self.change_chat(tank_id=stored.id)

    async def add_tank(self, tank: Tank) -> StoredTank:
        """Make a tank and let it be the current one."""
        stored = await self.uow.tanks.add(self.chat.id, tank, self.now)
        self.tanks.append(stored)
        await self.use_tank(stored)
        return stored

    async def change_tank(self, stored: StoredTank, **columns: Any) -> StoredTank:
        """Change a tank and give it back as it is now."""
        await self.uow.tanks.change(stored.id, **columns)
        return await self.reload_tank(stored)

    async def reload_tank(self, stored: StoredTank) -> StoredTank:
        """Read the chat's tanks again and give one back as it is now."""
        self.uow.session.expire_all()
        self.tanks = await self.uow.tanks.of_chat(self.chat.id)
        return await self.uow.tanks.get(stored.id)

    async def change_chat(self, **settings: Any) -> None:
        """Change settings of this chat."""
        await self.uow.chats.change(self.chat.id, **settings)
        self.uow.session.expire_all()
        self.chat = await self.uow.chats.get(self.chat.id, self.chat.address.thread)

    def free_name(self, name: str, given: Iterable[str] = ()) -> str:
        """A name for a tank that none of the chat has yet: the name told, or it and a number.

        `given` are names that are taken before anything is on record.
        """
        taken = {each.casefold() for each in given}
        free, number = name, 2
        while self.tank_named(free) is not None or free.casefold() in taken:
            free, number = f"{name} {number}", number + 1
        return free

    async def reply(self, lines: Iterable[str | Line], **parts: Any) -> Reply:
        """Build a reply in this chat; `parts` are those of `bot.chat.offering.make_reply`."""
        if self.asked is not None:
            parts["context"] = {**(parts.get("context") or {}), ASKED: dict(self.asked)}
            parts["expects"] = parts.get("expects") or "followup"
        return await make_reply(self.uow, self.chat.id, self.now, lines, line=self.line, **parts)
