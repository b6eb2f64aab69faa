"""``can i keep X with Y``, ``what could live in my water``: animals against a tank or a source."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import Any, Final

from bot.chat import (
    coppered,
    could_live,
    grazing,
    named_for_safety,
    poisoned,
    put_asked,
    strangers,
    with_company,
)
from bot.chat.model import Reply
from bot.chat.state import state_of
from bot.chat.turn import Turn
from bot.chat.words import findings as finding_words
from bot.chat.words import keeping as words
from bot.chat.words import readiness as readiness_words
from bot.chat.words.animals import which
from bot.chat.words.text import _
from bot.store.offers import Choice
from core.advice import grazers
from core.advice.asked_company import (
    asked_company,
    asks_companions,
    asks_enough,
    asks_how_many,
)
from core.advice.emergencies import standing_call
from core.advice.inhabitants import many_of, sexes_of
from core.advice.keeping import Keeping, can_keep
from core.advice.livestock import (
    Found,
    by_water,
    kept_in,
    likeliest,
    lookup,
    may_live_in,
    named_in,
    plain_name,
    volume_for,
    without_sex,
)
from core.advice.readiness import ready
from core.advice.state import State
from core.advice.stock import names_no_kind
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed, Question
from core.message.tokens import cut
from core.tank import Stock, Tank

_WITH: Final = re.compile(
    r"\s+(?:with|and|together with|&|mit|und|avec|et|con|com|y|e|met|en|z|i|med|och|zu|bei|bij"
    r"|till)\s+"
)
_ARTICLES: Final = (
    r"some|a|an|the|my|more|new|male|female|keep|put|have|add|ein|eine|einen|einem|der|die|"
    r"das|den|meine|meinen|un|une|des|du|les|le|la|mes|mon|ma|unos|unas|una|los|las|el|mis|"
    r"mi|uns|umas|uma|um|os|as|meus|minhas|uno|gli|lo|il|i|dei|delle|een|het|de|mijn|en|ett|"
    r"mina|min"
)
"""Words before an animal that are no part of its name, in the languages of the messages."""
_BESIDE: Final = re.compile(rf"^(?:(?:{_ARTICLES}|\d{{1,4}})\s+)+|\s+(?:in|into|to|for)\b.*$")
_WHAT: Final = re.compile(
    r"\b(?:what|which|who|welche\w?|was|quels?|que|quali|welke|jakie|vilka)\b"
)
_FOR: Final = frozenset({"for", "für", "pour", "para", "per", "voor", "dla", "för"})

Said = tuple[str, Found]


async def keep(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """Whether a kind may join a tank, or the company that the question names."""
    if grazers.asked(question.text or ""):
        return [await grazing.answer(turn, question)]
    if (of_thing := await put_asked.answer(turn, question)) is not None:
        return [of_thing]
    if question.species is not None and names_no_kind(question.species):
        if asks_how_many(question.text or ""):
            return [await turn.reply(words.how_many_of_whom())]
        return [await _ready(turn, question)]
    text = question.text or ""
    kinds = _kinds(question)
    if not kinds and not question.species and not _WHAT.search(text.casefold()):
        kinds = named_in(text)  # how do i keep goldfish
    kinds = [_widest(text, kind) for kind in kinds]
    state, name = await _meant(turn, question)
    not_now = [] if question.premises else poisoned.no_newcomers(state, name)
    pair = len(kinds) > 1 or (bool(kinds) and asks_companions(text))
    if not_now and not pair:
        lines, stock = _on_record(state, name, kinds) if asks_how_many(text) else ([], {})
        return [await turn.reply([*lines, *not_now], facts={"verdict": "no", **stock})]
    if not kinds:
        return [await could_live.answer(turn, question)]
    (asked, found), *company = kinds
    if found.shared and not company and _WHAT.match(text.casefold()):
        return [await could_live.answer(turn, replace(question, species=asked))]
    kinds = [(said, by_water(meant, state.tank, kinds)) for said, meant in kinds]
    (asked, found), *company = kinds
    held_there = state
    if not question.premises:
        for said, meant in kinds:
            if (no := await coppered.refused(turn, said, meant, held_there, name)) is not None:
                return [no]
    state = _beside(state, text, company)
    for said, meant in kinds:
        if meant.species is None and not meant.candidates:
            others = [asked for asked, other in kinds if other.species is not None]
            return [await strangers.answer(turn, said, held_there, name, others)]
        if meant.species is None:
            return [await _ask(turn, said, replace(meant, candidates=likeliest(meant, state.tank)))]
    if found.species is None:
        raise LookupError(asked)
    if not company and asks_companions(text):
        return [await with_company.told(turn, asked, found.species, state, not_now)]
    own = text if not company else _up_to(text, asked)
    many, sexes = sexes_of(own, many_of(text, asked))
    answer = can_keep(found.species, state, asked, many, sexes)
    held = sum(count for row, count in kept_in(state.tank).known if row is found.species)
    if asks_how_many(text) and held:
        return [await _how_many(turn, answer, state, name, held=held)]
    if asks_how_many(text) and answer.verdict != "no":
        return [await _how_many(turn, answer, state, name)]
    facts: dict[str, Any] = {"species": found.species.scientific, "verdict": answer.verdict}
    facts |= {"count": many} if many is not None else {}
    facts |= {
        name: need
        for name, need in (("least_l", answer.cramped), ("crowd_l", answer.crowded))
        if need is not None
    }
    sized = asks_enough(text) and state.tank.volume_l is not None
    safety = named_for_safety.asked(text)
    known = turn.tank_named(state.tank.name) is not None and not not_now
    filtered = named_for_safety.filtered(state, answer, safety=safety) if known else None
    growing = filtered is not None and filtered.stands_first
    lines = words.keep(answer, name, sized=sized, judged=safety or growing)
    if safety:
        found_harm = named_for_safety.harms(state, answer.asked)
        lines[1:1] = [finding_words.line(finding) for finding in found_harm]
        facts["findings"] = [{"id": f.id, "severity": f.severity, **f.facts} for f in found_harm]
    if filtered is not None:
        lines = readiness_words.beside(lines, filtered, name, first=safety or growing)
    return [await turn.reply(with_company.then(lines, not_now), facts=facts)]


def _on_record(
    state: State, tank: str, kinds: list[Said]
) -> tuple[list[str], dict[str, dict[str, dict[str, int]]]]:
    """How many of the one kind asked about live there, which may be what is asked; with facts."""
    row = kinds[0][1].species if len(kinds) == 1 else None
    held = sum(count for each, count in kept_in(state.tank).known if each is row)
    if row is None or not held:
        return [], {}
    said = kinds[0][0]
    return [words.held(tank, held, said)], {"stock": {tank: {said: held}}}


async def _how_many(turn: Turn, answer: Keeping, state: State, tank: str, held: int = 0) -> Reply:
    """The number that would be too many for sure; how many fit well is nobody's sum.

    Where some are `held`, that is told first: it may be what is asked.
    """
    kept, volume = kept_in(state.tank), state.tank.volume_l
    each = volume_for([(answer.asked, 1)])
    most = None
    if volume is not None and each > 0.0:
        most = max(0, int((volume - volume_for(kept.known)) / each))
    facts: dict[str, Any] = {"species": answer.asked.scientific, "verdict": answer.verdict}
    lines = words.how_many(answer, tank, most)
    if held:
        lines = [words.held(tank, held, answer.name_of(answer.asked)), *lines]
        facts["stock"] = {tank: {answer.name_of(answer.asked): held}}
    return await turn.reply(lines, facts=facts if most is None else facts | {"most": most})


def asked(turn: Turn, parsed: Parsed) -> Parsed:
    """What a message says, with the question about company that the parser does not read."""
    question = parsed.question
    if parsed.values or parsed.events or parsed.command is not None or parsed.doubts:
        return parsed
    if not turn.incoming.addressed or (question is not None and not _may_be_company(question)):
        return parsed
    if grazers.asked(turn.incoming.text):
        whom = Question("keep", text=turn.incoming.text, tank=parsed.tank)
        return replace(parsed, intent="question", question=whom)
    context = turn.context()
    found = asked_company(turn.incoming.text, context.tanks, us_gallons=context.us_gallons)
    return parsed if found is None else replace(parsed, intent="question", question=found)


def _may_be_company(question: Question) -> bool:
    """Whether what the parser took for a question may ask about animals."""
    untold = question.analyte is None and not question.premises
    return untold and (
        question.kind == "dose" or (question.kind == "keep" and not question.species)
    )


async def _ready(turn: Turn, question: Question) -> Reply:
    """``can i add fish``, ``is it cycled``: what ammonia and nitrite have shown."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    if stored is None:
        state, name = State(Tank(name=""), turn.local_now), _(words.THAT_TANK)
    else:
        state, name = await state_of(turn, stored, turn.now), stored.name
    found = ready(state)
    lines = poisoned.no_newcomers(state, name) or readiness_words.told(found, name)
    verdict = found.verdict if standing_call(state) is None else "poison"
    return await turn.reply(lines, facts={"verdict": verdict})


