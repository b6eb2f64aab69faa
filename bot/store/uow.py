"""A unit of work: all of it is stored, or nothing is."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property

from sqlalchemy.ext.asyncio import AsyncSession

from bot.store.chats import Chats
from bot.store.findings import Findings
from bot.store.log import Log
from bot.store.offers import Offers
from bot.store.products import Products
from bot.store.reminders import Reminders
from bot.store.tanks import Tanks


class UnitOfWork:
    """One transaction and the queries that may run in it.

    Made by `Database.write` and `Database.read`; leaving their block without `commit` rolls back.
    """

    def __init__(self, session: AsyncSession, written: Callable[[], int]) -> None:
        self.session = session
        self._written = written

    @property
    def writes(self) -> int:
        """How often anything was written; what was read here at the same count still holds."""
        return self._written() + self.offers.stood

    async def commit(self) -> None:
        """Make everything done so far permanent."""
        await self.session.commit()

    @cached_property
    def chats(self) -> Chats:
        """Conversations and their settings."""
        return Chats(self.session)

    @cached_property
    def tanks(self) -> Tanks:
        """Tanks and their kits."""
        return Tanks(self.session)

    @cached_property
    def log(self) -> Log:
        """Entries with their readings and events."""
        return Log(self.session)

    @cached_property
    def findings(self) -> Findings:
        """What keepers were told that their readings mean."""
        return Findings(self.session)

    @cached_property
    def products(self) -> Products:
        """Bought products by what they do."""
        return Products(self.session)

    @cached_property
    def offers(self) -> Offers:
        """Replies that wait for an answer."""
        return Offers(self.session)

    @cached_property
    def reminders(self) -> Reminders:
        """What is due."""
        return Reminders(self.session)
