"""Source waters in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import N_, _
from bot.chat.words.waters import blend
from core.analytes import ANALYTES
from core.units import label as unit_label

FACETS: Mapping[str, str] = {
    "winter": N_("{source} in winter"),
    "summer": N_("{source} in summer"),
    "stood": N_("{source}, stood"),
}


def facet(source: str, of: str) -> str:
    """A source in one season, or once it has stood."""
    return _(FACETS[of]).format(source=source)


def figure(analyte: str, value: float) -> str:
    """One value of a source that was worked out."""
    row = ANALYTES[analyte]
    unit = "" if analyte == "ph" else f" {unit_label(row.unit)}"
    return f"{names.label(analyte)} {plain(value, max(row.decimals, 1))}{unit}"


def is_blend(source: str) -> list[str]:
    """Readings were told of a source that is mixed of others."""
    return [
        _(
            "{source} is a blend, so its values follow from its parts; nothing is stored. Measure"
            " the parts, or give what you measured a name of its own."
        ).format(source=source)
    ]


def how_to_blend() -> list[str]:
    """A blend needs a name and its shares."""
    return [_("Name the blend and its shares, for example: /source mix 60% ro 40% tap")]


def is_measured(source: str) -> list[str]:
    """A blend was to take the name of a source that has readings."""
    return [
        _(
            "{source} has readings of its own, which a blend would hide: give the blend a new name."
        ).format(source=source),
        *how_to_blend(),
    ]


def reached(
    analyte: str,
    target: float,
    parts: Sequence[tuple[str, float]],
    amounts: Sequence[tuple[str, float]],
    values: str,
) -> list[str]:
    """The shares of two waters that make a wished value, and what comes with them."""
    name = f"{names.label(analyte)} {plain(target, 1)}"
    if amounts:
        each = names.listed([f"{litres(much)} {names.water(of)}" for of, much in amounts])
        first = _("{name} is {parts}: {amounts}.")
        told = first.format(name=name, parts=blend(parts), amounts=each)
    else:
        first = _("{name} is {parts}. Tell me the litres, and I tell those of each.")
        told = first.format(name=name, parts=blend(parts))
    return [told, _("The mix has {values}.").format(values=values)]


def blend_alone(
    parts: Sequence[tuple[str, float]], amounts: Sequence[tuple[str, float]], values: str
) -> str:
    """A mix by its shares, so many litres of each, and what comes of it."""
    if amounts:
        each = names.listed([f"{litres(much)} {names.water(of)}" for of, much in amounts])
        told = _("{parts}, that is {amounts}: {values}, as the parts are known today.")
        return told.format(parts=blend(parts), amounts=each, values=values)
    told = _("{parts}: {values}, as the parts are known today.")
    return told.format(parts=blend(parts), values=values)


def pure_holds_nothing(water: str) -> list[str]:
    """RO was said to be zero, which is what it is reckoned with."""
    told = _("{water} is reckoned with 0 of all that I reckon with. Nothing is stored.")
    return [
        told.format(water=names.water(water)),
        _("Ask for example: how much {water} for kh 4").format(water=names.water(water)),
    ]


def which_waters() -> list[str]:
    """Shares were told, and no second water is known."""
    return [
        _("Shares of which waters? I know no tap of yours, and RO alone has no minerals."),
        _("Measure it and send for example: /source tap ph 7.6 kh 8 gh 10 no3 5 temp 15"),
    ]


def before_use(*, treated: bool) -> list[str]:
    """What to do with a mix before it goes in."""
    if not treated:
        return [_("Mix it, let it stand, and measure it before it goes in, a little at a time.")]
    return [
        _(
            "Dechlorinate the tap's part first. Mix it, let it stand, and measure it before it goes"
            " in, a little at a time."
        )
    ]


def lacks(source: str, analyte: str) -> list[str]:
    """A value of one of the waters is not known."""
    told = _("I do not know {name} of {source}. Send for example: /source {source} {analyte} 5")
    return [told.format(name=names.label(analyte), source=names.water(source), analyte=analyte)]


def not_between(analyte: str, target: float, low: float, high: float) -> list[str]:
    """No shares of these two waters make the wished value."""
    return [
        _(
            "No mix of these two gets there: {name} {target} is not between {low} and {high}."
        ).format(
            name=names.label(analyte),
            target=plain(target, 1),
            low=plain(low, 1),
            high=plain(high, 1),
        )
    ]


def cycle(source: str) -> list[str]:
    """A blend would hold itself."""
    return [
        _("{source} cannot be mixed of itself, also not by way of another blend.").format(
            source=source
        ),
        *how_to_blend(),
    ]


_BAD: Final[Mapping[str, str]] = {
    "nitrate": N_(
        "Nitrate {amount} mg/L is over the drinking limit of 44 (10 as N): do not use this water"
        " for infant formula; contact your supplier."
    ),
    "nitrite": N_(
        "Nitrite {amount} mg/L is over the drinking limit of 0.5: not for infants, and no water for"
        " a change. Ask your supplier."
    ),
    "ammonia": N_(
        "Ammonia {amount} mg/L comes in with every change: change little, and take a dechlorinator"
        " that binds ammonia. It may be chloramine: ask your supplier."
    ),
    "copper": N_(
        "Copper {amount} mg/L harms shrimps, snails and corals: let the tap run before you draw,"
        " test again, and take RO or rain water for them."
    ),
    "chlorine": N_(
        "Chlorine {amount} mg/L burns gills: only dechlorinated into a tank. Ask for example:"
        " dechlorinate 20 l chlorine {amount}"
    ),
    "ph": N_(
        "pH {amount} is no drinking water (9.5 at most): test again, and ask your supplier before"
        " you use it."
    ),
}
"""What is said of each that is bad in a source."""


def bad(analyte: str, amount: float) -> str:
    """A value of a source that is bad for animals or people."""
    template = _BAD["chlorine" if analyte == "total_chlorine" else analyte]
    return _(template).format(amount=plain(amount, 2))


def softened(source: str, kh: float, gh: float) -> str:
    """Water that probably went through a softener, which is no new water for a tank. [°dH]"""
    told = _(
        "{source} is probably softened (KH {kh}, GH {gh} °dH): sodium, hardly any minerals. Take it"
        " from before the softener, or RO with minerals."
    )
    return told.format(source=names.water(source), kh=plain(kh, 1), gh=plain(gh, 1))


def unmeasured(source: str) -> list[str]:
    """A water was asked about of which nothing is known."""
    return [
        _("I cannot judge {source}: I know no values of it.").format(source=names.water(source)),
        _("Send for example: /source {source} ph 7.6 kh 8 gh 12 no3 10").format(source=source),
    ]


def does_not_suit(source: str, against: Sequence[str]) -> list[str]:
    """A source does not suit animals as it comes."""
    told = _("No, {source} does not suit as it comes. {finding}")
    return [told.format(source=names.water(source), finding=against[0]), *against[1:]]


def no_buffer() -> str:
    """A water without KH."""
    return _("It has hardly any KH: alone it holds no pH. Mix it with tap, or put minerals in.")


def suits(source: str, values: str) -> list[str]:
    """A source passes no limit of the animals that were asked about."""
    return [
        _("Yes: what I know of {source} passes no limit ({values}). No promise for all.").format(
            source=names.water(source), values=values
        ),
        _("In small parts, dechlorinated, as warm as the tank."),
    ]


def of_harm(source: str, against: Sequence[str], values: str) -> list[str]:
    """A source asked about as dangerous: neither yes nor no, which would mean the opposite."""
    if against:
        told = _("As it comes {source} does not suit. {finding}")
        return [told.format(source=names.water(source), finding=against[0]), *against[1:]]
    told = _("What I know of {source} passes no limit ({values}). No promise for all.")
    return [
        told.format(source=names.water(source), values=values),
        _("In small parts, dechlorinated, as warm as the tank."),
    ]


def none_yet() -> list[str]:
    """No source is on record."""
    return [
        _("No source water yet. Send for example: /source tap ph 7.6 kh 8 gh 12 no3 10 temp 12"),
        _("Or paste your supplier's water report behind /source tap; I ask before I keep it."),
    ]


def how(tank: str | None) -> list[str]:
    """The line was not understood; `tank` is a keeper's own, for the example."""
    if tank is None:
        return [_("Send for example: /source tap ph 7.6 kh 8 gh 12")]
    told = _("Send for example: /source tap ph 7.6 kh 8 gh 12, or: /source tap for {tank}")
    return [told.format(tank=tank)]


def unknown(name: str, known: Sequence[str], tank: str | None) -> list[str]:
    """No source of that name; `tank` is a keeper's own, for the example."""
    lines = [_("There is no source called {name}.").format(name=name[:60])]
    if known:
        lines.append(_("You have {known}.").format(known=", ".join(known)))
    return [" ".join(lines), *how(tank)]


def no_such_tank(name: str) -> list[str]:
    """No tank of that name."""
    return [_("There is no tank called {name}.").format(name=name[:60])]


def chosen(source: str, tank: str) -> list[str]:
    """A tank is filled from a source."""
    return [_("{tank} is filled from {source} from now on.").format(tank=tank, source=source)]


def empty(source: str) -> list[str]:
    """A source without readings."""
    return [_("{source}: nothing measured yet.").format(source=source)]