def named(question: Question) -> list[str]:
    """The kinds that a question names in words that the table knows."""
    said = named_in(question.species or "")
    return [words_ for words_, found in said if found.species is not None]


def meant(question: Question, tank: Tank) -> list[str]:
    """The kinds that a question names; of a shared name those that live there, else all of it."""
    if whom := named(question):
        return whom
    words_ = plain_name(question.species or "").split()
    found = next((each for word in words_ if (each := lookup(word)).shared), None)
    if found is None:
        return []
    living = [row for row in may_live_in(tank) if row in found.candidates]
    return [row.name for row in living or found.candidates]


def to_come(text: str) -> bool:
    """Whether a question is about animals that are to come: `is it safe to add shrimps`."""
    return any(str(token.value) in TO_COME for token in cut(fold(text), lexicon(), text))


TO_COME: Final = frozenset({"adding", "added", "join", "ready", "further", "another", "got"})
"""Words of the parser for animals that join others."""


def is_about(question: Question) -> bool:
    """Whether a question is about animals: it names a known kind, or is for somebody."""
    return bool(named_in(question.species or "")) or is_for_someone(question)


def is_for_someone(question: Question) -> bool:
    """Whether the unknown words of a question stand behind a "for": `safe for blobfish`."""
    said, text = question.species or "", (question.text or "").casefold()
    before = text.partition(said.casefold())[0].split() if said else []
    return bool(before) and any(word in _FOR for word in before[-2:])


