"""How the poisonous share of ammonia follows pH and warmth."""

from __future__ import annotations

from bot.chat.words.numbers import plain, small
from bot.chat.words.text import _
from core.advice import limits


def by_ph() -> str:
    """What a step of pH does; by Emerson et al. 1975, as `core.water.ammonia` reckons."""
    return _(
        "The higher the pH, the more of the ammonia is poisonous: about ten times as much for each"
        " whole step of pH (7 to 8)."
    )


def by_low_ph() -> str:
    """A low pH spares the animals for now, no more."""
    return _(
        "At a low pH less of the ammonia is poisonous, but it must go all the same: it turns to"
        " poison as soon as pH rises."
    )


def act() -> str:
    """What is done about it at a low pH."""
    return _(
        "Stop feeding, change a little at a time (dechlorinated, same KH), do not raise pH, test"
        " daily until it is 0."
    )


def by_warmth() -> str:
    """What warmth does; by Emerson et al. 1975: 2.0 times from 20 to 30 °C."""
    return _(
        "The warmer, the more of the ammonia is poisonous: about twice as much for 10 °C. pH counts"
        " far more: ten times for a whole step."
    )


def measure() -> str:
    """Both are needed to say more."""
    return _("Send ammonia, pH and temperature of one hour, and I say how much of it is poison.")


def now(tank: str, total_n: float, ph: float, nh3_n: float) -> str:
    """What the last readings make of it."""
    told = _(
        "{tank}: of {total} mg/L as N at pH {ph}, {nh3_n} mg/L is poisonous; I warn over {limit}."
    )
    return told.format(
        tank=tank, total=small(total_n), ph=plain(ph, 2), nh3_n=small(nh3_n),
        limit=plain(limits.NH3_WARN, 2),
    )  # fmt: skip


def passes_at(ph: float, temperature: float, *, known: bool) -> str:
    """From which pH so much ammonia is warned of."""
    told = (
        _("With so much ammonia that is passed over pH {ph} at {temperature} °C. It should be 0.")
        if known
        else _(
            "With so much ammonia that is passed over pH {ph} (taking {temperature} °C). It should"
            " be 0."
        )
    )
    return told.format(ph=plain(ph, 1), temperature=plain(temperature, 0))
