"""What is asked of an answer that is no plan: a bucket, a medium, an amount's effect, a bag.

Common practice, no source, where no other file of words has it.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import names
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import _, ngettext


def bucket_how(volume_l: float, salts: Sequence[str], hazards: Sequence[str]) -> list[str]:
    """How the salts of a bucket go in, in their order."""
    into = _("Straight into the {volume}, stirring until it is clear.")
    lines = [into.format(volume=litres(volume_l)), *bucket_order(salts)]
    if any(name.startswith("calcium sulfate") for name in salts):
        lines.append(
            _("Gypsum takes hours: a pump in the bucket, and the next salt when it is gone.")
        )
    return [*lines, *(_(each) for each in hazards)]


def bucket_order(salts: Sequence[str]) -> list[str]:
    """Which salt goes in first, and why not together."""
    if len(salts) < 2:
        return []
    shown = ", ".join(names.substance(name) for name in salts)
    return [
        _("In this order, each clear before the next: {salts}.").format(salts=shown),
        _("Never two in one jug: buffer and calcium fall out as lime."),
    ]


def bucket_safe() -> list[str]:
    """What of a bucket may harm: only where its water goes."""
    return [
        _("That bucket is without animals: no daily step binds there."),
        _("It does where the water goes in: ask first, for example: what if i change 20% with it."),
        _("Before use: aerated a day, as warm as the tank, and its GH, KH and pH measured."),
    ]


def bucket_litres(volume_l: float) -> list[str]:
    """For how much water a recipe is."""
    return [
        _("It is for {volume} in all; for another bucket tell me, for example: for 30 l").format(
            volume=litres(volume_l)
        )
    ]


def bucket_days() -> list[str]:
    """How long new water takes, and keeps."""
    return [
        _("Stir until it is clear, then aerate a day: only then does its pH stand."),
        _("Closed, clean and dark it keeps for some weeks; stir and test it again before use."),
    ]


def lime_how() -> list[str]:
    """How lime goes in."""
    return [
        _("Rinse a handful and lay it in a net where the filter's current goes through it."),
        _("In still gravel it hardly acts. Take it out when KH is where you want it."),
    ]


def lime_days() -> list[str]:
    """How long lime takes."""
    return [
        _("Days to weeks: more of it in a stronger current is faster, but ends at the same place."),
        _("KH and pH every day. Faster and by weight is a dose: dose kh +1"),
    ]


def lime_safe(kh: float, ph: float) -> list[str]:
    """Whether lime is safe: slow, but to an end that not all animals bear."""
    return [
        _("It is slow, but leads to about KH {kh} °dH, pH {ph}: not all animals bear that.").format(
            kh=plain(kh, 1), ph=plain(ph, 1)
        ),
        _("Ammonia first: a rising pH makes it poisonous. Take it out at the KH that you want."),
    ]


def leaves_how() -> list[str]:
    """How leaves and the like go in."""
    return [_("Rinsed, a few at a time; then KH and pH for some days before any more.")]


def leaves_days() -> list[str]:
    """How long leaves and the like take."""
    return [_("Days to weeks, and less each week. Measure KH and pH every two days.")]


def leaves_safe() -> list[str]:
    """Whether leaves and the like are safe."""
    return [
        _("What matters is KH: where it is low, pH can fall far and at once."),
        _("A few at a time, KH and pH every two days; take them out if KH falls."),
    ]


def amount_days(days: int) -> list[str]:
    """Whether an amount may go in at once, and else over how many days."""
    first = (
        ngettext(
            "Not at once with animals: over at least {days} day.",
            "Not at once with animals: over at least {days} days.",
            days,
        ).format(days=days)
        if days > 1
        else _("By its hardness that is within one day's step.")
    )
    return [
        first,
        _("Measure KH, pH and ammonia before each part. With your tank's readings I plan it:"
          " dose kh +1"),
    ]  # fmt: skip


def amount_why() -> list[str]:
    """What an effect rests on."""
    return [
        _(
            "With animals at most KH 1 °dH and a doubling, GH 2 °dH and pH 0.3 a day (common"
            " practice)."
        ),
        _("Reckoned by formula weight: taken as pure, in the net volume."),
    ]


def amount_litres(volume_l: float) -> list[str]:
    """In how much water an amount was reckoned."""
    return [_("In {volume}. Another volume: for example: in 60 l").format(volume=litres(volume_l))]


def bag_days(minutes: float, days: float | None) -> list[str]:
    """How long new animals take from the bag to the tank."""
    lines = [_("About {minutes} min by those steps.").format(minutes=plain(minutes, 0))]
    if days:
        told = ngettext(
            "And {days} day of matching the water.", "And {days} days of matching the water.", days
        )
        lines.append(told.format(days=plain(days, 0)))
    lines.append(
        _("An open bag is no kinder for longer: its pH rises, and its ammonia harms more.")
    )
    return lines


def bag_order() -> list[str]:
    """In which order new animals move."""
    return [
        _("In the order of the numbers: warmth first, with the bag closed; then the animals."),
        _("Net them over: none of the bag's water goes into the tank."),
    ]


def bag_safe(bag: Mapping[str, float]) -> list[str]:
    """What harms animals on the way in."""
    lines = [
        _("The harm is in a jump of warmth, KH, GH or salt, and in ammonia once the bag is open."),
        _("So not just tipped in, and none of the bag's water into the tank."),
    ]
    if {"kh", "gh"} - set(bag):
        lines.append(_("Tell me the bag's water: bag ph 6.4 kh 3 gh 6 temp 22 ammonia 1"))
    return lines
