"""Words for what is asked after an answer. None begins with yes or no: both ways are asked."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from bot.chat.words.numbers import plain
from bot.chat.words.text import _, ngettext


def plan(tank: str, against: Sequence[str], parts: int, *, unknown: bool) -> list[str]:
    """A plan for the animals that are there."""
    if against:
        told = _("{tank}: where that plan leads does not suit them. {finding}")
        return [told.format(tank=tank, finding=against[0]), *against[1:]]
    lines = [
        _("{tank}: as planned, it passes no limit that I know for the animals there.").format(
            tank=tank
        )
    ]
    if parts > 1:
        told = ngettext(
            "Only as {count} part, tested before each next one: all at once would be too fast.",
            "Only in {count} parts, tested before each next one: all at once would be too fast.",
            parts,
        )
        lines.append(told.format(count=parts))
    lines.append(_("Weighed, dissolved first; watch them for an hour, and stop if they gasp."))
    if unknown:
        lines.append(_("No animal is on record there. Tell me, for example: 10 neons"))
    return lines


def amount(tank: str, days: float, past: Mapping[str, Any] | None) -> list[str]:
    """An amount whose effect was told, for the animals that are there."""
    if past is not None and {"species", "to", "highest"} <= past.keys():
        told = _("{tank}: too much for {species}: it makes {to}, they suit up to {highest}.")
        figures = {name: plain(past[name], 1) for name in ("to", "highest")}
        return [told.format(tank=tank, species=past["species"], **figures)]
    if days > 1:
        told = ngettext(
            "{tank}: all at once it is too much for them. It belongs over at least {count} day.",
            "{tank}: all at once it is too much for them. It belongs over at least {count} days.",
            round(days),
        )
        return [told.format(tank=tank, count=round(days))]
    return [
        _("{tank}: so much passes no limit that I know for the animals there.").format(tank=tank),
        _("Weighed, dissolved first; watch them for an hour, and stop if they gasp."),
    ]


def change(tank: str, *, broken: bool, unsuited: bool) -> list[str]:
    """A change of water for the animals that are there."""
    lead = (
        _("{tank}: all at once it would be too much for them; in the smaller changes it is not.")
        if broken
        else _("{tank}: it passes no limit that I know for the animals there.")
    )
    lines = [lead.format(tank=tank)]
    if unsuited:
        lines.append(_("But where it ends does not suit all of them, as I said."))
    lines.append(_("Dechlorinated, as warm as the tank, slowly; stop if they gasp or hide."))
    return lines


def water(tank: str, against: Sequence[str]) -> list[str]:
    """The water of a tank for animals that are not in it."""
    if against:
        told = _("{tank}: its water does not suit them. {finding}")
        return [told.format(tank=tank, finding=against[0]), *against[1:]]
    return [
        _("{tank}: what I know of its water passes no limit for them; none is on record.").format(
            tank=tank
        )
    ]


def none_given(reasons: Sequence[str]) -> list[str]:
    """What was asked for was refused: its reason again."""
    return [_("I gave no amount for that. {reason}").format(reason=reasons[0]), *reasons[1:]]


def which_part() -> list[str]:
    """A part of a plan that nobody knows."""
    return [
        _("I know of no plan with a part left. Retest first, then ask anew, for example: dose kh 6")
    ]


def no_part_now(poison: Sequence[str]) -> list[str]:
    """What makes animals ill now goes before the next part."""
    return [_("No next part now. {finding}").format(finding=poison[0]), *poison[1:]]


def crash(tank: str, kh: float | None, limit: float, *, later: bool) -> list[str]:
    """Whether pH may fall suddenly, by the KH that holds it, now or as it would be. [°dH]"""
    if kh is None:
        return [
            _("{tank}: KH tells: it holds pH, and I know none of it.").format(tank=tank),
            _("Measure it and send it, for example: kh 4"),
        ]
    if kh >= limit:
        lead = (
            _("{tank}: hardly: KH would be {kh} °dH then, which holds pH.")
            if later
            else _("{tank}: hardly: KH is {kh} °dH, which holds pH.")
        )
        note = _("Under {limit} it can, and KH is used up day by day: test it weekly.")
        return [lead.format(tank=tank, kh=plain(kh, 1)), note.format(limit=plain(limit, 1))]
    lead = (
        _("{tank}: it can: KH would be only {kh} °dH then, and under {limit} pH can fall.")
        if later
        else _("{tank}: it can: KH is only {kh} °dH, and under {limit} pH can fall.")
    )
    act = (
        _("Rather smaller changes, or water with more KH: mix the tap in.")
        if later
        else _("Test KH and pH daily; raise KH a little a day: dose kh +1. No fast rise of pH.")
    )
    return [lead.format(tank=tank, kh=plain(kh, 1), limit=plain(limit, 1)), act]
