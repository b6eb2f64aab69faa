"""``my tanks``, ``which is worse``, ``switch to fern``, ``and the other?``, ``only for fern``."""

from __future__ import annotations

from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from typing import Any, Final

from bot.chat import (
    agenda,
    belongs,
    followups,
    inhabitants,
    past,
    questions,
    standing,
    tank_meant,
    tanks,
    tanks_told,
)
from bot.chat.followups import Topics
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.state import state_of
from bot.chat.tank_volumes import facts as tank_facts
from bot.chat.turn import ASKED, Turn
from bot.chat.words import standing as standing_words
from bot.chat.words import tank_talk as words
from bot.chat.words import tanks as tank_words
from bot.store.log import Entry
from bot.store.offers import Offer
from bot.store.tanks import StoredTank
from core.advice.findings import RANK
from core.message import kinds, parse
from core.message.fold import fold
from core.message.model import Command, Parsed, Question
from core.message.past import asked as past_asked
from core.message.right_pieces import regretted
from core.message.tank_talk import TankTalk, tank_talk

_NOTHING: Final = Parsed("none")
_BEFORE_ANY: Final = -1
"""A call for help is worse than any finding."""


async def answer(turn: Turn, parsed: Parsed, topics: Topics) -> list[Reply] | None:
    """Answer what is asked of the tanks themselves; None for other talk."""
    if parsed.values or parsed.events or not turn.incoming.addressed:
        return None
    context = turn.context()
    said = tank_talk(turn.incoming.text, context.tanks, context.looks)
    if said is not None and said.meaning == "have":
        return await _have(turn)
    if said is not None and said.meaning == "list" and not turn.tanks:
        return [await turn.reply(tank_words.listing([]))]
    if said is None or not turn.tanks:
        return None
    if said.meaning == "other":
        entry = await _entry_of(turn) if regretted(turn.incoming.text) else None
        if entry is not None:
            return await belongs.to_meant(turn, entry, "other")
        if parsed.command is not None:
            return None
        return await _other(turn, topics)
    stored = turn.tank_named(said.tank) if said.tank else turn.current_tank
    if said.meaning == "size":
        shown = [stored] if said.tank and stored is not None else turn.tanks
        return [await tanks.show(turn, each) for each in shown]
    if said.meaning in _OF_ALL:
        return await _OF_ALL[said.meaning](turn)
    if said.meaning == "this":
        names = [tank.name for tank in turn.tanks]
        lines = words.none_in_use(names) if stored is None else words.in_use(stored.name)
        return [await turn.reply(lines, facts={} if stored is None else {"tank": stored.name})]
    return None if stored is None else await _of_one(turn, stored, said, topics)


async def _of_one(
    turn: Turn, stored: StoredTank, said: TankTalk, topics: Topics
) -> list[Reply] | None:
    """What is asked of one tank."""
    if said.meaning == "use":
        return await tanks_told.shown(turn, stored)
    if said.meaning == "only":
        latest = await _latest(turn)
        if latest is None or latest.entry_id is None:
            return None
        return await belongs.only(turn, latest.entry_id, stored)
    if said.meaning == "in":
        return await _there(turn, stored) or await tank_meant.moved(turn, stored)
    if said.meaning == "one":
        return await _that_one(turn, stored, topics)
    if said.meaning == "left" and not await _after_animals(turn):
        return None
    if said.meaning in {"there", "left"}:
        return await inhabitants.show(turn, Command("stock", stored.name), _NOTHING)
    if said.meaning == "got":
        asked = past_asked(f"when did i last dose {stored.name}", [stored.name])
        return None if asked is None else await past.answer(turn, asked)
    if said.meaning == "values":
        return await questions.history(turn, Question("history", tank=stored.name), _NOTHING)
    return await standing.status(turn, Question("safe", tank=stored.name))


async def _list(turn: Turn) -> list[Reply]:
    """Every tank: how much water, and its last readings."""
    lines: list[str] = []
    readings: dict[str, dict[str, float]] = {}
    for stored in turn.tanks:
        state = await state_of(turn, stored, turn.now)
        lines.append(tank_words.shown(stored.tank, turn.chat.zone))
        lines += standing_words.measured(list(state.readings.values()), state.now)
        readings[stored.name] = {each.analyte: each.value for each in state.readings.values()}
    facts = {"tanks": [tank_facts(tank) for tank in turn.tanks], "readings": readings}
    return [await turn.reply(lines, facts=facts)]


async def _have(turn: Turn) -> list[Reply]:
    """Every tank, and the reminders where there are any."""
    reminders = await turn.uow.reminders.of_chat(turn.chat.id)
    due = await agenda.listed(turn) if reminders else []
    if turn.tanks:
        return [*await _list(turn), *due]
    return due or [await turn.reply(tank_words.listing([]))]


async def _compare(turn: Turn) -> list[Reply] | None:
    """How each tank stands, the worst one first, and which that is where they differ."""
    if len(turn.tanks) < 2:
        return None
    told = [
        (stored, await standing.status(turn, Question("safe", tank=stored.name)))
        for stored in turn.tanks
    ]
    bad = {stored.id: _rank(replies[0].facts) for stored, replies in told}
    told.sort(key=lambda each: bad[each[0].id])
    unknown = [s.name for s in turn.tanks if not (await state_of(turn, s, turn.now)).readings]
    first, second = (bad[stored.id] for stored, _replies in told[:2])
    if unknown:
        lines = words.not_all_measured(unknown)
    elif first < second:
        lines = words.worst_first(told[0][0].name)
    else:
        lines = words.none_worse()
    head = await turn.reply(lines, facts={"tanks": [stored.name for stored, _replies in told]})
    return [head, *(reply for _stored, replies in told for reply in replies)]


