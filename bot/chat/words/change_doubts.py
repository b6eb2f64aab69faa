"""How sure a water change's figures are, in words, and what to measure again before it."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words import names
from bot.chat.words.levels import unit
from bot.chat.words.numbers import plain, small, span
from bot.chat.words.text import N_, _
from core.advice.change_doubt import Between, ChangeDoubt


def retest_first(doubt: ChangeDoubt) -> str:
    """What decides, to be measured again before the change."""
    told = _("Retest {names} first: within your kits' doubt it would be too much.")
    return told.format(names=names.both([names.analyte(each) for each in doubt.retest_first]))


STAGES: Mapping[str, str] = {
    "at_once": N_("By your kits' steps, nine times in ten, at once: {values}."),
    "stood": N_("By your kits' steps, after standing: {values}."),
    "if_co2_leaves": N_("By your kits' steps, if CO2 leaves: {values}."),
}
"""The templates of each stage."""

SHOWN: Mapping[str, tuple[str, ...]] = {
    "at_once": ("ph", "kh", "gh", "nitrate", "nh3_n"),
    "stood": ("ph", "nh3_n"),
    "if_co2_leaves": ("ph", "nh3_n"),
}
"""What is told of each stage; the rest is as at once."""


def more(doubt: ChangeDoubt) -> list[str]:
    """Between which ends the kits, the thermometer and the volume leave each figure."""
    lines = []
    for stage, template in STAGES.items():
        found = doubt.stages[stage]
        values = [_ends(name, found[name]) for name in SHOWN[stage] if name in found]
        if values:
            lines.append(_(template).format(values=", ".join(values)))
    least, most = (100.0 * share for share in doubt.largest_safe_share)
    told = _("The largest safe share then is {share} %.")
    return [*lines, told.format(share=span(least, most, 0))]


def _ends(name: str, between: Between) -> str:
    least, most = between
    if name == "nh3_n":
        told = _("poisonous ammonia {least}–{most} mg/L as N")
        return told.format(least=small(least), most=small(most))
    if name == "nitrate":
        told = _("nitrate {least}–{most} mg/L")
        return told.format(least=plain(least, 0), most=plain(most, 0))
    return f"{names.label(name)} {span(least, most, 1)}{unit(name)}"
