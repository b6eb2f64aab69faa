"""``my rodi tds 15 is that bad``: what TDS tells of pure water, of the unit, not of a tank."""

from __future__ import annotations

import re
from typing import Final

from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import pure_tds as words
from core.message.model import Parsed
from core.message.waters import PURE, mentioned

_TDS: Final = re.compile(r"\btds\b\D{0,12}?(\d{1,4}(?:[.,]\d{1,2})?)", re.IGNORECASE)
_RESIN: Final = re.compile(
    r"\bro\s?/?\s?di\b|\bdi[- ](?:water|unit|resin|stage)\b|\bdeioni|vollentsalz|mischbett"
    r"|d[ée]min[ée]ralis|desioniz|deionizz|gedemineralis|demineraliz|avjoniser",
    re.IGNORECASE,
)
"""Water behind a resin, in nine languages."""

LITTLE: Final = 2.0
SPENT: Final = 30.0
"""TDS up to which pure water is as it should be, and over which a membrane lets through too much
of most taps; common practice, no source. [mg/L]"""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Judge the TDS of RO or deionised water; None where no such water and number are named."""
    text = turn.incoming.text
    if not turn.incoming.addressed or parsed.values or parsed.events or parsed.command is not None:
        return None
    waters = mentioned(text)
    found = _TDS.findall(text)
    if len(waters) != 1 or waters[0][2] not in PURE - {"rain"} or len(found) != 1:
        return None
    asked = parsed.question
    if asked is not None and (asked.kind != "safe" or set(asked.premises) - {"tds"}):
        return None
    tds = float(found[0].replace(",", "."))
    resin = _RESIN.search(text) is not None or waters[0][2] == "distilled"
    facts = {"source": waters[0][2], "tds": tds}
    lines = words.judged(tds, resin=resin, little=LITTLE, spent=SPENT)
    return [await turn.reply(lines, facts=facts)]
