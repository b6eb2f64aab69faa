"""Calls for help: answered at once, whatever else a message says."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace
from typing import Any, Final

from bot.chat import calls, dose_reply, outside_calls, products
from bot.chat.calls_kept import CALLED
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.waters import Waters
from bot.chat.words import after_call as called_words
from bot.chat.words import causes, cautions, emergency_steps, refusals
from bot.chat.words import emergencies as words
from bot.chat.words.findings import line as finding_line
from bot.chat.words.text import _
from bot.countries import country_of
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import heater_warmth
from core.advice.buffers import BUFFERS, STRONG
from core.advice.call_over import HOLDS
from core.advice.calls import HEATED, OF_PEOPLE, Danger, distressed, gasps
from core.advice.cautions import touched
from core.advice.dosed_lately import dosed_lately
from core.advice.emergencies import A_DAY, Help, help_for, read_since_call, standing_call
from core.advice.findings import Finding, stands
from core.advice.first_aid import NewWater
from core.advice.plan import Refusal
from core.advice.poison_first import poison_of
from core.advice.state import State
from core.message.hearsay import of_others
from core.message.model import Event, Parsed
from core.message.nearly_done import nearly
from core.message.plan_said import substances_named
from core.message.waters import PURE, mentioned


async def answer(turn: Turn, parsed: Parsed) -> Reply:
    """Answer a call for help, refuse what the cautions refuse, or say the caution itself."""
    first = calls.goes_first(turn, parsed) and calls.danger_of(turn, parsed) is None
    call = calls.touched_by(turn.incoming.text, asked=True) if first else calls.found(turn, parsed)
    if not call and distressed(turn.incoming.text):
        return await _help(turn, parsed, "general")  # told beside its numbers
    if call.danger is not None:
        return await _help(turn, parsed, call.danger)
    if call.refused is not None and nearly(turn.incoming.text):
        none = Refusal(call.refused)  # nothing went in: what is asked next is of the tank
        return await turn.reply(refusals.refused(none, None), facts={"refused": call.refused})
    if call.refused is not None:
        return await dose_reply.refuse(turn, Refusal(call.refused), None)
    name = call.caution or "storage"
    lines = (await _in_sea(turn, name)) or cautions.caution(name)
    context: dict[str, Any] = {"why": lines}
    if len(named := substances_named(turn.incoming.text)) == 1:
        context |= {products.SPOKEN_OF: named.pop()}  # which "it" means from now on
    return await turn.reply(lines, facts={"caution": name}, context=context, expects="followup")


async def _in_sea(turn: Turn, name: str) -> list[str] | None:
    """The caution of lime and soda ash for a marine tank, by its own KH and pH."""
    stored = turn.current_tank
    if name != "carbonate" or stored is None or not stored.tank.is_sea:
        return None
    state = await state_of(turn, stored, turn.now)
    kh, ph = state.fresh("kh"), state.fresh("ph")
    enough = (kh is not None and kh.value >= LIME_KH) or (ph is not None and ph.value >= LIME_PH)
    read = {each.analyte: each.value for each in (kh, ph) if each is not None}
    return cautions.lime_in_sea(read.get("kh"), read.get("ph"), enough=enough)


LIME_KH: Final = 10.0
LIME_PH: Final = 8.5
"""From these on no lime goes into a marine tank; common practice, no source."""


async def _help(turn: Turn, parsed: Parsed, danger: Danger) -> Reply:
    stored = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    gasping = gasps(turn.incoming.text)
    told = danger in HEATED and heater_warmth.in_doubt(turn.incoming.text)
    names = [tank.name for tank in turn.tanks if tank.tank.named]
    if (
        danger not in OF_PEOPLE
        and parsed.tank not in names
        and of_others(turn.incoming.text, names)
    ):
        lead = called_words.of_theirs()
        return await help_in(turn, None, danger, gasping=gasping, warmth_told=told, lead=lead)
    unnamed = not parsed.tank and danger in SHOWING
    if danger not in OF_PEOPLE or danger in HOLDS:
        of = None if danger in OF_PEOPLE else stored
        await remember(turn, of, danger, gasping=gasping, said=turn.incoming.text)
    beside = await _others_poisoned(turn, stored) if unnamed else []
    return await help_in(turn, stored, danger, gasping=gasping, beside=beside, warmth_told=told)


async def remember(
    turn: Turn,
    stored: StoredTank | None,
    danger: Danger,
    *,
    gasping: bool = False,
    said: str | None = None,
) -> None:
    """Keep that a danger was called out, for what is asked or found in the tank that day.

    `said` are the keeper's own words of it, which are said back.
    """
    newest = await turn.uow.log.newest(turn.chat.id, 1)
    held = {
        "tank": stored.id if stored else None,
        "danger": danger,
        "gasping": gasping,
        "entry": newest[0].id if newest else 0,
        "of": poison_of(said) if danger == "overdose" and said is not None else None,
        "said": None if said is None else " ".join(said.split())[:QUOTED],
    }
    await turn.uow.offers.add(turn.chat.id, Offer((), turn.now, context={CALLED: held}))


async def remember_heater(turn: Turn, parsed: Parsed) -> None:
    """Keep that a heater failed before the warmth told beside it is judged: it is no riddle."""
    danger = calls.danger_of(turn, parsed)
    stored = turn.tank_named(parsed.tank) if parsed.tank else turn.current_tank
    if danger in HEATED and parsed.values and stored is not None:
        await remember(turn, stored, danger)


async def _others_poisoned(turn: Turn, stored: StoredTank | None) -> list[str]:
    """What stands in the chat's other tanks, where a call for help names none of them."""
    for tank in turn.tanks:
        if stored is not None and tank.id != stored.id:
            worst = cause(await state_of(turn, tank, turn.now))
            if worst is not None:
                return [emergency_steps.or_there(tank.name, worst)]
    return []


