"""What readings tell by themselves, in a few words beside them and in full behind "why"."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from bot.chat.words.numbers import plain, small, span
from core.advice import limits
from core.advice.hardness import HardnessClass

if TYPE_CHECKING:
    from bot.chat.derived import Derived


def class_words(analyte: str, held: HardnessClass) -> str:
    """A class with its scheme, to stand in brackets behind its value."""
    if analyte == "kh":
        return f"buffer {held.word} by {held.scheme}"
    return f"{held.word} by {held.scheme}"


def ammonia(derived: Derived) -> list[str]:
    """How much of the ammonia is un-ionised, where there is some."""
    judged = derived.ammonia
    if judged is None or not float(judged["total_n"]) > 0.0:
        return []
    return [
        f"Un-ionised ammonia is {small(float(judged['nh3_n']))} mg/L as N (warned of over"
        f" {plain(limits.NH3_WARN, 2)})."
    ]


def carbon(derived: Derived) -> list[str]:
    """What pH and KH tell of carbon dioxide, with what the kits leave open."""
    found = derived.carbon
    if found is None:
        return []
    ends = span(found.least, found.most, 0 if found.most >= 10.0 else 1)
    return [
        f"CO2 is about {small(found.mg_l)} mg/L by pH and KH ({ends} as far as the kits tell;"
        f" warned of over {plain(limits.CO2_WARN, 0)})."
    ]


def behind(derived: Derived) -> list[str]:
    """All of it, for who asks why."""
    return [*ammonia(derived), *carbon(derived), *_classes(derived)]


def _classes(derived: Derived) -> list[str]:
    lines = []
    if gh := derived.classes.get("gh"):
        lines.append(f"GH is {_by_all(gh)}: the schemes disagree, so the number counts.")
    if kh := derived.classes.get("kh"):
        lines.append(f"KH as a buffer is {_by_all(kh)}.")
    return lines


def _by_all(held: Sequence[HardnessClass]) -> str:
    return ", ".join(f"{each.word} by {each.scheme} ({each.band})" for each in held)
