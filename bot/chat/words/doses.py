"""A dose in words: what to do first, the caution before the grams, and what follows."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from bot.chat.words import names
from bot.chat.words.numbers import age, grams, litres, plain, small, span
from bot.chat.words.text import N_, _
from core.advice.kit_doubt import KitDoubt
from core.advice.plan import Goal, Plan, Upkeep
from core.message.model import Event

FINEST_SCALE = 0.1
"""Less than this a pocket scale does not tell; common practice. [g]"""

LOG_IT, RETEST = N_("log it"), N_("remind me to retest in 24 h")

UNITS: Mapping[str, str] = {"kh": "°dH", "gh": "°dH", "salinity": "g/kg"}


def way(goal: Goal) -> str:
    """From where to where."""
    unit = UNITS.get(goal.analyte, "mg/L")
    name = names.analyte(goal.analyte)
    if goal.relative:
        told = _("{name} +{change} {unit}")
        return told.format(name=name, change=plain(goal.change, 2), unit=unit)
    fine = goal.change < 0.5 or 0.0 < goal.start < 0.5  # finer than that no kit tells
    decimals = 2 if fine else 1
    return _("{name} {start} → {target} {unit}").format(
        name=name,
        start=plain(goal.start, decimals),
        target=plain(goal.target, decimals),
        unit=unit,
    )


def where(tank: str | None, volume_l: float) -> str:
    """The water that an answer is about."""
    if not tank:
        return litres(volume_l)
    return _("{tank} ({volume})").format(tank=tank, volume=litres(volume_l))


def only_below(ammonia: float) -> str:
    """The condition of a dose or a change that would set poison free."""
    told = _("Only if total ammonia is under {limit} mg/L as N (measure it).")
    return told.format(limit=plain(ammonia, 2))


def keep_co2() -> str:
    """The condition of a dose whose pH rests on the carbon dioxide that is there."""
    return _("Keep aeration and CO2 as they are and retest ammonia.")


def head(
    plan: Plan, tank: str | None, doubt: KitDoubt | None = None, *, next_part: bool = False
) -> str:
    """The answer: from where to where, in how many parts, and on what condition.

    The next part of a plan that was begun needs no retest for being a small step.
    """
    retest = (
        _("Retest first: the {name} reading is {age}. {where}: {ways}.")
        if plan.is_old and plan.reading_age is not None
        else _("Retest first: water was changed since the {name} reading. {where}: {ways}.")
        if plan.changed_since
        else None
    )
    told = {
        "where": where(tank, plan.volume_l),
        "ways": names.both([way(goal) for goal in plan.goals]),
        "name": names.analyte(plan.goals[0].analyte),
        "age": age(plan.reading_age) if plan.reading_age is not None else "",
        "count": plan.count,
    }
    answer = _answer(plan, next_part=next_part) if retest is None or plan.blind else retest
    return " ".join([*_conditions(plan, tank, doubt), answer.format(**told)])


def fewest(count: int, wished: int) -> str:
    """Why a plan has more parts than were wished."""
    told = _("Not in {wished}: {count} parts, a day apart, are the fewest that are safe here.")
    return told.format(wished=wished, count=count)


def _answer(plan: Plan, *, next_part: bool) -> str:
    """The template of the sentence that says from where to where."""
    if plan.blind:
        return _("{where}: one small part only, {ways}, then measure.")
    if next_part and plan.count == 1:
        return _("{where}: the rest of your plan, {ways} in one part.")
    if plan.within_kit:
        return _(
            "Retest first: {ways} is within what your kit can tell apart. {where}: in one part."
        )
    if plan.emergency and plan.count == 1:
        return _("{where}: an emergency, so up to 2 °dH a day: {ways} in one part.")
    if plan.emergency:
        return _("{where}: an emergency, so up to 2 °dH a day: {ways} in {count} parts, one a day.")
    if plan.count == 1:
        return _("{where}: {ways} in one part.")
    return _("{where}: {ways} in {count} parts, one a day.")


def _conditions(plan: Plan, tank: str | None, doubt: KitDoubt | None) -> list[str]:
    """What must be so before the dose: a sentence each."""
    found = []
    if plan.gate is not None and plan.gate.only_below is not None and tank is not None:
        found.append(only_below(plan.gate.only_below))
    if plan.gate is not None and plan.gate.keep_co2:
        found.append(keep_co2())
    if doubt is not None and doubt.over_gate:
        found.append(
            _("Retest ammonia and pH first: within your kits' doubt it would be too much.")
        )
    return found


def caution(plan: Plan | None = None) -> str:
    """What goes before every number of grams; one line, the substance's own hazard first."""
    own = [_(CAUTIONS[name]) for name in plan.cautions if name in CAUTIONS] if plan else []
    always = _(
        "Net volume counts; dissolve first, small steps, watch the animals; estimate from kits,"
        " not veterinary advice."
    )
    return " ".join([*own, always])


