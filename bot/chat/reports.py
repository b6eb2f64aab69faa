"""A supplier's water report: read from pasted text, shown back, and kept only on a yes."""

from __future__ import annotations

import re
from collections.abc import Mapping
from datetime import datetime, time
from typing import Any, Final

from bot.chat import source_blends, sources
from bot.chat.model import Reply
from bot.chat.told import Told, values_json
from bot.chat.turn import Turn
from bot.chat.words import general
from bot.chat.words import reports as words
from bot.chat.words import sources as source_words
from bot.chat.words.text import _
from bot.store.log import Stored
from bot.store.offers import Choice, Offer
from bot.store.tanks import Facet, StoredTank
from core.advice.tapped import MOST
from core.message import facets, reports
from core.message.fold import fold
from core.message.model import Command, Parsed, Value
from core.message.reports import Report
from core.tank import Tank

PASTED: Final = "report"
"""What a reply expects that waits for the lines of a report."""

LONGEST: Final = 8000

_TITLE: Final = re.compile(
    r"(?:(?:water )?(?:report|analysis)|bericht|analyse|rapport|informe|analisis|analisi|analiza"
    r"|raport|relatorio)\s{0,3}[:\n]"
)
"""What announces a report behind a source's name."""

_MY: Final = re.compile(r"^(my|our|the|mein|unser|mon|mi|mijn)\s{1,3}")


async def spoken(turn: Turn) -> list[Reply] | None:
    """``tap water report:`` and its lines; None where a message does not begin so."""
    if turn.incoming.group and not turn.incoming.addressed:
        return None
    found = reports.title(turn.incoming.text)
    if found is None:
        return None
    name, facet = name_of(found[0])
    return [await _first(turn, name, facet, found[1])]


def name_of(said: str) -> tuple[str, Facet | None]:
    """A source's name and the season said with it: "my tap winter"; the tap where none is."""
    piece = next(iter(facets.split(said)), None)
    name = said if piece is None else piece.text
    start = found.end() if (found := _MY.match(fold(name))) else 0
    name = name[start:].strip(" :")
    season = next((piece.season for piece in facets.split(f"{said} 1") if piece.season), None)
    return name or "tap", season


async def command(turn: Turn, command: Command, parsed: Parsed) -> list[Reply]:
    """Answer a ``/source`` line: a report behind a name, or what `bot.chat.sources` answers."""
    head, rest = _part(command.arguments.strip())
    announced = _TITLE.match(fold(rest))
    rest = rest[announced.end() :] if announced is not None else rest
    if head is None or not (announced or reports.looks_like_one(rest)):
        return await sources.command(turn, command, parsed)
    name, facet = name_of(head)
    return [await _first(turn, name, facet, rest)]


def _part(said: str) -> tuple[str | None, str]:
    """The name before a report: the words up to the first line break, title or known name."""
    found = reports.title(said)
    if found is not None and found[0]:
        return found
    first, _break, rest = said.partition("\n")
    if rest and len(first.split()) <= source_blends.LONGEST and not any(map(str.isdigit, first)):
        return first.strip(" :"), rest
    word, _blank, behind = said.partition(" ")
    if behind and any(facet.season for facet in facets.split(f"{behind.split()[0]} 1")):
        season, _blank, behind = behind.partition(" ")
        word = f"{word} {season}"
    return (word.strip(" :") or None), behind


async def _first(turn: Turn, name: str, facet: Facet | None, text: str) -> Reply:
    """Answer a report, or wait for its lines where only its title came."""
    if not any(map(str.isdigit, text)):
        held = {"source": name, "facet": facet, "text": ""}
        return await turn.reply(words.paste(), expects=PASTED, context=held)
    return await show(turn, name, facet, text[:LONGEST], {})


async def pasted(turn: Turn, offer: Offer, parsed: Parsed) -> list[Reply] | None:
    """Take a message as lines of the report that was announced; None where it is none."""
    text = turn.incoming.text
    ours = parsed.command is not None or parsed.question is not None or parsed.events
    if ours or reports.title(text) is not None or any(value.tank for value in parsed.values):
        return None
    held = offer.context
    whole = f"{held['text']}\n{text}".strip()[:LONGEST]
    added = reports.read(text)
    if not (added.amounts or added.unclear or added.passed):
        return None
    await turn.uow.offers.close(offer.id)
    await turn.uow.offers.take(offer.id, PASTED)  # a yes is to all of it, never to the first lines
    shown = await show(turn, held["source"], held["facet"], whole, {}, more_may_come=True)
    return [shown]


