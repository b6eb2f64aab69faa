"""Where one change is refused: the water of the changes proposed in its place."""

from __future__ import annotations

from typing import Any

from bot.chat.change_asked import Asked
from bot.chat.change_facts import water_after
from bot.chat.words import change_course as words
from core.advice.change_course import EVERY_DAYS, MANY, course, unsuited, weeks_of
from core.advice.change_plan import ChangePlan, plan_change
from core.advice.changes import Waters
from core.advice.danger import cut_to_kh


def instead(plan: ChangePlan, volume_l: float | None, facts: dict[str, Any]) -> str | None:
    """The routine in the place of more changes than a person makes; None where there are few."""
    count = len(plan.steps)
    if plan.emergency or count <= MANY:
        return None
    weeks = weeks_of(count)
    facts["as_routine"] = {"share": plan.steps[0], "every_days": EVERY_DAYS, "weeks": weeks}
    return words.as_routine(plan, volume_l, weeks)


def lines(
    asked: Asked,
    waters: Waters,
    plan: ChangePlan,
    facts: dict[str, Any],
    whole: float | None = None,
) -> list[str]:
    """The water after the first and the last, whom that suits not, what to watch; adds facts.

    `whole` is the share that the changes replace, unless it is the plan's own.
    """
    first, last = course(waters, plan.afters)
    facts["first"] = water_after(first.waters, first.after, "at_once")
    facts["end"] = water_after(last.waters, last.after, "expected")
    found = [words.first(facts["first"])]
    if len(plan.steps) > 1:
        found.append(words.end(facts["end"]))
    found[-1] = f"{found[-1]} {words.watch()}"
    ends = {name: facts["end"][name] for name in ("ph", "kh", "gh") if name in facts["end"]}
    if (bad := unsuited(asked.tank, ends)) is not None:
        facts["unsuited"] = {
            "species": bad.species, "analyte": bad.analyte, "to": bad.end,
            "between": [bad.low, bad.high],
        }  # fmt: skip
        found.append(words.does_not_suit(bad))
    if "as_routine" in facts:
        found += _thinned(waters, plan.share if whole is None else whole, facts)
    return found


def _thinned(waters: Waters, whole: float, facts: dict[str, Any]) -> list[str]:
    """With the new water thinned to the tank's KH, where that makes it a plan."""
    thin, ro = cut_to_kh(waters)
    again = plan_change(thin, whole) if ro else None
    if again is None or not 0 < len(again.steps) <= MANY:
        return []
    facts["thinned"] = {"ro_share": ro, "count": len(again.steps), "share": again.steps[0]}
    return [words.with_ro(ro, len(again.steps), again.steps[0])]
