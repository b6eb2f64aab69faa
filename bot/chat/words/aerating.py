"""Extra air, and what it does to ammonia."""

from __future__ import annotations

from bot.chat.words.text import _


def only_if_gasping() -> list[str]:
    """There is ammonia at a low or unknown pH."""
    return [
        _("Only if they gasp at the surface: then at once."),
        _("There is ammonia: extra air drives CO2 off, pH rises, and ammonia turns poisonous."),
        _("Ask: what now"),
    ]


def test_first() -> list[str]:
    """Nobody measured ammonia of late, and pH is low or unknown."""
    return [
        _("If they gasp at the surface: yes, at once. Else test ammonia and pH first."),
        _("Where there is ammonia, extra air raises pH and makes it poisonous."),
    ]


def harmless(tank: str, *, injected: bool) -> list[str]:
    """No ammonia is known that air would free."""
    lines = [_("Yes: air does no harm in {tank}; pH may rise a little.").format(tank=tank)]
    if injected:
        lines.append(_("It drives the injected CO2 off too; by night that is well."))
    return lines


def with_care(tank: str) -> list[str]:
    """There is ammonia at a pH that holds little CO2, so that air moves it little."""
    return [
        _("Yes, air may go into {tank}, but there is ammonia.").format(tank=tank),
        _("If pH rises, more of it is poisonous: test both again after an hour. Ask: what now"),
    ]


def plug() -> str:
    """What an air pump must have; common practice."""
    return _("The pump above the water, or a check valve in its hose; a drip loop in its cable.")
