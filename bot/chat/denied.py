"""What was not done, or did not die: nothing is stored, and what was told of it is taken back.

Only a deed of the kind that is named is taken back, and only where it was told last; an older one
gets a button.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import undoing
from bot.chat.corrections import OF_LATE
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.replacing import said as told_of
from bot.chat.turn import Turn
from bot.chat.words import buttons
from bot.chat.words import denied as words
from bot.store.log import Entry
from bot.store.offers import Choice, Offer
from core.advice.cautions import touched
from core.message import parse
from core.message.alive import lives
from core.message.denied import Denied, denied
from core.message.model import Event, Parsed

DAYS: Final = 14
"""So far back a dose that is denied is looked for; our judgement. [d]"""

LOOKED_AT: Final = 40
"""Latest entries among which it is looked for."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Take back what is said not to be done; None where nothing is said of that."""
    if not turn.incoming.addressed or turn.incoming.reply_to is not None:
        return None
    if (beside := await _beside(turn, parsed)) is not None:
        return beside
    if parsed.values or parsed.question is not None:
        return None
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    alive = lives(turn.incoming.text)
    if alive is not None and (entry := await _told_last(turn, latest)) is not None:
        dead = [event for event in entry.events if event.what.kind == "lost"]
        if dead and len(dead) == len(entry.events) and not entry.readings:
            if alive == "surely":
                return await _back(turn, entry)
            return [await _offered(turn, words.still_lives(told_of(turn, entry)), entry)]
    said = denied(turn.incoming.text, turn.context())
    if touched(turn.incoming.text, asked=False) == "long_unchanged":
        return None  # never changed water: how it is begun
    if said is None or (said.near and (parsed.events or not parsed.doubts)):
        return None
    if said.near:
        return [await turn.reply(words.nothing_stored())]
    entry = await _told_last(turn, latest)
    if entry is not None and _is_all(entry, said):
        return await _back(turn, entry)
    if said.substance is None and await turn.uow.reminders.of_chat(turn.chat.id, only_open=True):
        return None  # it may be what a reminder waits for
    older = await _older(turn, said)
    if older is not None:
        return [await _offered(turn, words.take_back(told_of(turn, older)), older)]
    if said.substance is not None:
        return [await turn.reply(words.none_on_record(said.name, DAYS))]
    lines = words.no_loss() if said.deed == "lost" else words.nothing_stored()
    return [await turn.reply(lines)]


async def _beside(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """What is denied before a reading, then the reading: `didnt dose salt, kh 5`."""
    if turn.route is None or parsed.command is not None or parsed.question is not None:
        return None
    for sign in _PARTED.finditer(turn.incoming.text):
        text = turn.incoming.text
        first, rest = text[: sign.start()].strip(), text[sign.end() :].strip()
        read = parse(rest, turn.context())
        if not read.values or read.doubts or read.events or read.question or read.command:
            continue
        said, alone = denied(first, turn.context()), parse(first, turn.context())
        if said is None or said.near or alone.values or alone.events:
            continue
        own = turn.incoming
        turn.incoming = replace(own, text=first, update_id=f"{own.update_id}:denied")
        replies = await answer(turn, alone)
        turn.incoming = replace(own, text=rest)
        return (replies or []) + await turn.route(turn, read)
    return None


_PARTED: Final = re.compile(r"\s*[,;]\s+|\s+(?:but|aber|mais|pero|mas|ma|maar|ale|men)\s+")


async def _told_last(turn: Turn, latest: Sequence[Offer]) -> Entry | None:
    """The entry that was answered last, as it stands now; None where something else was."""
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return None
    await turn.know_waters()
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    return None if entry is None or entry.is_empty else entry


async def _older(turn: Turn, said: Denied) -> Entry | None:
    """The newest dose of a substance that is denied by name; without a name, of the last day."""
    if said.substance is None and said.deed != "dose":
        return None
    await turn.know_waters()
    since = turn.now - timedelta(days=DAYS if said.substance is not None else 1)
    for entry in await turn.uow.log.newest(turn.chat.id, LOOKED_AT):
        if _is_all(entry, said) and all(event.at >= since for event in entry.events):
            return entry
    return None


def _is_all(entry: Entry, said: Denied) -> bool:
    """Whether an entry tells nothing but what is denied."""
    told = [event.what for event in entry.events]
    return bool(told) and not entry.readings and all(_is_of(event, said) for event in told)


def _is_of(event: Event, said: Denied) -> bool:
    if event.kind != said.deed:
        return False
    if said.substance is not None:
        return _same(said.substance, said.name, event.substance)
    if said.species is not None and event.species is not None:
        either = {said.species.casefold().rstrip("s"), event.species.casefold().rstrip("s")}
        return len(either) == 1 or (said.deed == "lost" and event.species.casefold() == "fish")
    return True


def _same(substance: str, name: str, dosed: str | None) -> bool:
    """Whether what was dosed may be meant by a name: soda is any of the two, salt also sea salt."""
    if dosed is None:
        return False
    kept = dosed.casefold()
    if kept == substance.casefold() or name in kept.split() or substance in kept.split():
        return True
    if substance == "soda":
        return kept in {"sodium bicarbonate", "sodium carbonate"}
    return {substance, kept} == {"sodium chloride", "sea salt"}


async def _offered(turn: Turn, lines: list[str], entry: Entry) -> Reply:
    undo = Choice(buttons.undo(), "undo", "undo", {"entry_id": entry.id})
    return await turn.reply(lines, choices=[undo])


async def _back(turn: Turn, entry: Entry) -> list[Reply]:
    """Take back an entry, and what stood in its place before: nothing of it was done."""
    own, again = turn.incoming.update_id, _again(entry)
    replies: list[Reply] = []
    standing: Entry | None = entry
    for time in range(OF_LATE):
        if standing is None or standing.is_empty:
            break
        turn.incoming = replace(turn.incoming, update_id=f"{own}:{time}" if time else own)
        replies = await undoing.take_back(turn, standing, again)
        standing = await turn.uow.log.current(turn.chat.id, entry.id)
    return replies


def _again(entry: Entry) -> list[Choice]:
    """The button that puts a loss or a dose back as it was told."""
    first = entry.events[0]
    text = _told_again(entry)
    if text is None:
        return []
    held = {"text": text, "at": first.at.isoformat(), "tank_id": first.tank_id}
    label = words.put_back() if first.what.kind == "lost" else words.put_in()
    return [Choice(label, "for_tank", "", held)]


def _told_again(entry: Entry) -> str | None:
    """What the parser reads as what was taken back; None where nothing says it surely."""
    what = entry.events[0].what
    if what.kind == "lost":
        return entry.text if entry.kind == "message" and entry.text else None
    if what.kind != "dose" or len(entry.events) > 1 or what.litres is not None:
        return None
    if what.grams is not None:
        return f"dosed {what.grams:.6g} g {what.substance}"
    return None if what.millilitres is None else f"dosed {what.millilitres:.6g} ml {what.substance}"
