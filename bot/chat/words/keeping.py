"""May a kind be kept, how many of it, and what could live in a water: the answers."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Final

from bot.chat.words import names
from bot.chat.words.companions import demands
from bot.chat.words.finding_animals import do_not_go_together, rival_line
from bot.chat.words.numbers import plain
from bot.chat.words.text import N_, _
from core.advice.keeping import Keeping
from core.advice.livestock import SHOAL, Conflict, Misfit, Species, source_text
from core.analytes import ANALYTES

LINES: Final = 6


THAT_TANK: Final = N_("that tank")
"""A tank that is not on record."""


THAT_WATER: Final = N_("That water")
"""A water whose values the question tells."""


def keep(answer: Keeping, tank: str, *, sized: bool = False, judged: bool = False) -> list[str]:
    """Whether a kind may join a tank: the verdict first, then what stands against it.

    `sized` tells that the size of the tank is asked about, `judged` that its safety is, or that
    something else is first against it: then what was judged stands in the place of a yes or no.
    """
    name = answer.name_of(answer.asked)
    reason = _reason(answer)
    if sized and reason in {"yes", "unmeasured"}:
        reason = "large_enough"
    lines = [_first(answer, reason, tank, judged=judged)]
    if answer.foreign is not None:
        water, here = answer.foreign
        return [*lines, foreign(names.capital(name), water, tank, here)]
    lines += demands(answer.asked, names.capital(name))
    if answer.rival is not None and answer.asked.rivals is not None:
        lines.append(rival_line(answer.asked.rivals, names.capital(name), answer.sexes))
    lines += map(misfit, answer.misfits)
    lines += company(answer)
    if answer.crowded is not None:
        lines.append(crowded(answer.count, name, answer.crowded))
    elif answer.cramped is not None:
        lines.append(cramped(name, answer.asked.length or 0.0, answer.cramped))
    if answer.few is not None:
        lines.append(few(answer.few, name))
    if answer.verdict != "no" and not answer.misfits and not answer.conflicts:
        lines.append(_("What suits: {ranges}.").format(ranges=wants(answer.asked)))
    if answer.verdict == "yes" and answer.unmeasured:
        labels = ", ".join(names.label(of) for of in answer.unmeasured)
        lines.append(_("Not measured yet: {labels}.").format(labels=labels))
    if answer.unknown:
        lines.append(
            _("I cannot judge its company with {unknown}.").format(
                unknown=", ".join(answer.unknown[:3])
            )
        )
    lines += _how_many(answer, names.capital(name))
    return lines[:LINES]


def company(answer: Keeping) -> list[str]:
    """Who does not suit it: those whom it would harass or eat alike in one line."""
    lines: dict[tuple[str, str, str], list[Conflict]] = {}
    for found in answer.conflicts:
        by_it = found.one == answer.asked and found.reason not in ANALYTES
        whom = "" if by_it else found.other.scientific
        lines.setdefault((found.reason, found.one.scientific, whom), []).append(found)
    return [
        conflict(
            alike[0], answer.name_of, names.listed([answer.name_of(each.other) for each in alike])
        )
        for alike in lines.values()
    ]


def how_many(answer: Keeping, tank: str, most: int | None) -> list[str]:
    """How many fit: the number that is too many for sure, and what else is to be known."""
    name = answer.name_of(answer.asked)
    rest = keep(answer, tank)[1:]
    if answer.asked.rivals is not None:
        line = rival_line(answer.asked.rivals, names.capital(name), answer.sexes)
        return [line, *(other for other in rest if other != line)][:LINES]
    if most is None:
        first = _("I do not judge how many {name} fit; start with a few.").format(name=name)
    elif most == 0:
        first = _("No more: {tank} has no room for {name} beside its fish.").format(
            tank=tank, name=name
        )
    else:
        first = _(
            "More than {most} {name} are too many for {tank} for sure; half as many is wiser."
        ).format(most=f"{most:,}", name=name, tank=tank)
    return [first, *rest][:LINES]


def held(tank: str, count: int, name: str) -> str:
    """How many are on record."""
    return _("{tank}, on record of {name}: {count}.").format(
        tank=tank, count=f"{count:,}", name=name
    )


def how_many_of_whom() -> list[str]:
    """A number of fish of no kind is no number."""
    return [
        _("That depends on the kind. Ask, for example: how many neons can i keep in 60 l"),
        _("Or: what could live in my water"),
    ]


def _how_many(answer: Keeping, name: str) -> list[str]:
    """What is to be known of their number where nothing stands against them."""
    if answer.verdict not in {"yes", "care", "unmeasured"} or answer.few is not None:
        return []
    if answer.asked.rivals is not None:
        return [] if answer.rival is not None else [rival_line(answer.asked.rivals, name)]
    if answer.asked.shoals:
        return [
            _("They live in groups: {count} or more, with ammonia and nitrite at 0.").format(
                count=SHOAL
            )
        ]
    if answer.verdict != "yes" or not answer.asked.is_animal:
        return []
    return [_("A few at a time, with ammonia and nitrite at 0.")]


def _reason(answer: Keeping) -> str:
    """Which first line answers."""
    surely = [m for m in answer.misfits if m.certain]
    if answer.verdict == "no" and not (answer.foreign or answer.conflicts or surely):
        if answer.rival == "sure":
            return "no_rivals"
        if answer.spent:
            return "spent"
        return "no_crowd" if answer.crowded is not None else "no_room"
    if answer.verdict != "care":
        return answer.verdict
    if answer.conflicts:
        return "company"
    if answer.rival is not None:
        return "rivals"
    if not (answer.few or answer.cramped or answer.crowded):
        return "demands"
    return "few" if answer.cramped is None and answer.crowded is None else "care"


def _first(answer: Keeping, reason: str, tank: str, *, judged: bool) -> str:
    name = answer.name_of(answer.asked)
    if not judged:
        return _(_VERDICTS[reason]).format(tank=tank, name=name)
    template = _JUDGED.get(reason, _VERDICTS[reason])
    fresh = {"salinity"} if answer.asked.water == "fresh" else set()
    judged_by = [of for of in answer.asked.ranges if of not in {*answer.unmeasured, *fresh}]
    by = names.listed([names.label(of) for of in judged_by])
    return names.capital(_(template).format(tank=tank, name=name, values=by))


_VERDICTS: Final[Mapping[str, str]] = {
    "yes": N_("Yes: what I know of {tank} suits {name}."),
    "no": N_("No, not in {tank}: {name} would not do well there."),
    "spent": N_("Not now: the KH of {tank} is used up, so its pH can crash. Bring KH back first."),
    "no_rivals": N_("No, not so many in {tank}: {name} fight each other."),
    "no_crowd": N_("No, {tank} is too small for so many {name}."),
    "no_room": N_("No, {tank} is too small for {name}."),
    "company": N_(
        "Only with care: no water value speaks against {name} in {tank}, the company does."
    ),
    "care": N_("Only with care: no water value speaks against {name} in {tank}, its size does."),
    "rivals": N_("Only with care: {name} in {tank} may fight each other."),
    "demands": N_("Only for the experienced: no water value speaks against {name} in {tank}."),
    "few": N_("Only as a larger group: so few {name} in {tank} would be uneasy."),
    "retest": N_("Retest first: the doubt of your kits decides whether {tank} suits {name}."),
    "large_enough": N_("By a lenient rule of thumb {tank} is not too small for {name}."),
    "unmeasured": N_("I know nothing of the water in {tank} yet: measure pH, GH and temperature."),
}


_JUDGED: Final[Mapping[str, str]] = {
    "yes": N_("What was measured of {tank} suits {name}: {values}."),
    "no": N_("{name} would not do well in {tank}."),
    "no_rivals": N_("{name} fight each other: not so many in {tank}."),
    "no_crowd": N_("{tank} is too small for so many {name}."),
    "no_room": N_("{tank} is too small for {name}."),
}
"""First lines that are no yes or no."""


def foreign(name: str, water: str, tank: str, here: str) -> str:
    """A kind that lives in water of another kind than the tank's."""
    return _("{name} need {water} water; {tank} is down as {here}.").format(
        name=name, water=_(water), tank=tank, here=_(here)
    )


