"""What is asked, and the readings told beside it.

A question is the sentence (to a full stop, question mark or line break) that has a word of asking
in it, or one of the short forms: `kh +2`, `dose kh 6`, `8 dkh in ppm`, `nitrate under 20`. What
stands in other sentences, or before a comma before the word of asking, is told, not asked.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from core.message import (
    bought,
    deed_asked,
    doubts,
    likes,
    nearest,
    question_kinds,
    question_parts,
    sentences,
    shortforms,
    slots,
)
from core.message.model import Context, Doubt, Intent, Parsed, Question
from core.message.slot import Number, Slots
from core.message.state import Statement
from core.message.tokens import Token


@dataclass(slots=True)
class Asked:
    """A question found, its doubts, and the tokens outside of it."""

    question: Question | None
    doubts: tuple[Doubt, ...]
    rest: list[Token]
    sure: bool = True
    of_deed: bool = False
    """Whether it asks what the dose does that is told before it."""


def find(source: str, tokens: list[Token], context: Context) -> Asked | None:
    """The question in a message, or None where nothing is asked."""
    if _calls(tokens):
        return Asked(Question("help", text=tokens[0].text), (), tokens[1:])
    if (behind := deed_asked.behind(tokens)) is not None:
        return _of_deed(source, tokens, behind, context)
    values = [token.value for token in tokens]
    liked = likes.read(source, tokens) if "likes" in values and not context.group else None
    if liked is not None:
        return Asked(liked, (), [])
    meant = sentences.meaning(tokens)
    if meant is not None:
        return _make(source, "explain", tokens[meant:], tokens[meant], tokens[:meant], context)
    helping = shortforms.will_it_help(tokens)
    place = None if helping else sentences.asking(tokens)
    if place is None:
        words = (
            "effect"
            if helping
            else shortforms.supposed_change(tokens)
            or shortforms.asked(tokens)
            or sentences.done_or_asked(tokens, group=context.group)
            or bought.wished(tokens, context.products)
        )
        if words == "bound":
            return _read_or_wished(source, tokens)
        return _make(source, words, tokens, tokens[0], [], context) if words else None
    first, last = sentences.around(tokens, place)
    inside = tokens[first:last]
    rest = tokens[:first] + tokens[last:]
    words = str(tokens[place].value)
    asked = _make(source, words, inside, tokens[place], rest, context)
    return None if _converts_nothing(asked.question, inside) else asked


def _converts_nothing(asked: Question | None, inside: list[Token]) -> bool:
    """Whether "what is" opens no conversion: behind it stands neither number, unit nor thing."""
    if asked is None or asked.kind != "convert" or len(inside) < 2:
        return False
    if any(token.kind in {"event", "number", "animal"} for token in inside):
        return False  # whats the 30% wc for: nothing of it is told
    parts = (asked.value, asked.to_unit, asked.substance, asked.spoons, asked.analyte)
    return all(part is None for part in parts)


def lacks_wish(parsed: Parsed) -> bool:
    """Whether how much is asked of a wish that is told apart: `3 dkh, 29 gal, want 5. how much`.

    Readings are told for it where a volume stands beside them, else for the tank's record.
    """
    asked = parsed.question
    if asked is None or asked.kind != "dose" or parsed.events:
        return False
    reasons = {doubt.reason for doubt in parsed.doubts}
    if doubts.WISH not in reasons or (parsed.values and doubts.STRAY_NUMBER not in reasons):
        return False
    return asked.target is None and asked.delta is None


def as_one(source: str, tokens: list[Token], context: Context) -> Parsed | None:
    """A message of several sentences read as one question; None where that leaves any doubt."""
    joined = [t for t in tokens if t.kind != "nl" and t.text not in _PAUSES]
    asked = find(source, joined, context)
    if asked is None or asked.question is None or asked.doubts or asked.rest:
        return None
    complete = asked.question.kind == "dose" and asked.question.target is not None
    return Parsed("question", asked.question.tank, question=asked.question) if complete else None


_PAUSES = frozenset({",", ".", ";", "!", "?"})


def _of_deed(source: str, tokens: list[Token], place: int, context: Context) -> Asked | None:
    """The question behind a dose that is told; of nothing named it is what the dose does."""
    told, asking = tokens[:place], tokens[place:]
    text = source[asking[0].start : asking[-1].end]
    if deed_asked.what_happens(text):
        return Asked(Question("effect", text=text), (), told, sure=False, of_deed=True)
    found = find(source, asking, context)
    if found is None:
        return None
    asked = found.question
    bare = asked is not None and asked.kind == "effect" and _names_nothing(asked)
    return replace(found, rest=[*told, *found.rest], of_deed=bare)


def _names_nothing(asked: Question) -> bool:
    parts = (asked.substance, asked.analyte, asked.grams, asked.millilitres, asked.percent)
    return all(part is None for part in parts)


def _read_or_wished(source: str, tokens: list[Token]) -> Asked:
    """What is under the first mark of a kit (`nitrate under 5`): read there, or wished so low?"""
    named = next(token for token in tokens if token.kind == "analyte")
    number = next(token for token in tokens if token.kind == "number")
    start, end = named.start, number.end
    tank = next((f"{token.value}: " for token in tokens if token.kind == "tank"), "")
    name, of = source[start : named.end], source[number.start : end]
    both = (f"{tank}{name} < {of}", f"{tank}get {name} under {of}")
    told = Doubt(source[start:end], start, end, doubts.AMBIGUOUS_WORD, choices=both)
    return Asked(None, (told,), [], sure=False)


def _calls(tokens: list[Token]) -> bool:
    """Whether a call for help goes before readings: `help ammonia 2 ph 8.2`."""
    if tokens[0].kind != "command" or tokens[0].value != "help":
        return False
    kinds = {token.kind for token in tokens}
    return "analyte" in kinds and "number" in kinds and "ask" not in kinds


def _make(
    source: str,
    words: str,
    inside: list[Token],
    asking: Token,
    rest: list[Token],
    context: Context,
) -> Asked:
    warmth = words == "warm" or (words == "safe" and shortforms.in_degrees(inside))
    heat = "temperature" if warmth else None
    if words == "how_much" and question_kinds.of_safety(inside):
        words = "safe"
    elif words == "safe" and any(t.kind == "ask" and t.value == "raise" for t in inside):
        words = "raise"  # is it safe to raise kh by 3: the plan tells how fast
    elif words == "safe" and sentences.of_a_change(inside):
        words = "what_if"
    elif words == "pace":
        words = next((str(t.value) for t in inside if t.value in {"raise", "change"}), "history")
    found = slots.read(inside, context, source, heat)
    text = source[inside[0].start : inside[-1].end] if inside else ""
    of_change = found.percent is not None or "water_change" in found.events
    if words == "what_if" and found.substance in context.products and of_change:
        found.substance = None  # what if i change 40% with conditioner
    kind = question_kinds.kind_of(words, found, inside)
    if words == "often":
        for number in found.numbers:  # how often, for nitrate under 20: what is to be kept
            number.role, number.value = "to", abs(number.value)
    if kind == "dose":
        for number in found.numbers:
            if _is_more(number, inside):
                number.role, number.value = "by", abs(number.value)
    if kind == "change" and words in {"how_much", "dose"} and found.substance in context.products:
        kind = "dose"  # how much conditioner for a change of 30 l
    if words == "effect" and kind == "safe":  # "mean" is no animal
        found.unknown = [token for token in found.unknown if token.text not in _MEANS]
    amounts = found.percent or found.volume_l or found.millilitres
    if words in {"what_if", "effect"} and found.events == ["top_up"] and not amounts:
        words, kind = "top_up", "help"
    if words == "top_up":
        found.substance = next((t.text for t in inside if t.value == "other"), "water")
    question = question_parts.question_of(kind, found, text, asking, inside, source)
    if kind == "dose" and not found.numbers and (degree := _a_degree(inside)) is not None:
        question = replace(question, analyte=degree, delta=1.0)
    if kind == "convert" and question.to_unit == "g" and question.analyte in {"kh", "gh"}:
        question = Question(
            "dose", question.tank, question.analyte, delta=question.value, text=text
        )
    trouble = tuple(question_parts.unplaced(q, kind, source, inside, found) for q in found.unplaced)
    if kind in {"dose", "change"} and (slip := _misspelt(question, found, source, inside)):
        return Asked(None, (slip,), rest)
    dosed = found.substance is not None and bool(found.grams or found.a_litre or found.volume_l)
    sure = not found.unknown and bool(found.numbers or found.percent or dosed)
    return Asked(question, trouble, rest, sure)


def _a_degree(tokens: list[Token]) -> str | None:
    """The hardness of which one degree is asked about: `how much soda per dkh`; None for none."""
    units = [place for place, token in enumerate(tokens) if token.kind == "unit" and place]
    degrees = [place for place in units if str(tokens[place].value).startswith("°")]
    if len(degrees) != 1 or tokens[degrees[0] - 1].value != "for":
        return None
    of = str(tokens[degrees[0]].value).partition("@")[2]
    named = {str(token.value) for token in tokens if token.kind == "analyte"} | (
        {of} if of else set()
    )
    return named.pop() if len(named) == 1 and named <= {"kh", "gh"} else None


def _is_more(number: Number, inside: list[Token]) -> bool:
    """Whether a number is so much more: `gh 2 mehr`, `2 more gh`; `2 or more` is not."""
    behind = next((token for token in inside if token.start >= number.quantity.end), None)
    return behind is not None and behind.kind == "command" and behind.value == "more"


def _misspelt(question: Question, found: Slots, source: str, inside: list[Token]) -> Doubt | None:
    """A wish for nothing that can be measured, whose one unknown word is nearly such a name.

    `raise khh to 4` names no product: what it is nearest to is asked about, as in a reading.
    """
    wished = bool(found.numbers or found.unplaced)
    if question.analyte is not None or not wished or len(found.unknown) != 1:
        return None
    word = found.unknown[0]
    near = nearest.analytes(word.text)
    head, tail = source[inside[0].start : word.start], source[word.end : inside[-1].end]
    meant = tuple(f"{head}{name}{tail}" for name in near)
    if not meant or found.substance is not None:
        return None
    return Doubt(
        source[word.start : word.end], word.start, word.end, doubts.INCOMPLETE_QUESTION,
        meant[0], choices=meant[1:] and meant,
    )  # fmt: skip


_MEANS = frozenset({"mean", "means"})


_OF_IT = frozenset({"change", "dose", "why"})


def join(asked: Asked, told: Statement, context: Context) -> Parsed:
    """A question with the readings told beside it; in a group only where all of it is known."""
    if context.group and (not asked.sure or told.talk):
        return Parsed("none")
    read = told.parsed
    question = asked.question
    if question is not None and question.kind in _OF_IT and question.analyte is None:
        told_of = {value.analyte for value in read.values}
        if len(told_of) == 1 and question.substance is None and question.percent is None:
            question = replace(question, analyte=told_of.pop())  # ph 8.4 how do i lower it
    if question is not None and asked.of_deed:
        dose = next((event for event in read.events if event.kind == "dose"), None)
        if dose is None:
            return read  # what it did can be asked of nothing
        question = replace(
            question,
            substance=dose.substance,
            grams=dose.grams,
            millilitres=dose.millilitres,
            spoons=dose.spoons,
        )
    tank = read.tank or (question.tank if question else None)
    intent: Intent = "question" if question is not None else "unclear"
    return Parsed(
        intent, tank, read.at, read.values, read.events, question, None,
        (*asked.doubts, *read.doubts),
    )  # fmt: skip