async def _ask(turn: Turn, said: str, found: Found) -> Reply:
    """Ask whom a name means; a button asks the question again with that kind in it."""
    names = [row.name_in(turn.chat.language) for row in found.candidates]
    again = re.compile(re.escape(said), re.IGNORECASE)
    choices = [
        Choice(name, "say_again", "", {"text": again.sub(name, turn.incoming.text, count=1)})
        for name in names
    ]
    return await turn.reply(which(said, found, turn.chat.language), choices=choices)


def _up_to(text: str, said: str) -> str:
    """A question up to and with the company that is asked about: words of sex there are its."""
    before, name, _after = text.casefold().partition(said)
    return before + name if name else text


def _widest(text: str, kind: Said) -> Said:
    """A kind by all words of its name in a text, as they were typed: pez dorado, not dorado."""
    said, found = kind
    plain = plain_name(said)
    if found.species is None:
        for words_, wider in named_in(text):
            if f" {plain} " in f" {words_} " and wider.species is not None:
                plain, found = words_, wider
    typed = re.findall(r"[\w'’-]+", text)
    for size in range(1, LONGEST_NAME + 1):
        for start in range(len(typed) - size + 1):
            run = " ".join(typed[start : start + size])
            if plain_name(run) == plain:
                return run, found
    return plain if found is not kind[1] else said, found


LONGEST_NAME: Final = 5
"""Words of a name that is sought in a text."""


def _kinds(question: Question) -> list[Said]:
    """Whom a question names, the one asked about first; empty where it asks who could live."""
    asked = (question.species or "").casefold()
    kinds: list[Said] = []
    for part in _WITH.split(asked) if asked else ():
        plain = without_sex(_BESIDE.sub("", part))
        whole = lookup(plain)
        if whole.species is not None or whole.candidates:
            kinds.append((plain, whole))
        elif named := named_in(part):
            kinds += named
        elif not (_WHAT.search(part) or names_no_kind(plain)):
            kinds.append((plain, whole))
    return kinds


async def _meant(turn: Turn, question: Question) -> tuple[State, str]:
    """The tank that is meant: one on record, or any of the volume that is told."""
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    volume = question.volume_l
    if stored is None or (question.tank is None and _is_another(volume, stored.tank)):
        return State(Tank(name="", volume_l=volume), turn.local_now), _(words.THAT_TANK)
    return await state_of(turn, stored, turn.now), stored.name


def _beside(state: State, text: str, company: list[Said]) -> State:
    """The tank with the company that a question adds to its stock."""
    extra = tuple(
        Stock(
            said if found.species is None or lookup(said).species else found.species.name,
            many_of(text, said) or 1,
        )
        for said, found in company
    )
    return replace(state, tank=replace(state.tank, stock=(*state.tank.stock, *extra)))


SAME_TANK: Final = 0.1
"""A volume that is told is the tank's own where it is as near; the outer box holds more. [share]"""


def _is_another(volume_l: float | None, tank: Tank) -> bool:
    """Whether a question's volume is not that of a tank on record."""
    if volume_l is None or tank.volume_l is None:
        return False
    return abs(volume_l / tank.volume_l - 1.0) > SAME_TANK
