"""``now it's 45``, ``und heute 5``: a number alone, which is probably of the value told before.

It is asked, and kept at once only where it tells how that stands now, right after a warning of it.
``fern 6.5 and 2`` is of that tank: it is asked of which values.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta
from typing import Final

from bot.chat import readings, tank_words, tanks_told, what_now
from bot.chat.asking import ask
from bot.chat.model import Reply
from bot.chat.patience import GROUP_PATIENCE, PATIENCE
from bot.chat.reminder_waiting import tested
from bot.chat.turn import ABOUT, Turn
from bot.chat.words import readings as words
from bot.store.offers import UNHEARD
from core.message import doubts, parse
from core.message.fold import fold
from core.message.guesses import believable, name_for
from core.message.lexicon import lexicon
from core.message.lone_number import warmed as warmed_by
from core.message.model import Doubt, Event, Parsed
from core.message.token import is_number
from core.message.tokens import Token, cut
from core.message.word_classes import is_small

OF_LATE: Final = timedelta(days=2)
"""So long the value told before is still what a number is about; ours."""
STILL_ASKED: Final = timedelta(minutes=30)
"""So long a number alone answers what was asked about right before; ours."""
MOST: Final = 6
"""Tokens of such a message, at most."""
_LIGHT: Final = frozenset(
    {
        "link", "and", "one", "today", "now", "approx", "its", "ago", "at", "likes", "fell_to",
        "rose_to",
    }
)  # fmt: skip
_SAYS_HOW: Final = frozenset({"link", "now", "its"})
"""Meanings of words that tell how it stands now."""
_JUDGES: Final = frozenset({"judge", "safe"})
"""Meanings of words that ask whether a number is right."""
_WARNED: Final = frozenset({"warn", "alarm"})
_FALLING: Final = frozenset({"ammonia", "nitrite", "nitrate", "copper", "chlorine"})
"""What may fall to nothing from one test to the next."""
MOST_TIMES: Final = 2.0
"""So many times what was told, or as small a part of it, a number is still surely of it; ours."""
MOST_NUMBERS: Final = 4
"""Numbers of one tank that are asked about together."""
_SUPPOSED: Final = frozenset(
    "think guess reckon glaube denke schatze pense crois creo supongo acho penso credo denk"  # noqa: SIM905
    " mysle sadze tror".split()
)
"""Words of a keeper who is not sure, in nine languages, without accents."""
_STILL: Final = frozenset(
    "still noch immer immernoch encore toujours todavia aun ainda ancora nog steeds wciaz nadal"  # noqa: SIM905
    " fortfarande".split()
)
"""Words for as before, likewise."""


async def answer(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask whether the number is of the value told last; None where it says more, or none was."""
    told = parsed.values or parsed.events or parsed.question or parsed.command
    if told or not turn.incoming.addressed:
        return None
    if (asked := await _of_tank(turn, parsed)) is not None:
        return asked
    number, warmth, said = _alone(turn.incoming.text)
    if number is None:
        return None
    if warmth:
        of_it = None if turn.current_tank is None else ("temperature", turn.current_tank.id)
    else:
        torn = await _torn(turn, number)
        if torn is not None:
            return torn
        of_it = await _asked_about(turn) or await _due(turn) or await _told_last(turn)
    if of_it is None:
        return None
    analyte, tank_id = of_it
    value = _value(number)
    if not believable(analyte, value, None):
        return None
    stored = turn.tank_by_id(tank_id)
    of = "" if stored is None or stored is turn.current_tank else f"{stored.name}: "
    sign = "~" if "approx" in said else ""
    meant = f"{of}{name_for(analyte)} {sign}{value:.6g}"
    if said & _SAYS_HOW and await _was_warned_of(turn, analyte, value):
        return await readings.keep(turn, parse(meant, turn.context()))
    doubt = Doubt(number.text, number.start, number.end, doubts.STRAY_NUMBER, meant)
    return await readings.keep(turn, Parsed("unclear", doubts=(doubt,)))


async def judged(turn: Turn, _parsed: Parsed) -> list[Reply] | None:
    """``is 4 ok``, ``is 5 drops ok``: whether so much is right of the value spoken of last.

    Nothing is stored. None where more is said, or no value was spoken of.
    """
    text = turn.incoming.text
    span = _judged(text) if turn.incoming.addressed and turn.route is not None else None
    of_it = None if span is None else await _spoken_of(turn)
    if span is None or of_it is None or turn.route is None:
        return None
    analyte, tank_id = of_it
    held = turn.tank_by_id(tank_id) if analyte == "temperature" else None
    if held is not None and (await what_now.danger_in(turn, held))[0] is not None:
        return None  # is 31 ok overnight, with a heater that stuck
    read = parse(f"{name_for(analyte)} {text[slice(*span)]}", turn.context())
    value = read.values[0].canonical if len(read.values) == 1 and not read.doubts else None
    stored = turn.tank_by_id(tank_id)
    if not isinstance(value, int | float) or stored is None:
        return None
    if read.values[0].unit is not None and not await _is_told(turn, analyte, value):
        return None  # drops of the kit, which none were told of
    await turn.use_tank(stored)
    asked = f"{text[: span[0]]}{name_for(analyte)} {value:.6g}{text[span[1] :]}"
    turn.incoming = replace(turn.incoming, text=asked)
    return await turn.route(turn, parse(asked, turn.context()))