CAUTIONS: Mapping[str, str] = {
    "heats": N_("Calcium chloride gets hot: dissolve a little at a time in cool water."),
    "apart": N_("Dissolve each salt apart, never buffer and calcium in one jug: lime falls out."),
    "sea_precipitation": N_("Never calcium and buffer in one place or at one time."),
    "salt_species": N_("Not for plants, snails, loaches or catfish without asking."),
    "potassium": N_(
        "Much potassium in all: watch snails, shrimps and plants; prefer sodium salts."
    ),
    "saturated": N_(
        "The water is nearly too full of lime already: retest calcium, KH and pH first."
    ),
    "ph_jumps": N_(
        "With so little KH pH jumps even from this: give it thinly, over some hours, and watch."
    ),
    "lime_falls_out": N_(
        "So full of lime that it may fall out, cloudy or as a crust: in more, smaller parts, buffer"
        " and calcium on different days."
    ),
    "sodium": N_("Sodium adds up (8.2 mg/L a °dH): where KH keeps falling, rather change water."),
    "alkaline_dust": N_("Gloves and eye protection: the dust is alkaline."),
}


def amount(plan: Plan) -> str:
    """Grams of each part and in all, of every salt by its full name."""
    each = names.both(
        [of(salt.grams / plan.count, names.substance(salt.substance)) for salt in plan.salts]
    )
    least = min(salt.grams / plan.count for salt in plan.salts)
    if least < FINEST_SCALE:
        each = _(
            "{each} (too little for most scales: dissolve ten times as much in 1 L, give 100 ml)"
        ).format(each=each)
    if plan.count == 1:
        return _("{each}, weighed, not by spoon.").format(each=each)
    return _(
        "{each} a part, {count} parts {hours} h apart ({whole} in all), weighed, not by spoon."
    ).format(
        each=each,
        count=plan.count,
        hours=plan.every_hours,
        whole=names.both([grams(salt.grams) for salt in plan.salts]),
    )


def went_in(plan: Plan, tank: str | None) -> list[str]:
    """How much it was that made a rise that was seen; nothing is to be given."""
    whole = [of(salt.grams, names.substance(salt.substance)) for salt in plan.salts]
    told = _("{where}: {ways} is about {whole}, if nothing else went in.")
    return [
        told.format(
            where=where(tank, plan.volume_l),
            ways=names.both([way(goal) for goal in plan.goals]),
            whole=names.both(whole),
        ),
        _("Reckoned back from two readings: as far as your kits are off, so is this."),
    ]


def of(mass: float, name: str) -> str:
    """So much of something. [g]"""
    return _("{mass} of {name}").format(mass=grams(mass), name=name)


def ammonia(plan: Plan, tank: str | None) -> str | None:
    """What total ammonia decides, where the first sentence does not say it."""
    if plan.gate is None:
        return None
    if plan.gate.only_below is None:
        if plan.gate.nh3_n is None or plan.gate.nh3_n[1] == 0.0:
            return None
        expected, leaves = plan.gate.nh3_n
        template = (
            _(
                "Poisonous ammonia after it: {expected} mg/L as N, {leaves} if CO2 leaves. Measure"
                " ammonia before it."
            )
            if plan.count == 1
            else _(
                "Poisonous ammonia after it: {expected} mg/L as N, {leaves} if CO2 leaves. Measure"
                " ammonia before each part."
            )
        )
        return template.format(expected=small(expected), leaves=small(leaves))
    if tank is not None:
        return None
    return _(
        "Ammonia first: hold this only while total ammonia is under {limit} mg/L as N; a higher pH"
        " makes it poisonous."
    ).format(limit=plain(plan.gate.only_below, 2))


