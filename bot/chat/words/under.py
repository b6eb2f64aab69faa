"""What a pH under a kit's scale means where KH holds none."""

from __future__ import annotations

from bot.chat.words.text import _


def crashed(tank: str) -> list[str]:
    """pH has fallen because KH is spent: slowly back, the poison looked at first."""
    return [
        _(
            "{tank}: that is a pH crash: KH is spent, and nothing holds pH. Do not raise it fast:"
            " no buffer before ammonia is measured."
        ).format(tank=tank),
        _("Stop feeding; measure ammonia, nitrite and temperature now. If they gasp, give air."),
        _("Then small changes, a tenth to a quarter a day, dechlorinated, as warm as the tank."),
    ]
