"""Tanks in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import tzinfo
from typing import Final

from bot.chat.words import names
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import N_, _
from bot.chat.words.traits import day
from core.message.model import Kit
from core.tank import ALLOWANCE, FILLED, Box, Setup, Tank, TankKind

NO_LITRES = N_("no, I send the litres")

KINDS: Final[Mapping[TankKind, str]] = {
    "fresh": N_("fresh"),
    "brackish": N_("brackish"),
    "marine": N_("marine"),
    "pond": N_("pond"),
}

SETUPS: Final[Mapping[Setup, str]] = {
    "planted": N_("planted"),
    "unplanted": N_("no plants"),
    "reef": N_("reef"),
    "fish_only": N_("fish only"),
}


def shown(tank: Tank, zone: tzinfo | None = None) -> str:
    """A tank in one line."""
    traits = [
        litres(tank.volume_l) if tank.volume_l is not None else _("volume not told yet"),
        _(KINDS[tank.kind]),
    ]
    if tank.setup:
        traits.append(_(SETUPS[tank.setup]))
    if tank.soft:
        traits.append(_("kept soft on purpose"))
    if tank.co2:
        traits.append(_("CO2 injected"))
    if tank.set_up:
        since = day(tank.set_up.astimezone(zone).date())
        traits.append(_("set up {day}").format(day=since))
    kits = [_kit(analyte, kit) for analyte, kit in tank.kits.items()]
    return names.of_tank(tank.name, "; ".join([", ".join(traits), *kits]))


def _kit(analyte: str, kit: Kit) -> str:
    """What is kept of a kit."""
    told = [_("kit {name}").format(name=names.said(analyte))]
    if kit.per_drop:
        told.append(_("{number} °dH a drop").format(number=plain(kit.per_drop, 3)))
    if kit.basis:
        told.append(_("as {basis}").format(basis=kit.basis))
    if kit.good_until:
        told.append(_("good until {day}").format(day=day(kit.good_until)))
    return " ".join(told)


def stock(animals: Mapping[str, int | None]) -> list[str]:
    """The animals on record, if any; without a number where nobody told one."""
    if not animals:
        return []
    held = ", ".join(
        species if count is None else f"{count} {species}" for species, count in animals.items()
    )
    return [_("Animals: {held}").format(held=held)]


def listing(tanks: Sequence[Tank]) -> list[str]:
    """All tanks of the chat."""
    if not tanks:
        return [_("No tanks yet. Add one: /tank new Fern 90 l fresh")]
    return [shown(tank) for tank in tanks]


def made(tank: Tank, *, adopted: bool) -> list[str]:
    """A tank was added, or the one made on the fly got its name."""
    lines = [_("Added {tank}.").format(tank=shown(tank))]
    if adopted:
        lines.append(_("What you sent before you named a tank is kept as this one's."))
    if tank.volume_l is None:
        lines.append(_("Its net volume is asked for when it is first needed."))
    return lines


def adopted_choice() -> str:
    """The tank made on the fly is another one."""
    return _("no, that was another tank")


def separated(name: str) -> list[str]:
    """The earlier readings are another tank's."""
    return [_("Kept apart: the earlier readings stay under “{name}”.").format(name=name)]


def changed(tank: Tank) -> list[str]:
    """A tank was changed."""
    lines = [_("Now {tank}.").format(tank=shown(tank))]
    if not tank.named:
        told = _("It can have a name of its own, for example: /tank rename {name} Fern")
        lines.append(told.format(name=tank.name))
    return lines


def until_now(before: float) -> str:
    """That another volume was on record."""
    return _("It was down as {before} until now.").format(before=litres(before))


def not_for(before: float, now: float) -> str:
    """That what was reckoned for another volume does not hold."""
    told = _("Amounts that I reckoned for {before} do not hold for {now}.")
    return told.format(before=litres(before), now=litres(now))


def resized_back(tank: Tank) -> list[str]:
    """That a tank has the volume again that it had."""
    return [
        _("Taken back: {tank} holds {volume} again.").format(
            tank=tank.name, volume=litres(tank.volume_l or 0.0)
        )
    ]


def whether_from_now(tank: Tank, volume: float) -> list[str]:
    """A volume that is so at the moment: whether to reckon with it."""
    told = _("{tank} has {held} on record. Shall I reckon with {volume} from now on?")
    held = litres(tank.volume_l or 0.0)
    return [told.format(tank=tank.name, held=held, volume=litres(volume))]


def nothing_is(wrong: float) -> list[str]:
    """That nothing on record is the number that shall be put right."""
    told = _(
        "Nothing that I have of late is {wrong}, so nothing is put right. Send what you mean with"
        " its name, for example: tank 80 l, or: no, kh 5"
    )
    return [told.format(wrong=plain(wrong, 4))]


def negative() -> list[str]:
    """That no tank holds less than nothing."""
    return [_("No tank holds less than nothing, so nothing is stored. Send for example: 90 l")]