def crowded(count: int, name: str, least_l: float) -> str:
    """So many, with the fish that live there, need more water, by a rule of thumb."""
    return _(
        "{count} × {name} and all fish there, once grown: {volume} L at the very least."
    ).format(count=f"{count:,}", name=name, volume=f"{round(least_l):,}")


def few(count: int, name: str) -> str:
    """A kind that lives in groups, and too few of it."""
    return _("{name} live in groups of {least} or more; {count} is too few.").format(
        name=names.capital(name), least=SHOAL, count=count
    )


def cramped(name: str, length: float, least_l: float) -> str:
    """A fish that outgrows the tank, by a rule of thumb."""
    return _("{name} can grow to about {length} cm: at least {volume} L, by rule of thumb.").format(
        name=names.capital(name),
        length=plain(length, 0),
        volume=plain(round(least_l, -1), 0),
    )


def misfit(found: Misfit) -> str:
    """A reading outside of a range, with the range's source."""
    row = ANALYTES[found.analyte]
    unit = "" if row.unit == "pH" else f" {row.unit}"
    template = (
        _("{name} {amount} is outside {low}–{high}; {source}.")
        if found.certain
        else _("{name} {amount} is outside {low}–{high} (within the kit's doubt); {source}.")
    )
    label = names.label(found.analyte)
    return template.format(
        name=label if found.analyte == "ph" else names.capital(label),
        amount=f"{plain(found.value, row.decimals)}{unit}",
        low=plain(found.span.low, 1),
        high=plain(found.span.high, 1),
        source=_short(found.span.source),
    )


def conflict(found: Conflict, name_of: Callable[[Species], str], others: str) -> str:
    """Kinds that do not suit each other, as the keeper calls them."""
    if found.reason in ANALYTES:
        return _("No {name} suits both {one} ({span}) and {other} ({span_2}).").format(
            name=names.label(found.reason),
            one=name_of(found.one),
            span=_ends(found.facts, "low", "high"),
            other=others,
            span_2=_ends(found.facts, "low_2", "high_2"),
        )
    return do_not_go_together(
        {
            "reason": found.reason,
            "species": name_of(found.one),
            "species_2": others,
            **found.facts,
        }
    )


def _ends(facts: Mapping[str, float | str], low: str, high: str) -> str:
    return f"{plain(float(facts[low]), 1)}–{plain(float(facts[high]), 1)}"


def wants(row: Species) -> str:
    """The ranges of a kind in one line."""
    parts = []
    for of, span in row.ranges.items():
        analyte = ANALYTES[of]
        if of == "salinity" and row.water == "fresh":
            continue
        unit = "" if analyte.unit == "pH" else f" {analyte.unit}"
        parts.append(f"{names.label(of)} {plain(span.low, 1)}–{plain(span.high, 1)}{unit}")
    return ", ".join(parts)


def _short(source: str) -> str:
    """A source in a few words; the whole of it stands under why."""
    return _("FishBase 2013") if source == "fishbase2013" else _(source_text(source))
