"""What is told and asked after a call for help: the next step in that emergency.

Only where something is wrong in the tank by its readings, its record or a call of the day
(`what_now.danger_in`); but what dosing made milky, and what was done, is heard without.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from bot.chat import calls, eased, emergencies, outside_calls, questions, readings, what_now
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import after_call as gone_words
from bot.chat.words import after_steps as steps_words
from bot.chat.words import emergency_talk as words
from bot.store.tanks import StoredTank
from core.advice.calls import HEATED, OF_PEOPLE, Danger
from core.advice.emergencies import Help, help_for
from core.advice.jumps import CO2_OFF
from core.message.denied import denied
from core.message.emergency_talk import Meaning, classes, meant, number
from core.message.model import Event, Parsed, Question
from core.message.tank_asked import tank_asked

BEARABLE: Final = (15.0, 45.0)
"""Numbers that may be the water's warmth after a heater failed. [°C]"""

ALWAYS: Final = frozenset({"milky", "conditioned", "co2_off", "spared", "much_conditioned"})
"""Meanings that need no call before them."""


@dataclass(frozen=True, slots=True)
class _Spoken:
    """What is wrong in which tank."""

    stored: StoredTank
    danger: Danger | None
    gasping: bool


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Answer what is told or asked in an emergency; None where nothing is wrong, or other talk."""
    if not turn.incoming.addressed or parsed.values or parsed.command is not None:
        return None
    text, named = what_now.without_tank(turn, turn.incoming.text)
    stored = named or turn.current_tank
    if (meaning := meant(text)) is None or (meaning == "better" and tank_asked(text)):
        return None  # está bien el acuario: asked, and no end of anything
    if meaning not in OWN_DANGERS and calls.is_danger(turn, parsed):
        return None
    if stored is None:
        return await _of_no_tank(turn, meaning)
    danger, gasping = await what_now.danger_in(turn, stored)
    if meaning == "power_back" and not _names_what(text) and danger not in {"power", "filter"}:
        return None  # it is back: of whatever was spoken of
    if danger is None and meaning == "feed" and await _is_polluted(turn, stored):
        lines = words.LINES[meaning](await _help(turn, _Spoken(stored, None, False), "ammonia"))
        return [await turn.reply(words.of(stored.name, lines), facts={"tank": stored.name})]
    if danger is None and meaning not in ALWAYS:
        return None
    return await _told(turn, meaning, _Spoken(stored, danger, gasping))


def _names_what(text: str) -> bool:
    """Whether what is back is named: the power, the filter."""
    return bool({"power", "filter"} & classes(text))


async def _of_no_tank(turn: Turn, meaning: Meaning) -> list[Reply] | None:
    """The same of a call for help from a chat that has told of no tank yet."""
    danger, gasping = await outside_calls.newest(turn) or (None, False)
    if danger is None or danger in OF_PEOPLE:
        return None
    if meaning == "power_back" and not _names_what(turn.incoming.text) and danger != "power":
        return None
    if meaning in {"fish_now", "worse", "look_fine"}:
        lead = words.worse() if meaning == "worse" else None
        lead = words.look_fine() if meaning == "look_fine" else lead
        return [await emergencies.help_in(turn, None, danger, gasping=gasping, lead=lead)]
    help_ = help_for(danger, None, gasping=gasping)
    lines = _lines(turn, meaning, help_)
    if lines is None:
        return None
    if "?" not in turn.incoming.text:
        await eased.keep(turn, None, danger, meaning)
    return [await turn.reply(lines, facts={"emergency": danger})]


def _lines(turn: Turn, meaning: Meaning, help_: Help) -> list[str] | None:
    """What is told by the readings alone; None of what else a meaning may need."""
    if meaning == "will_live":
        return words.will_live()
    if meaning == "better":
        told = words.better(asks="?" in turn.incoming.text)
        return [*told, *gone_words.gone(help_.danger)]
    return words.LINES[meaning](help_) if meaning in words.LINES else None


async def _is_polluted(turn: Turn, stored: StoredTank) -> bool:
    """Whether the latest ammonia or nitrite is over 0: then food makes more of it."""
    state = await state_of(turn, stored, turn.now)
    read = [state.fresh(analyte) for analyte in ("ammonia", "nitrite")]
    return any(each is not None and each.value > 0.0 and each.qualifier != "<" for each in read)


OWN_DANGERS: Final = frozenset(
    {"conditioned", "much_conditioned", "cold_new", "power_back", "better", "spared"}
)
"""Meanings whose words call for help where less is said."""


async def _told(turn: Turn, meaning: Meaning, spoken: _Spoken) -> list[Reply] | None:
    stored, danger = spoken.stored, spoken.danger
    if meaning in {"conditioned", "much_conditioned"}:
        return await _conditioned(turn, spoken, much=meaning == "much_conditioned")
    if meaning == "spared" and danger is None and denied(turn.incoming.text, turn.context()):
        return None  # a loss that is denied
    if meaning == "spared":
        lines = words.of(stored.name, steps_words.spared())
        return [await turn.reply(lines, facts={"tank": stored.name})]
    if meaning == "co2_off":
        return await _co2_off(turn, spoken)
    if meaning == "milky":
        lines = words.milky(stored.name, is_sea=stored.tank.is_sea)
        return [await turn.reply(lines, facts={"tank": stored.name})]
    if danger is None:
        return None
    if meaning == "warmth_ok":
        return await _warmth(turn, spoken)
    if meaning == "fish_now":
        return [await emergencies.help_in(turn, stored, danger, gasping=spoken.gasping)]
    if meaning == "look_fine" and (calm := await eased.stands(turn, stored.id)) is not None:
        return [calm]
    if meaning in {"worse", "look_fine"}:
        lead = words.worse() if meaning == "worse" else words.look_fine()
        return [await emergencies.help_in(turn, stored, danger, gasping=spoken.gasping, lead=lead)]
    help_ = await _help(turn, spoken, danger)
    facts = {"emergency": danger, "tank": stored.name}
    asks = "?" in turn.incoming.text
    told = _lines(turn, meaning, help_)
    if told is None:
        return None
    if not asks:
        await eased.keep(turn, stored, danger, meaning)
    return [await turn.reply(words.of(stored.name, told), facts=facts)]


async def _help(turn: Turn, spoken: _Spoken, danger: Danger) -> Help:
    state = await state_of(turn, spoken.stored, turn.now)
    new = await emergencies.new_water(turn, spoken.stored, state)
    return help_for(danger, state, new, gasping=spoken.gasping)


async def _conditioned(turn: Turn, spoken: _Spoken, *, much: bool) -> list[Reply]:
    """A dechlorinator went in: the deed is kept, double as well, which no animal minds.

    `much`: many times the label, which takes oxygen.
    """
    told = Event("dose", substance="dechlorinator")
    kept = await readings.keep(turn, Parsed("event", events=(told,)), spoken.stored)
    if much:
        facts = {"tank": spoken.stored.name}
        return [*kept, await turn.reply(steps_words.much_conditioned(), facts=facts)]
    if spoken.danger is None:
        is_double = "double" in classes(turn.incoming.text)
        again = [await turn.reply(steps_words.double_conditioned())] if is_double else []
        return [*kept, *again]
    facts = {"emergency": spoken.danger, "tank": spoken.stored.name}
    return [*kept, await turn.reply(words.conditioned(), facts=facts)]


async def _co2_off(turn: Turn, spoken: _Spoken) -> list[Reply]:
    """CO2 was shut off: kept, so that a pH that rises is no riddle."""
    told = Event("note", text=CO2_OFF)
    kept = await readings.keep(turn, Parsed("event", events=(told,)), spoken.stored)
    if spoken.danger is None:
        return kept
    help_ = await _help(turn, spoken, spoken.danger)
    facts = {"tank": spoken.stored.name, "emergency": spoken.danger}
    return [*kept, await turn.reply(words.co2_off(help_), facts=facts)]


async def _warmth(turn: Turn, spoken: _Spoken) -> list[Reply] | None:
    """A bare number after a heater failed is the water's warmth; it is judged, not kept."""
    told = number(turn.incoming.text)
    if spoken.danger not in HEATED or told is None:
        return None
    warm = (told - 32.0) / 1.8 if told > BEARABLE[1] else told
    if not BEARABLE[0] <= warm <= BEARABLE[1]:
        return None
    text = turn.incoming.text
    question = Question(
        "safe", spoken.stored.name, "temperature", premises={"temperature": warm}, text=text
    )
    replies = await questions.safe(turn, question, Parsed("question", question=question))
    lines = words.slowly_back(is_hot=spoken.danger != "heater_cold")
    facts = {"emergency": spoken.danger, "tank": spoken.stored.name}
    return [*replies, await turn.reply(lines, facts=facts)]