def box(tank: str, held: Box) -> list[str]:
    """A volume worked out from lengths, for the keeper to confirm."""
    size = (
        _("{tank}: {length} × {width} × {depth} cm is {volume} outside.")
        if held.depth_said
        else _(
            "{tank}: {length} × {width} × {depth} cm (water at {filled} of the height) is {volume}"
            " outside."
        )
    )
    return [
        size.format(
            tank=tank,
            length=plain(held.length, 1),
            width=plain(held.width, 1),
            depth=plain(held.depth, 1),
            filled=f"{FILLED:.0%}",
            volume=litres(held.gross_l),
        ),
        _(
            "Less {allowance} for glass, substrate and decor that is about {volume} of"
            " water. Is that right?"
        ).format(allowance=f"{ALLOWANCE:.0%}", volume=litres(held.net_l)),
    ]


def box_yes(held: Box) -> str:
    """The button that takes the worked-out volume."""
    return yes_volume(held.net_l)


def yes_volume(volume: float) -> str:
    """The button that takes a volume."""
    return _("yes, {volume}").format(volume=litres(volume))


def whether_volume(tank: Tank, volume: float) -> list[str]:
    """A volume that was said alone, perhaps the tank's."""
    return [_("Does {tank} hold {volume} of water?").format(tank=tank.name, volume=litres(volume))]


def send_litres() -> list[str]:
    """The keeper knows better."""
    return [_("Send the net volume, for example: 90 l")]


def volume_set(tank: Tank) -> str:
    """The volume is known now."""
    return _("{tank} holds {volume} of water.").format(
        tank=tank.name, volume=litres(tank.volume_l or 0.0)
    )


def volume_implausible(volume: float) -> list[str]:
    """A volume that no tank has."""
    return [
        _("{volume} L is no tank that I can believe. Send for example: 90 l").format(
            volume=plain(volume, 4)
        )
    ]


def renamed(before: str, after: str) -> list[str]:
    """A tank has another name."""
    return [_("{before} is now called {after}.").format(before=before, after=after)]


def name_taken(name: str) -> list[str]:
    """Another tank has that name."""
    return [_("There is a tank called {name} already. Choose another name.").format(name=name)]


def name_refused(reason: str) -> list[str]:
    """A name that cannot be a tank's."""
    told = _("{problem} Send for example: /tank new Fern 90 l fresh")
    return [told.format(problem=_(_REFUSED[reason]))]


_REFUSED: Final[Mapping[str, str]] = {
    "empty": N_("The tank needs a name."),
    "too_long": N_("That name is too long or has odd characters in it."),
    "reserved": N_("That name would be mistaken for something else."),
}


def not_understood(rest: str) -> list[str]:
    """Part of the line was not understood; nothing was stored."""
    return [
        _("I do not understand “{rest}”, so nothing was changed.").format(rest=rest[:60]),
        _("Send for example: /tank new Fern 90 l fresh"),
    ]


def unknown(name: str, known: Sequence[str]) -> list[str]:
    """No tank of that name."""
    told = _("There is no tank called {name}.").format(name=name[:60])
    if not known:
        return [told]
    have = _("You have {known}.").format(known=", ".join(known))
    return [f"{told} {have}"]


def how_to_rename(tank: str | None) -> list[str]:
    """The two names are missing; `tank` is a keeper's own, for the example."""
    told = _("Send for example: /tank rename {tank} Moss")
    return [told.format(tank=tank or names.first_tank())]


def confirm_delete(name: str) -> list[str]:
    """Ask before a tank goes."""
    return [
        _("Delete {name}? Its reminders end and it is no longer listed; history is kept.").format(
            name=name
        )
    ]


def deleted(name: str) -> list[str]:
    """A tank is no longer listed."""
    return [_("{name} is deleted, its reminders have ended.").format(name=name)]


def kept(name: str) -> list[str]:
    """A tank stays."""
    return [_("{name} stays.").format(name=name)]


def kit_set(tank: str, analyte: str, per_drop: float | None, basis: str | None) -> list[str]:
    """How a kit reads is on record."""
    template = (
        _("{tank}: the {name} kit is counted as {basis} from now on.")
        if per_drop is None
        else _("{tank}: the {name} kit is {number} °dH a drop from now on.")
    )
    number = "" if per_drop is None else plain(per_drop, 3)
    return [template.format(tank=tank, name=names.said(analyte), number=number, basis=basis)]


def kit_how() -> list[str]:
    """The kit line was not understood."""
    return [_("Send for example: /tank kit kh 0.5 per drop, or: /tank kit no3 as N")]


def which() -> list[str]:
    """No tank to change."""
    return [_("Which tank? Add one first: /tank new Fern 90 l fresh")]


def told_apart(left: list[str]) -> list[str]:
    """What of an introduction was not understood."""
    told = _("Not stored: “{text}”. Send it apart, for example: added 2 clownfish, or: kh 4")
    return [told.format(text="”, “".join(left))]
