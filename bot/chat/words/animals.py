"""Answers about animals: may they be kept, who is meant, what could live here, coming home."""

from __future__ import annotations

from collections.abc import Callable, Collection, Sequence
from typing import Final

from bot.chat.words.finding_animals import do_not_go_together
from bot.chat.words.numbers import litres, plain
from core.advice.keeping import Keeping
from core.advice.livestock import (
    SHOAL,
    Conflict,
    Found,
    Misfit,
    Species,
    Suited,
    source_text,
)
from core.analytes import ANALYTES
from core.message.model import Event

LINES: Final = 6
NAMES_SHOWN: Final = 6
THAT_TANK: Final = "that tank"
"""A tank that is not on record."""
THAT_WATER: Final = "That water"
"""A water whose values the question tells."""


def which(said: str, found: Found, language: str = "en") -> list[str]:
    """Ask who is meant, or say that the name is not known."""
    name = said.strip()[:40]
    if not found.candidates:
        return [f"I do not know “{name}”. Send its scientific name, or a common one."]
    rows = " or ".join(f"{row.name_in(language)} ({row.scientific})" for row in found.candidates)
    if found.shared:
        return [f"“{name}” can be several kinds: {rows}?"]
    return [f"I do not know “{name}”. Did you mean {rows}?"]


def lost_which(count: int | None) -> list[str]:
    """Animals were lost of a kind that was not named, or whose name several share."""
    if count == 1:
        return ["Of which kind was it? The record waits for that."]
    return ["Of which kind were they? The record waits for that."]


CROWD_NO: Final = "no, leave it out"


def crowd(tank: str, volume_l: float | None, event: Event) -> list[str]:
    """So many animals are more likely a slip; nothing is stored yet."""
    said = f"{event.count:,} {event.species}"
    if volume_l is None:
        return [f"{said} in {tank}? That is a great many, so it is not stored yet."]
    return [f"{said} in the {litres(volume_l)} of {tank}? That is a great many: not stored yet."]


def crowd_yes(event: Event) -> str:
    """The button that stores so many animals."""
    return f"yes, {event.count:,}"


def keep(answer: Keeping, tank: str) -> list[str]:
    """Whether a kind may join a tank: the verdict first, then what stands against it."""
    name = answer.name_of(answer.asked)
    care = "the company there" if answer.conflicts else "its size"
    first = {
        "yes": f"Yes: what I know of {tank} suits {name}.",
        "no": f"No, not in {tank}: {name} would not do well there.",
        "care": f"Only with care: the water in {tank} suits {name}, {care} may not.",
        "retest": f"Retest first: the doubt of your kits decides whether {tank} suits {name}.",
        "unmeasured": f"I know nothing of the water in {tank} yet: measure pH, GH and temperature.",
    }[answer.verdict]
    lines = [first, *map(misfit, answer.misfits)]
    lines += [conflict(found, answer.name_of) for found in answer.conflicts]
    if answer.cramped is not None:
        lines.append(cramped(name, answer.asked.length or 0.0, answer.cramped))
    if not answer.misfits and not answer.conflicts:
        lines.append(f"What suits: {wants(answer.asked)}.")
    if answer.verdict == "yes" and answer.unmeasured:
        labels = ", ".join(ANALYTES[of].label for of in answer.unmeasured)
        lines.append(f"Not measured yet: {labels}.")
    if answer.unknown:
        lines.append(f"I cannot judge its company with {', '.join(answer.unknown[:3])}.")
    if answer.asked.shoals and answer.verdict in {"yes", "care"}:
        lines.append(f"They live in groups: {SHOAL} or more. A few at a time.")
    elif answer.verdict == "yes":
        lines.append("A few at a time; how many fit is not judged.")
    return lines[:LINES]


def cramped(name: str, length: float, least_l: float) -> str:
    """A fish that outgrows the tank, by a rule of thumb."""
    return (
        f"{name[:1].upper()}{name[1:]} can grow to about {plain(length, 0)} cm: at least"
        f" {plain(round(least_l, -1), 0)} L, by rule of thumb."
    )


def misfit(found: Misfit) -> str:
    """A reading outside of a range, with the range's source."""
    row = ANALYTES[found.analyte]
    unit = "" if row.unit == "pH" else f" {row.unit}"
    doubt = "" if found.certain else " (within the kit's doubt)"
    label = row.label if row.label == "pH" else row.label[:1].upper() + row.label[1:]
    return (
        f"{label} {plain(found.value, row.decimals)}{unit} is outside"
        f" {plain(found.span.low, 1)}–{plain(found.span.high, 1)}{doubt};"
        f" {_short(found.span.source)}."
    )


def conflict(found: Conflict, name_of: Callable[[Species], str]) -> str:
    """Two kinds that do not suit each other, as the keeper calls them."""
    return do_not_go_together(
        {
            "reason": found.reason,
            "species": name_of(found.one),
            "species_2": name_of(found.other),
            **found.facts,
        }
    )


def wants(row: Species) -> str:
    """The ranges of a kind in one line."""
    parts = []
    for of, span in row.ranges.items():
        analyte = ANALYTES[of]
        if of == "salinity" and row.water == "fresh":
            continue
        unit = "" if analyte.unit == "pH" else f" {analyte.unit}"
        parts.append(f"{analyte.label} {plain(span.low, 1)}–{plain(span.high, 1)}{unit}")
    return ", ".join(parts)


def _short(source: str) -> str:
    """A source in a few words; the whole of it stands under why."""
    return "FishBase 2013" if source == "fishbase2013" else source_text(source)


def could_live(suited: Sequence[Suited], source: str, water: Collection[str]) -> list[str]:
    """What could live in a water as it is, by company, the best suited first."""
    if not suited and not {"gh", "kh", "salinity"} & set(water):
        return [f"Tell me GH and KH of {source} first, for example: /source {source} gh 8 kh 5"]
    if not suited:
        return [
            f"{source} as it is suits no kind that I know.",
            "Blended with RO, or hardened with salts, it can: ask what if i change 50% with ro",
        ]
    groups: dict[str, list[str]] = {}
    for one in suited:
        groups.setdefault(one.species.group, []).append(one.species.name)
    best = sorted(groups.items(), key=lambda item: -len(item[1]))
    lines = [f"{source} as it is suits {len(suited)} kinds that I know; some of them:"]
    lines += [f"{group}: {', '.join(names[:NAMES_SHOWN])}" for group, names in best[: LINES - 2]]
    return [*lines, "By hardness first; warmth, company and the size of the tank are not judged."]