async def help_in(
    turn: Turn,
    stored: StoredTank | None,
    danger: Danger,
    *,
    gasping: bool = False,
    beside: Sequence[str] = (),
    warmth_told: bool = False,
    lead: str | None = None,
) -> Reply:
    """Give the first-minute steps for a danger in a tank, behind a `lead` where there is one."""
    of_tank = stored is not None and danger not in OF_PEOPLE
    state = await state_of(turn, stored, turn.now) if of_tank and stored is not None else None
    new = await new_water(turn, stored, state)
    if stored is None and danger in SHOWING:
        danger = await outside_calls.standing(turn) or danger
    unnamed = None if state is None else state.went_in
    found = help_for(
        danger,
        state,
        new,
        gasping=gasping,
        warmth_told=warmth_told,
        nameless=unnamed is not None,
    )
    name = stored.name if stored is not None and of_tank else None
    country = country_of(turn.chat.zone_name)
    lines = words.lines(found, name, country, None if state is None else known(state, found.danger))
    if state is not None and _tested_since_call(state, found.danger):
        beside = [*beside, *called_words.not_gone(found.danger)]
    told = []
    if state is not None and stored is not None and found.danger in SAYING_BACK:
        told = await _told_of(turn, stored, state, found.danger)
    suffer = found.crashed is not None or found.danger in SAYING_BACK - {"overdose"}
    dosed = None if told or not suffer or state is None else dosed_lately(state)
    if dosed is not None:
        told = [emergency_steps.dosed_lately(dosed.substance or "", dosed.grams)]
    if unnamed and not told:
        told = [emergency_steps.told_unnamed(unnamed)]
    if found.danger == "overdose" and state is not None:
        beside = [*beside, *_poison_beside(state)]
    lines = [*([lead] if lead else []), *lines[:1], *beside, *told, *lines[1:]]
    lines = lines[: words.MOST + bool(told)]
    share = found.share
    held = {
        "ph": found.ph,
        "ammonia": found.total_n,
        "nh3_n": found.nh3_n,
        "tank": name,
        "largest_safe_share": None if share is None else share.most,
        "ro_share": None if share is None else share.ro_share or None,
        "copper": found.copper if found.danger == "copper" else None,
        "changed": _changed_facts(found),
        "went_in": None if dosed is None else _dosed_facts(dosed),
    }
    facts: dict[str, Any] = {"emergency": found.danger}
    facts |= {key: value for key, value in held.items() if value is not None}
    return await turn.reply(lines, facts=facts, choices=_sides(stored, found.danger))


async def aid_untold(turn: Turn, stored: StoredTank, state: State) -> list[str]:
    """The steps that cannot wait until it is told how much went in: air, new water, a test."""
    new = await new_water(turn, stored, state)
    lines = words.lines(help_for("overdose", state, new), stored.name, None, None)
    return lines[:AT_ONCE]


AT_ONCE: Final = 4
"""Of the steps after too much of a thing: none against it, air, a change, a test."""


def _poison_beside(state: State) -> list[str]:
    """Ammonia or nitrite that was read before or beside what went in: it has its own danger."""
    dosed = dosed_lately(state)
    raised = dosed is not None and dosed.substance in {*BUFFERS, *STRONG}
    ammonia = state.fresh("ammonia")
    if ammonia is not None and ammonia.value > 0.0 and ammonia.qualifier != "<" and dosed:
        name = dosed.substance or "" if raised else None
        return [emergency_steps.ammonia_beside(ammonia.value, name)]
    found = (f for f in stands(state, frozenset({"nitrite"})) if f.id == "nitrite")
    return [causes.cause(f) for f in found if f.severity != "note"]


def _changed_facts(found: Help) -> dict[str, float] | None:
    """The numbers of a change of the last day, where the steps name it."""
    made = found.changed
    if made is None or found.danger not in {"gasping", "general"}:
        return None
    told = {"share": made.share, "chlorine": made.chlorine}
    return {name: number for name, number in told.items() if number is not None} or None


