"""New animals home, in words: the order of work, what differs, and quarantine."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words.animals import misfit
from bot.chat.words.numbers import plain, small
from core.advice.arrivals import QUARANTINE_DAYS, Arrival, BagAmmonia, Difference, Step
from core.analytes import ANALYTES

QUARANTINE_FIRST: Final = "quarantine with reminders"
THEY_ARE_IN: Final = "they are in: log it"

_NOT_YET: Final[Mapping[str, str]] = {
    "ammonia": "there is ammonia in it",
    "nitrite": "there is nitrite in it",
    "chlorine": "there is chlorine in it",
    "cycling_ammonia": "its filter is not ready yet",
    "cycling_nitrite": "its filter is not ready yet",
}


def arrival(plan: Arrival, tank: str) -> list[str]:
    """The order of work for a bag in six lines: what decides first, then the steps."""
    lines = [_head(plan, tank)]
    if plan.ammonia is not None and plan.ammonia.is_dangerous:
        lines.append(_ammonia(plan.ammonia))
    elif plan.keep_closed:
        lines.append("Open, a bag loses its CO2, pH rises, its ammonia turns poisonous: no drip.")
    if plan.keep_closed and not _hardness_known(plan):
        lines.append("I do not know the bag's KH and GH: ask the seller, or test a little of it.")
    steps = _steps(plan)
    lines += [f"{number}. {step}" for number, step in enumerate(steps, 1)]
    return lines


def _head(plan: Arrival, tank: str) -> str:
    if (reason := _reason(plan)) is not None:
        said = _NOT_YET.get(reason, "it is not ready")
        return f"Not into {tank} yet: {said}. Other water is better; if there is none:"
    if plan.misfits:
        return f"{tank} does not suit them: {misfit(plan.misfits[0])} If it must be:"
    if plan.days > 0.0:
        days = "A day" if plan.days == 1.0 else f"{plain(plan.days, 0)} days"
        apart = _difference(_deciding(plan))
        return f"Not straight into {tank}: {apart}. {days} in water like the bag's first."
    if plan.keep_closed:
        return f"Warm the closed bag, then move them into {tank} at once: about {_all(plan)}."
    return f"Warm the bag, mix in water of {tank} bit by bit, then move them: about {_all(plan)}."


def _deciding(plan: Arrival) -> Difference:
    """What makes days of waiting: salt, else the buffer, else pH."""
    by_analyte = {each.analyte: each for each in plan.differences}
    wanted = ("salinity",) if _by_salt(plan) else ("kh", "ph")
    return next(by_analyte[of] for of in wanted if of in by_analyte)


def _by_salt(plan: Arrival) -> bool:
    return plan.days > 1.0  # pH alone asks for one day


def _hardness_known(plan: Arrival) -> bool:
    return any(each.analyte in {"kh", "gh"} for each in plan.differences) or _by_salt(plan)


def _reason(plan: Arrival) -> str | None:
    first = plan.steps[0]
    return str((first.facts or {})["reason"]) if first.id == "not_yet" else None


def _all(plan: Arrival) -> str:
    return f"{plan.minutes:.0f} min"


def _ammonia(bag: BagAmmonia) -> str:
    return (
        f"Keep the bag closed: open, its pH rises from {plain(bag.ph, 1)} to"
        f" {plain(bag.ph_open, 1)} and poisonous ammonia from {small(bag.nh3_n)} to"
        f" {small(bag.nh3_n_open)} mg/L as N."
    )


def _steps(plan: Arrival) -> list[str]:
    """The steps that belong together in one line each."""
    by_id = {step.id: step for step in plan.steps}
    minutes = f"{by_id['float_closed'].minutes:.0f}"
    told = [f"Dim the light, float the closed bag {minutes} min."]
    over = "open the bag, net them over at once without its water."
    if "prepare_container" in by_id:
        told.append(f"Ready clean, aerated water like the bag's; {over}")
    elif "open_and_move" in by_id:
        told.append(f"{over[:1].upper()}{over[1:]}")
    if "hold_in_quarantine" in by_id:
        how = "by 1 g/kg of salt a day at most" if _by_salt(plan) else "by small changes"
        told.append(f"Bring that water to the tank's {how}; test its ammonia daily.")
    if "add_tank_water" in by_id:
        mixing = by_id["add_tank_water"]
        told.append(f"Add tank water in {_parts(mixing)} parts over {mixing.minutes:.0f} min, then"
                    " net them in.")  # fmt: skip
    told.append("Pour the bag's water away, not outdoors. No food today; watch them 24 h.")
    return told


def _parts(step: Step) -> str:
    return plain(float((step.facts or {})["parts"]), 0)


def more(plan: Arrival, *, hours_known: bool) -> list[str]:
    """What differs, what would tell more, and where it comes from."""
    lines = []
    if plan.differences:
        lines.append(f"Bag → tank: {', '.join(map(_difference, plan.differences))}.")
    missing = {"temperature", "kh", "gh"} - {each.analyte for each in plan.differences}
    if missing:
        lines.append("Tell me the bag's water: bag ph 6.4 kh 3 gh 6 temp 22 ammonia 1")
    if not hours_known:
        lines.append("Under three hours on the way? Tell me, for example: bag closed 40 min")
    if any(step.id == "prepare_container" for step in plan.steps):
        lines.append(
            "Water like the bag's: as warm, as salty, as hard; tank water with RO or treated tap."
        )
    if plan.ammonia is not None and plan.ammonia.kh_assumed:
        lines.append("The bag's KH is unknown: I took the tank's.")
    lines.append(
        "Floating and mixing 15 min each, a day where pH differs over 0.5 (both stood): after a"
        " text on acclimatising fish, as copied; the rest: common practice, no source."
    )
    return lines


def _difference(each: Difference) -> str:
    row = ANALYTES[each.analyte]
    unit = "" if row.unit == "pH" else f" {row.unit}"
    bag, tank = plain(each.bag, row.decimals), plain(each.tank, row.decimals)
    return f"{row.label} {bag} → {tank}{unit}"


# Quarantine -----------------------------------------------------------------------------------


def quarantine(tank: str) -> list[str]:
    """What quarantine is."""
    return [
        f"Quarantine: {QUARANTINE_DAYS // 7} weeks in a tank of their own before {tank}, with nets"
        " and hoses of its own.",
        "Bare, heated, aerated, covered, a hiding place, and a filter that already runs (a sponge"
        f" out of {tank}'s filter).",
        f"Fill it with water of {tank}; look each day, test ammonia and nitrite every second day.",
        "No medicine by guess: ask a fish vet.",
    ]


def made(name: str, tank: str, tasks: Sequence[str]) -> list[str]:
    """A quarantine tank was made, with its reminders."""
    return [
        f"{name} is a tank of its own now. I remind you: {'; '.join(tasks)}.",
        f"Send its readings by name: {name.lower()}: ammonia 0 nitrite 0",
        f"What you send without a name is still about {tank}.",
    ]


def there_already(name: str) -> list[str]:
    """There is one in use."""
    return [f"{name} is in use. Send /tank delete {name} once it is empty, then ask again."]


NAME: Final = "Quarantine"

TASKS: Final[Mapping[str, str]] = {
    "look": "look at the new animals: breathing, spots, fins, appetite",
    "test": "test ammonia and nitrite",
    "change": "change a quarter of the water",
}


def how_often(days: int) -> str:
    """An interval behind a task."""
    return "each day" if days == 1 else f"every {days} days"


def move_task(tank: str, name: str) -> str:
    """The last task of a quarantine."""
    return f"move them to {tank} if all are well, then send /tank delete {name}"


def move_said(days: int) -> str:
    """The last task, as told when the tank is made."""
    return f"after {days} days to move them, if all are well"
