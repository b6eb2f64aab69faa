"""The new water of a change in words: which it is, how old, and what it does on standing."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import datetime

from bot.chat.words import names
from bot.chat.words.changes import percent
from bot.chat.words.numbers import at_most, plain, span
from bot.chat.words.text import N_, _, ngettext

SEASONS: Mapping[str, str] = {
    "winter": N_("{source} as in winter"),
    "summer": N_("{source} as in summer"),
}


def share(part: float) -> str:
    """A share of a blend."""
    return f"{plain(100.0 * part, 0)} %"


def blend(parts: Sequence[tuple[str, float]]) -> str:
    """The parts of a blend: 60 % RO, 40 % tap."""
    return ", ".join(f"{share(part)} {names.water(name)}" for name, part in parts)


def blend_of(name: str, parts: Sequence[tuple[str, float]], values: str) -> str:
    """A blend with its parts and what comes of them; a pH is worked out, never averaged."""
    if not values:
        return _("{name} is {parts}.").format(name=name, parts=blend(parts))
    told = _("{name} is {parts}: {values}, as the parts are known today.")
    return told.format(name=name, parts=blend(parts), values=values)


def season(source: str, of: str) -> str:
    """A source by the season whose profile is used."""
    return _(SEASONS[of]).format(source=names.water(source))


def used(source: str) -> str:
    """Which new water was reckoned with."""
    return _("Reckoned with {source}.").format(source=source)


def guessed(source: str) -> str:
    """Which season's water was reckoned with, where nothing tells the season."""
    return _(
        "I do not know which season it is for you: reckoned with {source}, the stricter. Set your"
        " zone, for example: /zone Europe/Lisbon"
    ).format(source=source)


def only_other_season(source: str) -> str:
    """Only the profile of the season that is not now is known."""
    return _("Reckoned with {source}, which it is not now: measure it again.").format(source=source)


def old(source: str, at: datetime, now: datetime) -> str:
    """A source was measured too long ago."""
    months = max(1, round((now - at).days / 30.4))
    return ngettext(
        "{source} was measured about {months} month ago: a supply's water changes with the"
        " season, measure it again.",
        "{source} was measured about {months} months ago: a supply's water changes with the"
        " season, measure it again.",
        months,
    ).format(source=names.water(source), months=months)


def other_season(source: str, safe: float) -> str:
    """What the other season's profile would allow, where it allows something else."""
    if safe <= 0.0:
        return _("With {source}: no change at once.").format(source=source)
    return _("With {source}: at most {share} at once.").format(
        source=source, share=percent(at_most(safe))
    )


def stood_first(ph: float, safe: float, at_once: float) -> str:
    """What the same change is with water that has stood."""
    return _(
        "Let it stand or aerate for a day first (then pH {ph}): at once pH {at_once}, and at most"
        " {share} at once is within the limits."
    ).format(ph=plain(ph, 1), at_once=plain(at_once, 1), share=percent(at_most(safe)))


def rises(source: str, co2: float, low: float, high: float) -> str:
    """A source comes out with carbon dioxide, and its pH rises as it stands."""
    return _(
        "{source} holds about {co2} mg/L CO2, more than air gives: its pH rises to about {span} on"
        " standing. Let it stand or aerate for a day before a large change."
    ).format(source=names.water(source), co2=plain(co2, 0), span=span(low, high, 1))


def only_stood(source: str) -> str:
    """Only the pH once stood is known."""
    return _(
        "Only the stood pH of {source} is known: straight from the tap it may hold more CO2. Let"
        " it stand first, or measure it fresh: /source {source} fresh ph 7"
    ).format(source=source)


def much_co2(co2: float) -> str:
    """The mixed water would hold much carbon dioxide at once."""
    return _("At once about {co2} mg/L CO2, too much for fish: aerate the new water first.").format(
        co2=plain(co2, 0)
    )


def unclear(reason: str, named: Sequence[str], total: float | None) -> list[str]:
    """Why the new water of a question cannot be told."""
    example = _("Send for example: what if i change 30% with 60% ro 40% tap")
    if reason == "unknown":
        return [
            _(
                "I do not know the water {name}. Measure it and send for example: /source {name} ph"
                " 7.6 kh 8 gh 10"
            ).format(name=named[0][:60])
        ]
    if reason == "rest":
        return [
            _("{share} of the new water is not told, and I know no source of yours.").format(
                share=share(total or 0.0)
            ),
            _("Measure it and send for example: /source tap ph 7.6 kh 8 gh 10 no3 5 temp 15"),
        ]
    if total is None:
        told = _("In which shares are {waters} mixed?")
        return [told.format(waters=names.listed(list(named))), example]
    told = _("The shares of {waters} come to {total}, not 100 %.")
    return [told.format(waters=names.listed(list(named)), total=share(total)), example]