def _dosed_facts(dosed: Event) -> dict[str, Any]:
    told = {"substance": dosed.substance, "grams": dosed.grams}
    return {name: value for name, value in told.items() if value is not None}


def _sides(stored: StoredTank | None, danger: Danger) -> list[Choice]:
    """Which way a heater failed, where nobody said it."""
    if danger != "heater":
        return []
    held = None if stored is None else stored.id
    return [
        Choice(label, "what_now", "", {"tank": held, "danger": side})
        for label, side in ((_("too hot"), "heater_hot"), (_("too cold"), "heater_cold"))
    ]


async def _told_of(turn: Turn, stored: StoredTank, state: State, danger: Danger) -> list[str]:
    """What was told of the day to be too much, in its own words, and what was read off since."""
    lines = []
    for made_at, called in await turn.uow.offers.told_of(turn.chat.id, CALLED):
        late = turn.now - A_DAY < made_at <= turn.now
        if not called or not late or called["tank"] not in {stored.id, None}:
            continue
        if called["danger"] == "overdose" and (said := called.get("said")):
            lines.append(emergency_steps.told_today(said, asked=danger == "overdose"))
            break
    if danger == "overdose" or not lines:
        return lines
    off = (f for f in what_stands(state) if f.severity == "warn" and f.id in OFF)
    return [*lines, *(finding_line(f) for f in off)][:2]


OFF: Final = frozenset(
    "high_ph low_ph ph_fell ph_rose ph_moved does_not_suit unlike_the_sea salt_in_fresh".split()  # noqa: SIM905
)
"""Findings of water that is off, of which animals suffer though none is an alarm."""

SAYING_BACK: Final[frozenset[Danger]] = frozenset({"overdose", "gasping", "general", "illness"})
"""Dangers whose steps begin with what went in, as it was told."""

QUOTED: Final = 60
"""Characters of it that are said back."""


SHOWING: Final[frozenset[Danger]] = frozenset(
    {"gasping", "maybe_dead", "general", "illness", "jumped"}
)
"""Dangers whose cause may be known from the readings."""


def known(state: State, danger: Danger) -> str | None:
    """What the fresh readings show to be wrong, where that may be the cause of a danger.

    Beside poison that was called out, what else is in the water.
    """
    if danger in SHOWING:
        return cause(state)
    if danger != standing_call(state):
        return None
    return cause(state, but=OWN.get(danger, CAUSES))


OWN: Final[Mapping[Danger, frozenset[str]]] = {
    "bleach": frozenset({"chlorine"}),
    "chlorine": frozenset({"chlorine"}),
    "copper": frozenset({"copper", "copper_before", "medicine_dosed"}),
    "contaminated": frozenset(),
}
"""Findings that are the very danger that was called out."""


def _tested_since_call(state: State, danger: Danger) -> bool:
    """Whether something was read after poison was called out, and none of it settles that."""
    is_open = danger == standing_call(state)
    return is_open and bool(read_since_call(state, danger, state.readings))


CAUSES: Final = frozenset(
    "ammonia ammonia_without_ph nitrite chlorine low_oxygen copper copper_before ph_extreme"  # noqa: SIM905
    " ph_fell overdose nutrient_overdose acid_dosed caustic_dosed medicine_dosed".split()
)
"""Findings that make animals ill."""


def cause(state: State, *, but: Collection[str] = ()) -> str | None:
    """The worst that the fresh readings show, of what can make animals ill; None where nothing.

    Findings of `but` are told otherwise.
    """
    alarms = (f for f in what_stands(state) if f.severity == "alarm" and f.id in CAUSES)
    worst = next((f for f in alarms if f.id not in but), None)
    return None if worst is None else causes.cause(worst)


def what_stands(state: State) -> list[Finding]:
    """What is found in only what was read or put in lately."""
    fresh = {name: each for name, each in state.readings.items() if each.is_fresh(state.now)}
    return stands(replace(state, readings=fresh), frozenset(fresh))


async def new_water(turn: Turn, stored: StoredTank | None, state: State | None) -> NewWater | None:
    """Give the water that a tank is filled from, as far as it is on record."""
    if stored is None or state is None:
        return None
    warmth = state.last("temperature")
    waters = await Waters.of(turn, None if warmth is None else warmth.value)
    source = waters.default_for(stored)
    if source is None:
        return None
    supply = await waters.supply(source)
    return NewWater(supply.name, supply.state, chlorinated=supply.treated > 0.0)


async def caution_beside(turn: Turn, parsed: Parsed) -> list[Reply]:
    """The caution of water without minerals, behind a change with it that is put on record."""
    changed = any(event.kind == "water_change" for event in parsed.events)
    kinds = {kind for _start, _end, kind in mentioned(turn.incoming.text)}
    if not changed or not kinds or kinds - PURE or parsed.question is not None:
        return []
    name = touched(turn.incoming.text)
    if name != "pure_water":
        return []
    return [await turn.reply(cautions.caution(name), facts={"caution": name})]
