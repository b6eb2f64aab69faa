"""Bought products as a chat knows them: by their label, or by what they did here."""

from __future__ import annotations

from dataclasses import asdict
from datetime import datetime
from typing import Final, cast

from sqlalchemy import Table, bindparam, delete, select
from sqlalchemy.ext.asyncio import AsyncSession

from bot.store.models import ProductRow
from core.advice.products import Label, Product

_TABLE = cast("Table", ProductRow.__table__)
_OF_CHAT: Final = select(_TABLE).where(_TABLE.c.chat_id == bindparam("chat")).order_by(_TABLE.c.id)
"""Asked by every message."""


class Products:
    """Queries about bought products, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session

    async def keep(self, chat_id: int, product: Product, now: datetime) -> None:
        """Keep what a product does; what was kept of it for the same analyte gives way."""
        await self._end(chat_id, product.name, product.label.analyte)
        row = ProductRow(
            chat_id=chat_id,
            name=product.name,
            name_key=product.name.casefold(),
            rise_low=product.rise_low,
            rise_high=product.rise_high,
            learned=product.learned,
            kept_at=now,
            **asdict(product.label),
        )
        self._session.add(row)
        await self._session.flush()

    async def of_chat(self, chat_id: int) -> list[Product]:
        """All products of a chat, the longest name first, so that it is found before a shorter."""
        rows = await self._session.execute(_OF_CHAT, {"chat": chat_id})
        told = [
            Product(
                row.name,
                Label(row.amount, row.unit, row.litres, row.analyte, row.rise),
                row.rise_low,
                row.rise_high,
                learned=row.learned,
            )
            for row in rows
        ]
        return sorted(told, key=lambda product: -len(product.name))

    async def forget(self, chat_id: int, name: str, analyte: str | None = None) -> bool:
        """Forget a product, or one of its effects; False where there is none of that name."""
        return await self._end(chat_id, name, analyte) > 0

    async def _end(self, chat_id: int, name: str, analyte: str | None = None) -> int:
        which = [ProductRow.chat_id == chat_id, ProductRow.name_key == name.casefold()]
        if analyte is not None:
            which.append(ProductRow.analyte == analyte)
        ended = await self._session.scalars(
            delete(ProductRow).where(*which).returning(ProductRow.id)
        )
        return len(ended.all())
