"""What keepers were told that their readings mean, and when."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from typing import cast

from sqlalchemy import bindparam, insert, select
from sqlalchemy.ext.asyncio import AsyncSession

from bot.store.log_rows import LIVE
from bot.store.models import EntryRow, FindingRow
from core.advice.findings import Finding, Severity, Told

_TOLD = (
    select(FindingRow.rule, FindingRow.severity, FindingRow.facts, FindingRow.told_at)
    .join(EntryRow, EntryRow.id == FindingRow.entry_id)
    .where(
        FindingRow.tank_id == bindparam("tank"),
        FindingRow.told_at >= bindparam("since"),
        LIVE,
    )
)


class Findings:
    """Queries about what was told, in one unit of work."""

    def __init__(self, session: AsyncSession) -> None:
        self._session = session

    async def add(
        self, entry_id: int, tank_id: int, findings: Sequence[Finding], at: datetime
    ) -> None:
        """Note the findings that the answer to an entry showed of a tank."""
        if findings:
            rows = [
                {
                    "entry_id": entry_id,
                    "tank_id": tank_id,
                    "rule": finding.id,
                    "severity": finding.severity,
                    "facts": dict(finding.facts),
                    "told_at": at,
                }
                for finding in findings
            ]
            await self._session.execute(insert(FindingRow), rows)

    async def told(self, tank_id: int, since: datetime) -> list[Told]:
        """What was told of a tank since a moment, with entries that still count."""
        return [
            Told(Finding(rule, cast("Severity", severity), facts), at)
            for rule, severity, facts, at in await self._session.execute(
                _TOLD, {"tank": tank_id, "since": since}
            )
        ]
