"""From a text to what it says: the order of the steps.

message = command | { line | table }     line = { time | tank | event | clause | question }

In a private chat words that we do not know are passed over where they cannot bear on a value, and
make it a doubt where they can. In a group the rule is stricter, since people talk to each other
there: a line is a reading or an event only where it is made of nothing but names, numbers, units,
tanks, times, separators and complete events. One word of ordinary speech and it is talk, unless
the line begins with a tank of the chat. A question is taken in a group only with numbers in it.
"""

from __future__ import annotations

from dataclasses import replace

from core.message import (
    after_deed,
    before_dose,
    blends,
    bought,
    commands,
    commas,
    doubts,
    former,
    kit_row,
    labels,
    naming,
    numerals,
    plain,
    quantities,
    questions,
    statements,
    still_planned,
    torn,
    would_be,
)
from core.message.bagged import without_bag
from core.message.fold import fold
from core.message.hidden import mark_hidden
from core.message.lexicon import lexicon
from core.message.model import Command, Context, Doubt, Parsed
from core.message.tanks import marked
from core.message.tokens import Token, cut

LIMIT = 4096
"""Characters that are read; the rest is one doubt."""

MOST_TOKENS = 300
"""Tokens that are read, some hundred readings; the rest is one doubt as well."""

ANY_TOKENS = 64
"""Tokens that are read however short the text is.

A token takes some 10 to 15 µs, whatever it is, and a text may be made of tokens of one character.
So beyond these there may be one more in `CHARACTERS_A_TOKEN`, which a list of everything that can
be measured keeps: that is what holds any message within 5 µs a character and 1 ms.
"""

CHARACTERS_A_TOKEN = 3

_CHANGING = frozenset({"water_change", "top_up"})