async def show(
    turn: Turn,
    name: str,
    facet: Facet | None,
    text: str,
    answers: Mapping[str, str],
    *,
    more_may_come: bool = False,
) -> Reply:
    """Say what a report holds and ask for a yes, or for what it leaves open first."""
    report = reports.read(text, answers)
    held: dict[str, Any] = {"source": name, "facet": facet, "text": text}
    waits = {"expects": PASTED, "context": held} if more_may_come else {}
    if not report.amounts and not report.unclear:
        return await turn.reply([*words.nothing(), *words.passed(report.passed)], **waits)
    if report.unclear:
        return await _ask(turn, report, held, answers, waits)
    source = source_words.facet(name, facet) if facet else name
    day = None if report.sampled is None else f"{report.sampled:%Y-%m-%d}"
    lines = words.understood(source, report, day)
    if day is None:
        lines.append(words.undated())
    values = [amount.as_value() for amount in report.amounts]
    lines += _nitrate(values)
    lines += words.passed(report.passed)
    kept = {**held, "answers": dict(answers)}
    choices = [
        Choice(_(words.YES), "keep_report", "yes", kept),
        Choice(_(words.NO), "leave_report", "no", {"source": name}),
    ]
    facts: dict[str, Any] = {
        "source": name,
        "understood": values_json(Told(_nobody(turn), _stored(values, 0, turn.now), ())),
        "passed": list(report.passed),
    }
    if report.sampled is not None:
        facts["sampled"] = day
    return await turn.reply(lines, choices=choices, facts=facts, **waits)


async def _ask(
    turn: Turn,
    report: Report,
    held: Mapping[str, Any],
    answers: Mapping[str, str],
    waits: Mapping[str, Any],
) -> Reply:
    """Ask for the first line that can be read in several ways, its readings on buttons."""
    unclear = report.unclear[0]
    ask = words.which_unit if unclear.reason == "unit" else words.which_number
    choices = [
        Choice(
            words.option(amount),
            "read_report",
            "",
            {**held, "answers": {**answers, unclear.name: answer}},
        )
        for answer, amount in unclear.options
    ]
    choices.append(Choice(_(words.NO), "leave_report", "no", {"source": held["source"]}))
    facts = {"ask": unclear.reason, "analyte": unclear.name}
    return await turn.reply([ask(unclear.said)], choices=choices, facts=facts, **waits)


async def press_read(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Read the report again with what was unclear in it."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    held = choice.arguments
    return [await show(turn, held["source"], held["facet"], held["text"], held["answers"])]


async def press_leave(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Keep nothing of the report."""
    if not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    return [await turn.reply(words.left(choice.arguments["source"]))]


async def press_keep(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """Put the whole report on record, as one entry."""
    held = choice.arguments
    report = reports.read(held["text"], held["answers"])
    source = await sources.named_or_new(turn, held["source"])
    if isinstance(source, Reply):
        return [source]
    if not report.amounts or not await turn.uow.offers.take(offer.id, choice.verb):
        return [await turn.reply(general.already())]
    body: StoredTank = source
    if held["facet"] is not None:
        body = await turn.uow.tanks.facet(source, held["facet"], turn.now)
    at = turn.now
    if report.sampled is not None:
        noon = datetime.combine(report.sampled, time(12), tzinfo=turn.chat.zone)
        at = min(noon, turn.now)
    values = [amount.as_value() for amount in report.amounts]
    told = Told(body, _stored(values, body.id, at), ())
    return [await sources.store(turn, source, [told])]


def _stored(values: list[Value], body_id: int, at: datetime) -> tuple[Stored[Value], ...]:
    return tuple(Stored(value, body_id, at) for value in values)


def _nobody(turn: Turn) -> StoredTank:
    return StoredTank(0, turn.chat.id, Tank(""))


def _nitrate(values: list[Value]) -> list[str]:
    """The caution about drinking water with much nitrate."""
    for value in values:
        top = value.canonical[1] if isinstance(value.canonical, tuple) else value.canonical
        if value.analyte == "nitrate" and top is not None and top > MOST["nitrate"]:
            return [source_words.bad("nitrate", top)]
    return []