async def _is_told(turn: Turn, analyte: str, value: float) -> bool:
    """Whether so much is what was told last of that value."""
    entry = await turn.uow.log.latest(turn.chat.id, turn.incoming.author_id)
    told = [] if entry is None else [each.what for each in entry.readings]
    return any(each.analyte == analyte and each.canonical == value for each in told)


async def _spoken_of(turn: Turn) -> tuple[str, int] | None:
    """The one value that the last answer is of, a plan of it too; else the one told last."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or turn.now - latest[0].made_at > patience:
        return None
    facts = latest[0].context.get("facts", {})
    stored = turn.tank_named(str(facts.get("tank", "")))
    if stored is not None and isinstance(facts.get("analyte"), str):
        return facts["analyte"], stored.id
    return await _asked_about(turn) or await _told_last(turn)


def _judged(text: str) -> tuple[int, int] | None:
    """Where the one number of a question stands, with its drops, that only judges it."""
    tokens = cut(fold(text), lexicon(), text, most=MOST + 1)
    numbers = [n for n, token in enumerate(tokens) if is_number(token)]
    if len(tokens) > MOST or len(numbers) != 1 or not _is_plain(tokens[numbers[0]]):
        return None
    (place,) = numbers
    last = (
        place + 1 if [each.value for each in tokens[place + 1 : place + 2]] == ["drops"] else place
    )
    rest = [*tokens[:place], *tokens[last + 1 :]]
    judges = [token for token in rest if token.value in _JUDGES]
    asks = tokens[0].value == "link" or "?" in text
    light = all(token in judges or token.text == "?" or _is_light(token) for token in rest)
    return (tokens[place].start, tokens[last].end) if len(judges) == 1 and asks and light else None


async def _torn(turn: Turn, number: Token) -> list[Reply] | None:
    """`7.1` right behind `ph 7 1`, which could not be read: it is of that name.

    With the digits that were told it is kept; another number of that name is asked about.
    """
    found = await turn.uow.offers.unheard(turn.chat.id, turn.now - STILL_ASKED)
    newest = await turn.uow.log.newest(turn.chat.id, 1)
    if found is None or (newest and newest[0].id > found.context["entry"]):
        return None
    text = str(found.context[UNHEARD])
    tokens = cut(fold(text), lexicon(), text)
    names = [str(t.value).partition("@")[0] for t in tokens if t.kind == "analyte"]
    if len(names) != 1 or not believable(names[0], _value(number), None):
        return None
    meant = f"{name_for(names[0])} {_value(number):.6g}"
    read = parse(meant, turn.context())
    numbers = [token.text for token in tokens if is_number(token)]
    if not 0 < len(numbers) <= 2 or any(token.kind == "time" for token in tokens):
        return None
    told = "".join(numbers)
    if _digits(told) == _digits(number.text) and len(read.values) == 1 and not read.doubts:
        return await readings.keep(turn, read)
    doubt = Doubt(number.text, number.start, number.end, doubts.STRAY_NUMBER, meant)
    return await readings.keep(turn, Parsed("unclear", doubts=(doubt,)))


def _digits(text: str) -> str:
    return "".join(filter(str.isdigit, text))


async def warmed(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """``put hot water in, its 27 now``: the deed is noted, and how warm the water is kept."""
    told = warmed_by(turn.incoming.text) if turn.incoming.addressed else None
    other = parsed.events or parsed.question or parsed.command
    if told is None or other or any(each.analyte != "temperature" for each in parsed.values):
        return None
    deed, number = told
    read = parse(f"{name_for('temperature')} {number}", turn.context())
    if len(read.values) != 1 or read.doubts:
        return None
    note = Event("note", text=deed)
    values = tuple(replace(each, tank=parsed.tank) for each in read.values)
    both = Parsed("reading", tank=parsed.tank, at=parsed.at, values=values, events=(note,))
    return await readings.keep(turn, both)


async def _was_warned_of(turn: Turn, analyte: str, value: float) -> bool:
    """Whether the last reply warned of this one value, and the number is one that it can be now."""
    latest = await turn.uow.offers.latest(turn.chat.id, 1)
    patience = GROUP_PATIENCE if turn.incoming.group else PATIENCE
    if not latest or latest[0].entry_id is None or turn.now - latest[0].made_at > patience:
        return False
    found = latest[0].context.get("facts", {}).get("findings", ())
    entry = await turn.uow.log.current(turn.chat.id, latest[0].entry_id)
    if entry is None or len(entry.readings) != 1 or entry.events:
        return False
    (told,) = entry.readings
    before = told.what.canonical
    if told.what.analyte != analyte or not isinstance(before, float) or told.what.basis is not None:
        return False
    if told.what.unit is not None and before != told.what.value:
        return False  # 100 ppm, and then 4
    falls = analyte in _FALLING and value <= before
    near = falls or before / MOST_TIMES <= value <= before * MOST_TIMES
    return near and any(each["severity"] in _WARNED for each in found)


async def _of_tank(turn: Turn, parsed: Parsed) -> list[Reply] | None:
    """Ask of which values the numbers are that stand behind a tank; None where more is said."""
    stored = turn.tank_named(parsed.tank) if parsed.tank else None
    text = turn.incoming.text
    if stored is None or not parsed.doubts or "?" in text:
        return None
    _named, said = tanks_told.spoken_of(turn, text)
    if tank_words.own(said, us_gallons=turn.chat.us_gallons) is not None:
        return None  # tank is 70l, fern is 70l
    if any(each.reason != doubts.STRAY_NUMBER or each.choices for each in parsed.doubts):
        return None
    numbers = [
        token for token in cut(fold(text), lexicon(), text) if is_number(token) and _is_plain(token)
    ]
    inside = [
        each for each in numbers
        if any(doubt.start <= each.start and each.end <= doubt.end for doubt in parsed.doubts)
    ]  # fmt: skip
    rest = [part for each in parsed.doubts for part in each.text.split()]
    if len(inside) != len(rest) or not 0 < len(inside) <= MOST_NUMBERS:
        return None
    names = await _in_that_order(turn, [_value(each) for each in inside])
    if not names:
        told = [each.text for each in inside]
        facts = {"ask": "values", "tank": stored.name}
        return [await turn.reply(words.of_which(stored.name, told), facts=facts)]
    meant = [f"{name_for(name)} {each.text}" for each, name in zip(inside, names, strict=True)]
    meant[0] = f"{stored.name}: {meant[0]}"
    asked = [
        Doubt(each.text, each.start, each.end, doubts.STRAY_NUMBER, text)
        for each, text in zip(inside, meant, strict=True)
    ]
    return [await ask(turn, asked, replace(parsed, doubts=tuple(asked)))]


async def _in_that_order(turn: Turn, told: list[float]) -> list[str]:
    """The names of as many values told last, where the numbers can be of them; else none."""
    entry = await turn.uow.log.latest(turn.chat.id, turn.incoming.author_id)
    if entry is None or turn.now - entry.at > STILL_ASKED or entry.events:
        return []
    names = [each.what.analyte for each in sorted(entry.readings, key=lambda r: r.what.start)]
    if len(names) != len(told) or len({each.tank_id for each in entry.readings}) != 1:
        return []
    fits = all(believable(name, value, None) for name, value in zip(names, told, strict=True))
    return names if fits else []


async def _told_last(turn: Turn) -> tuple[str, int] | None:
    """The one value of the newest entry of who asks, and its tank."""
    entry = await turn.uow.log.latest(turn.chat.id, turn.incoming.author_id)
    if entry is None or turn.now - entry.at > OF_LATE or entry.events:
        return None
    named = {(stored.what.analyte, stored.tank_id) for stored in entry.readings}
    return next(iter(named)) if len(named) == 1 else None


async def _asked_about(turn: Turn) -> tuple[str, int] | None:
    """The one value that was asked about right before, and its tank."""
    latest = await turn.uow.offers.latest(turn.chat.id)
    if not latest or ABOUT not in latest[0].context or turn.now - latest[0].made_at > STILL_ASKED:
        return None
    held = latest[0].context[ABOUT]
    return str(held["analyte"]), int(held["tank"])


async def _due(turn: Turn) -> tuple[str, int] | None:
    """The one value that the one reminder that waits is to test, and its tank."""
    waiting = await turn.uow.reminders.of_chat(turn.chat.id, only_open=True)
    if len(waiting) != 1 or waiting[0].tank_id is None:
        return None
    analyte = tested(waiting[0])
    return None if analyte is None else (analyte, waiting[0].tank_id)


def _is_plain(token: Token) -> bool:
    return token.text.replace(",", ".").replace(".", "", 1).isdigit()


def _value(token: Token) -> float:
    return float(token.text.replace(",", "."))


def _alone(text: str) -> tuple[Token | None, bool, frozenset[str]]:
    """The one number of a message that says nothing else; whether it is the water's warmth.

    The meanings of the words around it are the third.
    """
    tokens = cut(fold(text), lexicon(), text, most=MOST + 1)
    numbers = [token for token in tokens if is_number(token)]
    if len(tokens) > MOST or len(numbers) != 1 or "?" in text:
        return None, False, frozenset()
    rest = [token for token in tokens if token is not numbers[0]]
    marks = {token.value for token in rest if token.kind in {"mark", "unit"}}
    warmth = {"water", "°"} <= marks
    light = all(_is_light(token) or (warmth and token.value in {"water", "°"}) for token in rest)
    said = frozenset(str(token.value) for token in rest)
    return (numbers[0] if light and _is_plain(numbers[0]) else None), warmth, said


def _is_light(token: Token) -> bool:
    """Whether a word beside the number says nothing of what it is of."""
    if token.kind in {"fill", "p"} or token.value in _LIGHT:
        return True
    light = token.text in _SUPPOSED or token.text in _STILL or is_small(token.text)
    return token.kind == "word" and light
