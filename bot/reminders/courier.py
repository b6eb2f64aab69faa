"""What carries a reply to a chat of one messenger."""

from __future__ import annotations

from typing import Protocol

from bot.chat.model import Address, Reply


class Courier(Protocol):
    """Something that can send to the chats of one messenger."""

    messenger: str

    async def send(self, address: Address, reply: Reply) -> str | None:
        """Send a reply and return the messenger's id of it, if it has one.

        Raises
        ------
        DeliveryError
            One of the classes of `bot.delivery`, which say whether it may be tried again.
        """
        ...
