"""Findings about the animals on record, in one line each."""

from __future__ import annotations

from collections.abc import Mapping

from bot.chat.words.finding_parts import Facts, analyte, number, with_unit
from bot.chat.words.numbers import litres, plain
from core.advice.livestock import SHOAL
from core.analytes import ANALYTES


def does_not_suit(facts: Facts) -> str:
    """A reading outside of what suits animals on record, and how it may be brought back."""
    high = number(facts, "value") > number(facts, "high")
    word = "high" if high else "low"
    end = with_unit(facts, "high" if high else "low")
    more = number(facts, "kinds") - len(str(facts["species"]).split(", "))
    others = f" and {more:.0f} more" if more > 0 else ""
    act = _BACK.get(str(facts["analyte"]), "steady counts more, so never change it fast")
    return (
        f"{analyte(facts)} {with_unit(facts, 'value')} is {word} for {facts['species']}{others}"
        f" ({'over' if high else 'under'} {end}): {act}."
    )


_BACK: Mapping[str, str] = {
    "temperature": "check heater or cooling, add air, bring it back by 1 °C an hour at most",
    "salinity": "check the reading, then correct by at most 1 g/kg a day",
    "ph": "look at KH and hardness, never chase pH itself",
}
"""What brings an analyte back; the step limits of the advice."""


def do_not_go_together(facts: Facts) -> str:
    """Two kinds that do not suit each other, and why."""
    one, other = facts["species"], facts["species_2"]
    reason = facts["reason"]
    if reason == "water":
        return (
            f"{_capital(one)} and {other} need two tanks: {facts['water']} water for the first,"
            f" {facts['water_2']} for the other."
        )
    if reason == "eats":
        return f"{_capital(one)}, once grown, can swallow {other}: part them before that."
    if reason == "fights":
        return f"{_capital(one)} may harass {other}: give hiding places and watch, or part them."
    label = ANALYTES[str(reason)].label
    spans = [
        f"{plain(number(facts, low), 1)}–{plain(number(facts, high), 1)}"
        for low, high in (("low", "high"), ("low_2", "high_2"))
    ]
    return (
        f"No {label} suits both {one} ({spans[0]}) and {other} ({spans[1]}): rehome one kind,"
        " without haste."
    )


def _capital(name: object) -> str:
    """A name at the beginning of a line."""
    return str(name)[:1].upper() + str(name)[1:]


def cramped(facts: Facts) -> str:
    """A fish that outgrows the tank, by a rule of thumb."""
    return (
        f"{_capital(facts['species'])} can grow to about {plain(number(facts, 'length'), 0)} cm:"
        f" {litres(number(facts, 'volume_l'))} is little,"
        f" {plain(round(number(facts, 'least_l'), -1), 0)} L the least by rule of thumb."
    )


def few_of_a_shoal(facts: Facts) -> str:
    """A kind that lives in groups, and too few of it."""
    return (
        f"{_capital(facts['species'])} live in groups: {plain(number(facts, 'count'), 0)} is few,"
        f" {SHOAL} or more feel safe."
    )


def unknown_animal(facts: Facts) -> str:
    """A name on record that is no one kind of the table."""
    said = facts["said"]
    if "any" in facts:
        return f"Which kind is “{said}”? Then I judge the water for it: no, added 2 guppies"
    if "shared" in facts:
        return f"“{said}” can be several kinds ({facts['shared']}), so I judge no water for it."
    told = f"I do not know “{said}”, so I judge no water for it."
    return f"{told} Did you mean {facts['nearest']}?" if "nearest" in facts else told