def _rank(facts: Mapping[str, Any]) -> int:
    """How bad a tank stands: the less, the worse."""
    if "emergency" in facts:
        return _BEFORE_ANY
    return min((RANK[each["severity"]] for each in facts.get("findings", ())), default=len(RANK))


async def _change(turn: Turn) -> list[Reply]:
    """Whether each tank needs new water."""
    return [
        reply
        for stored in turn.tanks
        for reply in await standing.change_needed(turn, Question("renew", tank=stored.name))
    ]


async def _dosed(turn: Turn) -> list[Reply] | None:
    """When each tank got a dose last, the newest one first."""
    asked, used = (
        past_asked("when did i last dose", [tank.name for tank in turn.tanks]),
        turn.current_tank,
    )
    if asked is None:
        return None
    last = {
        stored.id: [dose.at for dose in await turn.uow.log.events(stored.id, kinds=["dose"])][:1]
        for stored in turn.tanks
    }
    replies: list[Reply] = []
    for stored in sorted(turn.tanks, key=lambda each: last[each.id], reverse=True):
        replies += await past.answer(turn, replace(asked, tank=stored.name)) or []
    if used is not None:
        await turn.use_tank(used)
    return replies


async def _read(turn: Turn) -> list[Reply]:
    """The last readings of each tank."""
    return [
        reply
        for stored in turn.tanks
        for reply in await questions.history(turn, Question("history", tank=stored.name), _NOTHING)
    ]


_OF_ALL: Final[Mapping[str, Callable[[Turn], Awaitable[list[Reply] | None]]]] = {
    "list": _list,
    "compare": _compare,
    "change": _change,
    "read": _read,
    "dosed": _dosed,
}


async def _latest(turn: Turn) -> Offer | None:
    """What was answered last, while it is spoken of."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    return latest[0] if latest and turn.now - latest[0].made_at <= patience else None


async def _other(turn: Turn, topics: Topics) -> list[Reply] | None:
    """What was asked last, of the one tank that is not in use; else how that one stands."""
    others = [tank for tank in turn.tanks if tank is not turn.current_tank]
    if len(turn.tanks) < 2 or turn.current_tank is None or len(others) != 1:
        return None
    if (found := await _asked_of(turn, others[0], topics, await _latest(turn))) is not None:
        return found
    await turn.use_tank(others[0])
    return await standing.status(turn, Question("safe", tank=others[0].name))


async def _asked_of(
    turn: Turn, stored: StoredTank, topics: Topics, latest: Offer | None
) -> list[Reply] | None:
    """What was asked last, of that tank; None where nothing was."""
    whole = turn.incoming
    if latest is None or ASKED not in latest.context:
        return None
    turn.incoming = replace(whole, text=f"and for {stored.name}?")
    asked = parse(turn.incoming.text, turn.context())
    found = await followups.answer(turn, asked, topics)
    turn.incoming = whole if found is None else turn.incoming
    return found


async def _that_one(turn: Turn, stored: StoredTank, topics: Topics) -> list[Reply] | None:
    """`the left`: of what was just asked or told without a name; else it is shown."""
    if "?" in turn.incoming.text and fold(stored.name) not in fold(turn.incoming.text):
        found = await _asked_of(turn, stored, topics, await _latest(turn))
        return found or await tanks_told.shown(turn, stored)  # and the little one?
    if tank_meant.is_name_alone(turn) or "?" in turn.incoming.text:
        return None  # its name alone shows it
    if (found := await _there(turn, stored) or await tank_meant.moved(turn, stored)) is not None:
        return found
    latest, regrets = await _latest(turn), regretted(turn.incoming.text)
    if regrets and latest is not None and latest.entry_id is not None:
        entry = await _entry_of(turn)
        to = Command("move", stored.name)
        return None if entry is None else await belongs.move(turn, to, _NOTHING, of=entry)
    if regrets and (beside := await tank_meant.moved_beside(turn, stored, latest)):
        return beside
    asked = await _asked_of(turn, stored, topics, latest)
    return asked or await tanks_told.shown(turn, stored)


async def _entry_of(turn: Turn) -> Entry | None:
    """What was told and answered last; None where that is a dose, or no such thing was."""
    latest = await _latest(turn)
    if latest is None or latest.entry_id is None:
        return None
    entry = await turn.uow.log.current(turn.chat.id, latest.entry_id)
    dosed = entry is not None and any(event.what.kind == "dose" for event in entry.events)
    return None if entry is None or dosed or entry.is_empty else entry


async def _there(turn: Turn, stored: StoredTank) -> list[Reply] | None:
    """What was just asked about is told of another tank; None where nothing waits for one."""
    latest = await _latest(turn)
    if latest is None or turn.route is None or latest.entry_id is not None:
        return None
    for choice in latest.choices:
        text, of = choice.arguments.get("text"), choice.arguments.get("tank_id")
        if isinstance(text, str) and of is not None:
            await turn.uow.offers.close(latest.id)
            turn.incoming = replace(turn.incoming, text=f"{stored.name}: {text}")
            await turn.use_tank(stored)
            return await turn.route(turn, parse(turn.incoming.text, turn.context()))
    return None


async def _after_animals(turn: Turn) -> bool:
    """Whether animals were just told to be gone."""
    latest = await _latest(turn)
    if latest is None or latest.entry_id is None:
        return False
    entry = await turn.uow.log.current(turn.chat.id, latest.entry_id)
    gone = kinds.OF_ANIMALS | {"moved_out"}
    return entry is not None and any(event.what.kind in gone for event in entry.events)
