"""In which order values are put right."""

from __future__ import annotations

from bot.chat.words.text import _


def order(*, sea: bool) -> list[str]:
    """Which goes first, and how."""
    if sea:
        return [
            _(
                "First ammonia and nitrite to 0, then salinity, then magnesium, then KH and"
                " calcium. pH follows."
            ),
            _(
                "One at a time, in daily parts, measured between. KH and calcium never at the same"
                " time and place."
            ),
        ]
    return [
        _("First ammonia and nitrite to 0, then KH, then GH. pH follows KH: never dose for it."),
        _("One at a time, in daily parts, measured between."),
    ]


def measure(*, sea: bool) -> str:
    """Nothing was measured."""
    if sea:
        return _("Send what you measured, for example: salinity 34 kh 7 ca 390 mg 1250")
    return _("Send what you measured, for example: ammonia 0 kh 4 gh 6 ph 7.2")


def nothing_off(tank: str) -> str:
    """No reading asks for it."""
    return _("{tank}: nothing that was measured has to be raised.").format(tank=tank)
