"""Words of a sea's salinity: how much water goes out, at what pace, and how salt goes in."""

from __future__ import annotations

from bot.chat.words.numbers import grams as mass
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import _, ngettext


def in_all(now: float, wish: float, volume: float, share: float, days: int) -> str:
    """How much salt water goes out and RO in, in all, and over how many days. [g/kg, L]"""
    told = ngettext(
        "Salinity {now} → {wish} g/kg: in all about {litres} out ({share} %) and as much RO in.",
        "Salinity {now} → {wish} g/kg: in all about {litres} out ({share} %) and as much RO in,"
        " over {days} days at least.",
        days,
    )
    return told.format(
        now=plain(now, 1),
        wish=plain(wish, 1),
        litres=litres(volume),
        share=plain(100.0 * share, 0),
        days=days,
    )


def measure_first(tank: str) -> list[str]:
    """Nothing is known of the salinity."""
    told = _("{tank}: measure salinity first and send it, for example: salinity 35")
    return [told.format(tank=tank)]


def as_is(now: float, wish: float) -> list[str]:
    """It is there already. [g/kg]"""
    told = _("Salinity {now} g/kg is near {wish}: nothing to do. Measure again in a day.")
    return [told.format(now=plain(now, 1), wish=plain(wish, 1))]


def one_go_lowered(now: float, wish: float, volume: float) -> list[str]:
    """Without animals, the whole at once: water out, RO in. [g/kg, L]"""
    told = _("With no animal in it, yes: {litres} out and as much RO in ({now} → {wish} g/kg).")
    return [
        told.format(litres=litres(volume), now=plain(now, 1), wish=plain(wish, 1)),
        _only_empty(),
        _("Let it mix for a day and measure it before anything goes in."),
    ]


def one_go_raised(now: float, wish: float, grams: float) -> list[str]:
    """Without animals, the whole at once: salt, dissolved apart. [g/kg, g]"""
    told = _("With no animal in it, yes: {grams} of sea salt, taken as dry ({now} → {wish} g/kg).")
    return [
        told.format(grams=mass(grams), now=plain(now, 1), wish=plain(wish, 1)),
        _only_empty(),
        _("Stir until it is clear, let it mix for a day and measure it before anything goes in."),
    ]


def one_go_alone() -> list[str]:
    """Without animals, and without an amount that was spoken of."""
    return [
        _("With no animal in it, yes: no step of a day binds prepared water."),
        _only_empty(),
        _("Let it mix for a day and measure it before anything goes in."),
    ]


def _only_empty() -> str:
    return _("Snails, shrimps, corals and live rock count as animals: with any, only in steps.")


def lives_there(tank: str) -> list[str]:
    """It was said to be empty, and animals are on record."""
    told = _("Not in one go: by my record animals live in {tank}. In steps of a day.")
    return [
        told.format(tank=tank),
        _("If that is wrong, tell me who is gone, or send: /tank stock"),
    ]


def fish_only_missing() -> list[str]:
    """No fish is not yet no animals."""
    return [
        _("No animals at all, snails, shrimps and corals too? Only then in one go."),
        _("If so, send: no animals, can i do it in one go"),
    ]


def no_dry_salt(step: float, *, vessel: bool) -> list[str]:
    """Dry salt and animals of the sea. [g/kg a day]; common practice, no source."""
    if vessel:
        return [
            _("Into a bucket of RO without animals, yes: a little at a time, with a pump."),
            _("Wait until it is clear, stir it for a day, and measure it before it goes in."),
        ]
    return [
        _("No: never dry salt onto animals, it burns what it falls on."),
        _(
            "Dissolve it apart in RO, or change with saltier water: by {step} g/kg a day at most."
        ).format(step=plain(step, 0)),
        _("How much, ask for example: raise salinity to 35"),
    ]


def top_off(step: float) -> list[str]:
    """Fresh water ran in. [g/kg a day]; common practice, no source."""
    return [
        _("Stop the top-off now, and take no water out in haste: test pH and KH."),
        _(
            "Back up by {step} g/kg a day at most: top up what evaporates with salt water, or"
            " ask: raise salinity to 35"
        ).format(step=plain(step, 0)),
    ]


def not_stored() -> str:
    """New water was asked for, and not told of the tank."""
    return _("That is for new water, nothing is stored. The tank's own, for example: sg 1.025")
