"""TDS of pure water in words; common practice, no source."""

from __future__ import annotations

from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def judged(tds: float, *, resin: bool, little: float, spent: float) -> list[str]:
    """What a TDS tells of RO or deionised water.

    Parameters
    ----------
    tds, little, spent : float
        What was read, what is as it should be, and what is too much of plain RO. [mg/L]
    resin : bool
        Whether the water went through a resin behind the membrane.
    """
    read = plain(tds, 1)
    if tds <= little:
        return [
            _("TDS {tds} is as pure as it should be.").format(tds=read),
            _("Minerals go back in before animals do: it holds no KH and no GH."),
        ]
    if resin:
        return [
            _("Too much: behind a resin TDS should read 0 to 2, so at {tds} it is spent.").format(
                tds=read
            ),
            _("Read TDS before the resin too: 5 to 20 is usual there, more is a worn membrane."),
            _("Fresh water bears it; for a reef change the resin first."),
        ]
    if tds <= spent:
        return [
            _("TDS {tds} is usual for plain RO, which lets through 2 to 10 % of the tap.").format(
                tds=read
            ),
            _("Read your tap's TDS too: over a tenth of it the membrane is worn."),
            _("For a reef a resin behind it brings it to 0 to 2."),
        ]
    return [
        _("Too much for RO, at TDS {tds}: a worn membrane, a torn seal, or not flushed.").format(
            tds=read
        ),
        _("Run it ten minutes and read again, and read the tap: over a tenth of it, change it."),
    ]