def one_sided(plan: Plan) -> str | None:
    """GH by one of its two parts alone: what it leaves out, None where both come."""
    if plan.goals[0].analyte != "gh":
        return None
    lacks = [ion for ion in ("calcium", "magnesium") if not plan.added.get(ion)]
    if len(lacks) != 1:
        return None
    told = {
        "calcium": N_("GH is calcium and magnesium; this brings no calcium, and animals need it."),
        "magnesium": N_("GH is calcium and magnesium; this brings no magnesium."),
    }
    both = _("With both: dose gh {target}").format(target=plain(plan.goals[0].target, 1))
    return f"{_(told[lacks[0]])} {both}"


def afterwards(plan: Plan, doubt: KitDoubt | None = None) -> str:
    """What the whole dose does to pH, and when to look.

    The pH of a plan in parts is that after its last one: it stands beside one part's grams, so the
    moment is said.
    """
    last, outlook = plan.last, plan.outlook
    tested = to_test([goal.analyte for goal in plan.goals])
    template = (
        _("Retest {tested} 24 h after it.")
        if plan.count == 1
        else _("Retest {tested} 24 h after each part, before the next.")
    )
    look = template.format(tested=tested)
    if last is None or outlook is None:
        return look
    told = {
        "at_once": plain(last.at_once, 1),
        "stood": plain(last.expected, 1),
        "leaves": plain(last.leaves, 1),
        "kits": "" if doubt is None else span(*doubt.ph_stood, 1),
    }
    if not outlook.co2_known:
        moves = _("pH after standing about {stood} to {leaves}.")
    elif doubt is None:
        moves = _("pH about {at_once} at once, {stood} after standing, {leaves} if CO2 leaves.")
    else:
        moves = _(
            "pH about {at_once} at once, {stood} after standing ({kits} by your kits' doubt),"
            " {leaves} if CO2 leaves."
        )
    if plan.blind:
        look = _("Measure pH after 1 h and after 24 h: that decides the next part.")
    outcome = moves.format(**told)
    if plan.count > 1:
        outcome = _("After the last part: {outcome}").format(outcome=outcome)
    return f"{outcome} {look}"


def to_test(analytes: Sequence[str]) -> str:
    """What is measured after a part that raises these."""
    if analytes[0] == "kh":
        return _("KH, pH and ammonia")
    return names.both([names.analyte(each) for each in analytes])


def upkeep(found: Upkeep) -> str:
    """What the animals use up in a day, and what makes up for it."""
    told = {
        "per_day": plain(found.used.per_day, 2),
        "between": span(found.used.low, found.used.high, 2),
        "unit": UNITS.get(found.analyte, "mg/L"),
        "name": names.analyte(found.analyte),
    }
    if found.salt is None:
        return _(
            "It uses about {per_day} {unit} {name} a day by your last two readings: too much to"
            " give at one time; retest before you make up for it."
        ).format(**told)
    return _(
        "Then, to hold it: {mass} a day of the same, apart from any part: it uses {per_day} {unit}"
        " {name} a day by your last two readings ({between})."
    ).format(mass=grams(found.salt.grams), **told)


def logged(tank: str, put_in: Sequence[Event]) -> str:
    """The first part was put in: how much of each salt, or of a bought product."""
    shown = ", ".join(f"{_amount_of(each)} {names.said(each.substance or '')}" for each in put_in)
    return _("{tank}: logged {shown}.").format(tank=tank, shown=shown)


def _amount_of(event: Event) -> str:
    if event.spoons:
        return _("{count} tsp").format(count=plain(event.spoons, 1))
    return grams(event.grams) if event.grams else f"{plain(event.millilitres or 0.0, 1)} ml"


def next_part(analyte: str, target: float, wish: str) -> str:
    """A part is on record and its retest sent: `wish` asks for the next. [canonical unit]"""
    told = _(
        "The next part of your plan to {name} {target} can be worked out now. Send: dose {wish}"
    )
    return told.format(name=names.analyte(analyte), target=plain(target, 2), wish=wish)


def retest_set(when: str) -> str:
    """A retest will be asked for."""
    return _("I will remind you to retest {when}.").format(when=when)


def retest_task() -> str:
    """The task of that reminder."""
    return _("retest KH, pH and ammonia")


def no_tank_to_log(tank: str | None) -> str:
    """A dose that belongs to no tank on record; `tank` is a keeper's own, for the example."""
    example = names.of_tank(tank, _("dosed 3.6 g baking soda"))
    told = _("I do not know which tank that was. Send for example: {example}")
    return told.format(example=example)
