"""What readings tell by themselves, in a few words beside them and in full behind "why"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from bot.chat.words.numbers import plain, small, span
from bot.chat.words.text import _
from core.advice import limits
from core.advice.hardness import HardnessClass

if TYPE_CHECKING:
    from bot.chat.derived import Derived


LEAST_SHOWN: Final = 0.001
"""Less is far under every limit. [mg/L]"""


def class_words(analyte: str, held: HardnessClass) -> str:
    """A class with its scheme, to stand in brackets behind its value."""
    template = _("buffer {word} by {scheme}") if analyte == "kh" else _("{word} by {scheme}")
    return template.format(word=_(held.word), scheme=_(held.scheme))


def ammonia(derived: Derived) -> list[str]:
    """How much of the ammonia is un-ionised, where there is some."""
    judged = derived.ammonia
    if judged is None or not float(judged["total_n"]) > 0.0:
        return []
    nh3, limit = float(judged["nh3_n"]), plain(limits.NH3_WARN, 2)
    if nh3 < LEAST_SHOWN:
        told = _("Un-ionised ammonia is under {least} mg/L as N (warned of over {limit}).")
        return [told.format(least=small(LEAST_SHOWN), limit=limit)]
    told = _("Un-ionised ammonia is {nh3} mg/L as N (warned of over {limit}).")
    return [told.format(nh3=small(nh3), limit=limit)]


def carbon(derived: Derived) -> list[str]:
    """What pH and KH tell of carbon dioxide, with what the kits leave open."""
    found = derived.carbon
    if found is None:
        return []
    ends = span(found.least, found.most, 0 if found.most >= 10.0 else 1)
    return [
        _(
            "CO2 is about {co2} mg/L by pH and KH ({ends} as far as the kits tell; warned"
            " of over {limit})."
        ).format(co2=small(found.mg_l), ends=ends, limit=plain(limits.CO2_WARN, 0))
    ]


def behind(derived: Derived) -> list[str]:
    """All of it, for who asks why."""
    return [*ammonia(derived), *carbon(derived), *_classes(derived)]


def _classes(derived: Derived) -> list[str]:
    lines = []
    if gh := derived.classes.get("gh"):
        lines.append(
            _("GH is {classes}: the schemes disagree, so the number counts.").format(
                classes=_by_all(gh)
            )
        )
    if kh := derived.classes.get("kh"):
        lines.append(_("KH as a buffer is {classes}.").format(classes=_by_all(kh)))
    return lines


def _by_all(held: Sequence[HardnessClass]) -> str:
    template = _("{word} by {scheme} ({band})")
    return ", ".join(
        template.format(word=_(each.word), scheme=_(each.scheme), band=_(each.band))
        for each in held
    )