def parse(text: str, context: Context) -> Parsed:
    """What a message says; never raises, whatever the text.

    Parameters
    ----------
    text : str
        The message as typed, at most `LIMIT` characters of which are read.
    context : Context
        The chat's tanks, kits, zone and time.

    Returns
    -------
    Parsed
        What was understood and what is doubtful, each with its span in `text`.
    """
    if len(text) > LIMIT:
        return _long(text, context)
    if "\n" in text and "," in text:
        text = commas.as_semicolons(text)
    folded = without_bag(fold(text))
    most = min(MOST_TOKENS, ANY_TOKENS + len(text) // CHARACTERS_A_TOKEN)
    if (then := former.behind(folded)) is not None and (read := _earlier(text, then, context)):
        return read
    if (planned := still_planned.planned_in(folded)) is not None:
        front = parse(text[: planned[0]], context)
        if (beside := still_planned.without(text, planned, front)) is not None:
            return beside
    if (place := would_be.value_in(folded)) is not None:
        inside = parse(" " * place[0] + text[place[0] : place[1]], context)
        if (asked := would_be.question(text, inside)) is not None:
            return asked
    tokens = cut(folded, lexicon(), text, most=most + 8)
    if not text.isascii():
        tokens = mark_hidden(tokens, text, folded)
    if not tokens:
        return Parsed("none")
    if len(tokens) > most:
        end = _end(tokens, most)
        kept = [token for token in tokens[:most] if token.end <= end]
        parsed = _tokens(text[:end], folded[:end], kept, context)
        told = any(map(str.isalnum, text[end:]))  # a row of dashes or faces hides nothing
        return _with_rest(parsed, text, end, context) if told else parsed
    return _tokens(text, folded, tokens, context)


def _earlier(text: str, then: tuple[int, int], context: Context) -> Parsed | None:
    """What a message says whose first values are of a vague time; None where they are not."""
    start, end = then
    told = parse(text[:start], context)
    rest = text[end:].strip(" .,;!?")
    others = [parse(" " * end + text[end:], context)] if rest else []
    return former.earlier(text, told, others)


def _tokens(text: str, folded: str, tokens: list[Token], context: Context) -> Parsed:
    """What the tokens of a text say, all of them read."""
    tokens = marked(tokens, folded, context)
    if context.products or context.spoken_of:
        tokens = bought.mark(tokens, folded, context.products, context.spoken_of)
    blend = blends.find(text) if _changes_water(tokens) else None
    if blend is not None and blend.total is not None:
        return _blended(text, tokens, blend, context)
    simple = plain.read(tokens, text, context)
    return kit_row.asked(
        text, folded, simple if simple is not None else full(text, tokens, context)
    )


def _changes_water(tokens: list[Token]) -> bool:
    """Whether a change and another water are spoken of: then shares may be those of a blend."""
    if "other" not in [token.value for token in tokens] or tokens[0].text == "/":
        return False
    return any(t.kind == "ask" or t.value in _CHANGING or t.value == "changing" for t in tokens)


def _blended(text: str, tokens: list[Token], blend: blends.Blend, context: Context) -> Parsed:
    """Read a message without the shares of its new water, which are then put to the change."""
    outside = [token for token in tokens if token.end <= blend.start or token.start >= blend.end]
    if not outside:
        return full(text, tokens, context)
    if blend.litres is not None:  # one amount has to stand for all
        within = [token for token in tokens if blend.start <= token.start < blend.end]
        amount = [token for token in within if token.kind in {"number", "unit"}][:2]
        outside = sorted(outside + amount, key=lambda token: token.start)
    parsed = full(text, outside, context)
    said = text[blend.start : blend.end]
    asked = parsed.question
    if asked is not None and asked.kind in {"change", "effect", "keep"} and asked.substance is None:
        asked = replace(asked, substance=said, litres=blend.litres or asked.litres)
    events = tuple(
        replace(event, substance=said, litres=blend.litres or event.litres)
        if event.kind in _CHANGING
        else event
        for event in parsed.events
    )
    return replace(parsed, question=asked, events=events)


def full(text: str, tokens: list[Token], context: Context) -> Parsed:
    """What any message says that is not of the plainest kind."""
    whole = _whole(tokens)
    naming.label(whole, text)
    before_dose.part(whole)
    after_deed.mark(whole)
    return _parse(text, whole, context)


def _whole(tokens: list[Token]) -> list[Token]:
    """The tokens with numbers and names in several pieces as one token each."""
    for token in tokens:
        if token.kind == "word" and len(token.text) >= numerals.GLUED:
            numerals.unglue(token)
        elif token.value == "gpg" and quantities.weighs(tokens, token):
            token.value = "grain"
    if any([token.kind == "count" for token in tokens]):  # noqa: C419 - a list is half the time
        tokens = numerals.join(tokens)
    return torn.mend(tokens)


def _parse(text: str, tokens: list[Token], context: Context) -> Parsed:
    if tokens[0].kind in naming.POSING and context.tanks and naming.poses(tokens, context):
        return statements.read(text, tokens, context).parsed  # nao kh 9, in a chat with Nano
    command, rest = commands.read(text, tokens, context)
    if command is not None:
        return _commanded(text, command, rest, context)
    label = labels.read(tokens, context)
    if label is not None:
        return Parsed("command", command=label)
    asked = questions.find(text, tokens, context)
    if asked is not None:
        statement = statements.read(text, asked.rest, context)
        parsed = questions.join(asked, statement, context)
        if questions.lacks_wish(parsed):
            return questions.as_one(text, tokens, context) or parsed
        return parsed
    return statements.read(text, tokens, context).parsed


def _commanded(text: str, command: Command, rest: list[Token], context: Context) -> Parsed:
    """A command; the readings in a correction or a /w are read like any other."""
    if command.name == "w":
        return _parse(text, rest, context) if rest else Parsed("none")
    if command.name == "correct" and (label := labels.read(rest, context)) is not None:
        return Parsed("command", command=label)  # no, my mix: 5 g per 80 l raises kh 2
    if text.lstrip().startswith("/") and bought.opens_label(command.name):
        told = labels.read(rest, context) if rest else None
        return Parsed("command", command=told or Command("label"))
    if command.name != "correct":
        return Parsed("command", command=command)
    read = statements.read(text, rest, context).parsed
    return Parsed(
        "command", read.tank, read.at, read.values, read.events, None, command, read.doubts
    )


def _long(text: str, context: Context) -> Parsed:
    """The part up to the last line break, else the last blank, before the limit."""
    head = text[:LIMIT]
    end = max(head.rfind("\n"), 0) or max(head.rfind(" "), 0)
    return _with_rest(parse(text[:end], context), text, end, context)


def _end(tokens: list[Token], most: int) -> int:
    """Where the last line, else the last token, ends that is still read."""
    for token in reversed(tokens[1:most]):
        if token.kind == "nl":
            return token.start
    return tokens[most - 1].end


def _with_rest(parsed: Parsed, text: str, end: int, context: Context) -> Parsed:
    """What the text up to `end` says, and one doubt about the rest."""
    doubt = Doubt(text[end : end + 40], end, len(text), doubts.TOO_LONG)
    intent = "unclear" if parsed.intent == "none" and not context.group else parsed.intent
    return replace(parsed, intent=intent, doubts=(*parsed.doubts, doubt))
