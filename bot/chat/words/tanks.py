"""Tanks in words."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from datetime import tzinfo

from bot.chat.words.numbers import litres, plain
from bot.chat.words.traits import day
from core.tank import ALLOWANCE, FILLED, Box, Tank

NO_LITRES = "no, I send the litres"


def shown(tank: Tank, zone: tzinfo | None = None) -> str:
    """A tank in one line."""
    volume = litres(tank.volume_l) if tank.volume_l is not None else "volume not told yet"
    soft = ", kept soft on purpose" if tank.soft else ""
    carbon = ", CO2 injected" if tank.co2 else ""
    since = f", set up {day(tank.set_up.astimezone(zone).date())}" if tank.set_up else ""
    kits = "".join(
        f"; kit {analyte}"
        + (f" {plain(kit.per_drop, 3)} °dH a drop" if kit.per_drop else "")
        + (f" as {kit.basis}" if kit.basis else "")
        + (f" good until {day(kit.good_until)}" if kit.good_until else "")
        for analyte, kit in tank.kits.items()
    )
    return f"{tank.name}: {volume}, {tank.kind}{soft}{carbon}{since}{kits}"


def stock(animals: Mapping[str, int]) -> list[str]:
    """The animals on record, if any."""
    if not animals:
        return []
    return ["Animals: " + ", ".join(f"{count} {species}" for species, count in animals.items())]


def listing(tanks: Sequence[Tank]) -> list[str]:
    """All tanks of the chat."""
    if not tanks:
        return ["No tanks yet. Add one: /tank new Fern 90 l fresh"]
    return [shown(tank) for tank in tanks]


def made(tank: Tank, *, adopted: bool) -> list[str]:
    """A tank was added, or the one made on the fly got its name."""
    lines = [f"Added {shown(tank)}."]
    if adopted:
        lines.append("What you sent before you named a tank is kept as this one's.")
    if tank.volume_l is None:
        lines.append("Its net volume is asked for when it is first needed.")
    return lines


def adopted_choice() -> str:
    """The tank made on the fly is another one."""
    return "no, that was another tank"


def separated(name: str) -> list[str]:
    """The earlier readings are another tank's."""
    return [f"Kept apart: the earlier readings stay under “{name}”."]


def changed(tank: Tank) -> list[str]:
    """A tank was changed."""
    return [f"Now {shown(tank)}."]


def box(tank: str, held: Box) -> list[str]:
    """A volume worked out from lengths, for the keeper to confirm."""
    depth = plain(held.depth, 1)
    assumed = "" if held.depth_said else f" (water at {FILLED:.0%} of the height)"
    return [
        f"{tank}: {plain(held.length, 1)} × {plain(held.width, 1)} × {depth} cm{assumed} is"
        f" {litres(held.gross_l)} outside.",
        f"Less {ALLOWANCE:.0%} for glass, substrate and decor that is about"
        f" {litres(held.net_l)} of water. Is that right?",
    ]


def box_yes(held: Box) -> str:
    """The button that takes the worked-out volume."""
    return f"yes, {litres(held.net_l)}"


def send_litres() -> list[str]:
    """The keeper knows better."""
    return ["Send the net volume, for example: 90 l"]


def volume_set(tank: Tank) -> str:
    """The volume is known now."""
    return f"{tank.name} holds {litres(tank.volume_l or 0.0)} of water."


def volume_implausible(volume: float) -> list[str]:
    """A volume that no tank has."""
    return [f"{plain(volume, 4)} L is no tank that I can believe. Send for example: 90 l"]


def renamed(before: str, after: str) -> list[str]:
    """A tank has another name."""
    return [f"{before} is now called {after}."]


def name_taken(name: str) -> list[str]:
    """Another tank has that name."""
    return [f"There is a tank called {name} already. Choose another name."]


def name_refused(reason: str) -> list[str]:
    """A name that cannot be a tank's."""
    said = {
        "empty": "The tank needs a name.",
        "too_long": "That name is too long or has odd characters in it.",
        "reserved": "That name would be mistaken for something else.",
    }[reason]
    return [f"{said} Send for example: /tank new Fern 90 l fresh"]


def not_understood(rest: str) -> list[str]:
    """Part of the line was not understood; nothing was stored."""
    return [
        f"I do not understand “{rest[:60]}”, so nothing was changed.",
        "Send for example: /tank new Fern 90 l fresh",
    ]


def unknown(name: str, names: Sequence[str]) -> list[str]:
    """No tank of that name."""
    have = f" You have {', '.join(names)}." if names else ""
    return [f"There is no tank called {name[:60]}.{have}"]


def how_to_rename() -> list[str]:
    """The two names are missing."""
    return ["Send for example: /tank rename Fern Moss"]


def confirm_delete(name: str) -> list[str]:
    """Ask before a tank goes."""
    return [f"Delete {name}? Its reminders end and it is no longer listed; history is kept."]


def deleted(name: str) -> list[str]:
    """A tank is no longer listed."""
    return [f"{name} is deleted, its reminders have ended."]


def kept(name: str) -> list[str]:
    """A tank stays."""
    return [f"{name} stays."]


def kit_set(tank: str, analyte: str, per_drop: float | None, basis: str | None) -> list[str]:
    """How a kit reads is on record."""
    how = f"{plain(per_drop, 3)} °dH a drop" if per_drop is not None else f"counted as {basis}"
    return [f"{tank}: the {analyte} kit is {how} from now on."]


def kit_how() -> list[str]:
    """The kit line was not understood."""
    return ["Send for example: /tank kit kh 0.5 per drop, or: /tank kit no3 as N"]


def which() -> list[str]:
    """No tank to change."""
    return ["Which tank? Add one first: /tank new Fern 90 l fresh"]
