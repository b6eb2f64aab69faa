"""What is asked, and the readings told beside it.

A question is the sentence (to a full stop, question mark or line break) that has a word of asking
in it, or one of the short forms: `kh +2`, `dose kh 6`, `8 dkh in ppm`, `nitrate under 20`. What
stands in other sentences, or before a comma before the word of asking, is told, not asked.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace

from core.message import (
    bought,
    deed_asked,
    doubts,
    likes,
    nearest,
    sentences,
    shortforms,
    slots,
    trade,
)
from core.message.amounts import GRAMS, SPOONS
from core.message.model import Context, Doubt, Intent, Parsed, Question
from core.message.quantity import Quantity
from core.message.slots import Number, Slots
from core.message.state import Statement
from core.message.tokens import Token
from core.units import to_canonical

_MEASURES = frozenset({*GRAMS, *SPOONS, "mL"})
"""Units in which the answer to "how much" can be wished."""
_RAISED = {
    "sodium bicarbonate": "kh",
    "potassium bicarbonate": "kh",
    "potassium nitrate": "nitrate",
    "monopotassium phosphate": "phosphate",
    "dipotassium phosphate": "phosphate",
    "potassium sulfate": "potassium",
    "sea salt": "salinity",
    "sodium chloride": "salinity",
}
"""What a salt is dosed for, where only the salt is named."""


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
            else shortforms.asked(tokens)
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
    return _make(source, words, inside, tokens[place], rest, context)


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


# --- from words to a Question -------------------------------------------------------------------


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
    if words == "how_much" and _of_safety(inside):
        words = "safe"
    elif words == "safe" and any(t.kind == "ask" and t.value == "raise" for t in inside):
        words = "raise"  # is it safe to raise kh by 3: the plan tells how fast
    elif words == "safe" and sentences.of_a_change(inside):
        words = "what_if"
    elif words == "pace":
        words = next((str(t.value) for t in inside if t.value in {"raise", "change"}), "history")
    found = slots.read(inside, context, source, heat)
    text = source[inside[0].start : inside[-1].end] if inside else ""
    kind = _kind(words, found, inside)
    if words == "often":
        for number in found.numbers:  # how often, for nitrate under 20: what is to be kept
            number.role, number.value = "to", abs(number.value)
    if kind == "change" and words in {"how_much", "dose"} and found.substance in context.products:
        kind = "dose"  # how much conditioner for a change of 30 l
    if words == "effect" and kind == "safe":  # "mean" is no animal
        found.unknown = [token for token in found.unknown if token.text not in _MEANS]
    amounts = found.percent or found.volume_l or found.millilitres
    if words in {"what_if", "effect"} and found.events == ["top_up"] and not amounts:
        words, kind = "top_up", "help"
    if words == "top_up":
        found.substance = next((t.text for t in inside if t.value == "other"), "water")
    question = _question(kind, found, text, asking, inside, source)
    trouble = tuple(_unplaced(q, kind, source, inside, found) for q in found.unplaced)
    if kind in {"dose", "change"} and (slip := _misspelt(question, found, source, inside)):
        return Asked(None, (slip,), rest)
    dosed = found.substance is not None and bool(found.grams or found.a_litre or found.volume_l)
    sure = not found.unknown and bool(found.numbers or found.percent or dosed)
    return Asked(question, trouble, rest, sure)


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


def _of_safety(inside: list[Token]) -> bool:
    """Whether "how much" asks for a limit, not for a dose: `how much ammonia is safe`."""
    asked = any(token.kind == "ask" and token.value == "safe" for token in inside)
    return asked and all(token.kind not in {"substance", "number"} for token in inside)


def _unplaced(
    quantity: Quantity, kind: str, source: str, inside: list[Token], found: Slots
) -> Doubt:
    """A number without a place; `raise kh 2` is either by 2 or to 2, which the keeper chooses.

    One that no water has may be of another unit: `dose kh 200` is in ppm.
    """
    start, end = quantity.start, quantity.end
    fragment = source[start:end]
    if kind != "dose" or quantity.value is None:
        return Doubt(fragment, start, end, doubts.INCOMPLETE_QUESTION)
    head, tail = source[inside[0].start : start], source[end : inside[-1].end]
    if meant := found.guessed.get(start):
        other = tuple(f"{head}{number}{tail}" for number in meant)
        return Doubt(
            fragment, start, end, doubts.INCOMPLETE_QUESTION, other[0], choices=other[1:] and other
        )
    both = tuple(f"{head}{word} {fragment}{tail}" for word in ("by", "to"))
    return Doubt(fragment, start, end, doubts.INCOMPLETE_QUESTION, choices=both)


_PLAIN = {
    "safe": "safe", "convert": "convert", "why": "why", "when": "when", "keep": "keep",
    "history": "history", "help": "help", "co2": "co2", "dose": "dose", "raise": "dose",
    "status": "safe", "renew": "change", "explain": "help", "often": "keep",
    "reach": "change", "warm": "safe", "join": "safe", "suits": "keep", "ready": "keep",
}  # fmt: skip


def _kind(words: str, found: Slots, inside: list[Token]) -> str:
    """The kind of question, from the word of asking and what is asked about."""
    if words == "top_up":
        return "help"
    spooned = found.substance is not None and any(unit in SPOONS for unit, _ in found.units)
    if words == "how_much" and spooned and found.volume_l is None:
        return "convert"  # how many grams are in a spoon of it
    given = found.grams or found.a_litre or found.millilitres or found.spoons
    if words == "help" and found.substance == "sodium thiosulfate":
        return "dose"  # how do i dechlorinate 10 l
    if found.uses and found.names and not found.numbers:
        return "history"  # how much alk do my corals use up
    aimed = words in {"raise", "change"} and found.substance is not None
    if (aimed or words in {"dose", "how_much"}) and given and not found.numbers:
        return "effect"  # the amount is there: what it does is asked
    if words == "current":
        return "co2" if found.names[:1] == [("co2", None)] else "history"
    bare = bool(found.names) and not (found.numbers or found.units)
    of_thing = given or found.substance or found.volume_l or found.events
    if bare and (words == "convert" or (words == "effect" and not of_thing)):
        return "help"  # what is kh, what does gh mean
    if words == "effect" and found.names and found.numbers and not of_thing:
        return "safe"  # what does gh 10 mean
    if words == "join" and found.substance is None:
        return "keep"
    if words in _PLAIN:
        return _PLAIN[words]
    if words in {"what_if", "effect"}:
        changes = found.percent is not None or "water_change" in found.events
        return "change" if changes and found.substance is None else "effect"
    if words == "change":
        return "dose" if found.substance is not None else "change"
    told = found.names or found.numbers or found.substance or found.units or found.unknown
    of_change = any(t.kind == "ask" and t.value in {"what_if", "change", "renew"} for t in inside)
    if "water_change" in found.events or (words == "how_much" and of_change and not told):
        return "change"  # how much can i change
    if spooned:
        return "convert"
    wanted = [unit for unit, of in found.units if unit in _MEASURES and of is None]
    if wanted and found.names and found.numbers:
        return "dose"  # how many ml of something for kh 6
    nameless = not found.names and found.substance is None and not found.numbers
    if found.units and nameless and found.amount is not None and found.volume_l is not None:
        return "convert"
    if found.units and (found.numbers or found.amount is not None) and found.volume_l is None:
        return "convert"
    if found.substance is None and any(name == "co2" for name, _ in found.names):
        return "co2"
    return "dose"


def _question(
    kind: str, found: Slots, text: str, asking: Token, inside: list[Token], source: str
) -> Question:
    main = _main(kind, found)
    roles: dict[str, float] = {}
    premises: dict[str, float] = {}
    also: Number | None = None
    basis = bound = None
    if kind == "dose":
        sentences.aim(found.numbers, main, inside)
    wished = any(n.role in {"to", "by"} and n.analyte == main for n in found.numbers)
    for number in found.numbers:
        analyte = number.analyte or main
        role = _role(kind, number, main, found, wished=wished)
        if kind == "safe" and found.substance is None and analyte is not None and role != "by":
            # Whatever word stands before it, this is the number to judge; of a range the upper end.
            if analyte not in premises or role == "to":
                premises[analyte] = number.value
            basis = basis or number.basis
            continue
        if analyte is None and kind not in {"dose", "effect", "change"}:
            continue
        if analyte == main and role in {"from", "to", "by"} and role not in roles:
            roles[role] = _as_gravity(number) if main == "salinity" else number.value
            bound = "<" if role == "to" and number.quantity.qualifier == "<" else bound
            basis = basis or number.basis
        elif analyte not in {None, main} and kind == "dose" and role in {"to", "by"} and not also:
            also = number
        elif analyte is not None and analyte not in premises:
            premises[analyte] = number.value
            basis = basis or (number.basis if analyte == main or kind == "safe" else None)
    if kind == "convert":
        return _conversion_question(found, text, main)
    litres = None
    volume = found.volume_l
    if kind == "change" and volume is not None and found.percent is None and not roles:
        litres, volume = volume, None
    return Question(
        kind,
        found.tank,
        main,
        volume,
        roles.get("from"),
        roles.get("to"),
        bound,
        roles.get("by"),
        also.analyte if also else None,
        also.value if also and also.role == "to" else None,
        also.value if also and also.role == "by" else None,
        found.ratio,
        found.grams,
        found.a_litre,
        found.millilitres,
        found.spoons,
        found.percent,
        litres,
        found.substance or _unknown_substance(kind, found, asking, inside, source),
        _species(kind, found, source),
        basis,  # type: ignore[arg-type]
        premises=_without(premises, main if roles else None),
        text=text,
    )


def _as_gravity(number: Number) -> float:
    """A salinity in g/kg, also where a bare 1.024 of no name can only be a specific gravity."""
    if number.quantity.unit is None and 1.0 <= number.value < 1.05:
        return to_canonical("salinity", number.value, "SG")
    return number.value


def _without(premises: dict[str, float], main: str | None) -> Mapping[str, float]:
    premises.pop(main or "", None)
    return premises


def _main(kind: str, found: Slots) -> str | None:
    """The analyte asked about: the one with a from, to or by; else the first named."""
    if kind == "co2":
        return "co2"
    if found.joining and kind == "keep":
        return None
    for number in found.numbers:
        if number.role in {"from", "to", "by"} and number.analyte is not None:
            return number.analyte
    numbered = {number.analyte for number in found.numbers}
    bare = [name for name, _ in found.names if name not in numbered]
    if bare:
        return bare[0]
    raised = _raised(found) if kind == "dose" else None
    aimed = raised != "salinity" or any(number.role for number in found.numbers)
    if raised == "kh" or (raised and aimed and not found.names):
        return raised
    if found.names and kind in {"dose", "change", "keep", "convert", "history", "when"}:
        return found.names[0][0]
    if kind == "convert" and found.numbers:
        return found.numbers[0].analyte
    return None


def _raised(found: Slots) -> str | None:
    """What a salt is to raise where no name says so.

    Those of calcium and magnesium are dosed for hardness in degrees, and in the sea for their own
    mg/L, which no hardness reaches.
    """
    substance = found.substance or ""
    ion = substance.partition(" ")[0]
    if ion in {"calcium", "magnesium"} and found.aimed is not None:
        return ion if found.aimed.value > _MOST_DEGREES else "gh"
    return _RAISED.get(substance)


_MOST_DEGREES = 60.0
"""Above this a number is no hardness that anybody doses for. [°dH]"""


def _role(kind: str, number: Number, main: str | None, found: Slots, *, wished: bool) -> str:
    """A plain number of the main analyte is what is wished, in the kinds that have a wish.

    Beside a number that is wished it is where the water stands (`kh 2, want kh 5`); the nitrite
    that salt is asked for is a reading.
    """
    if number.role or number.analyte != main:
        return number.role
    if main == "nitrite" and found.substance == "sodium chloride":
        return ""
    if wished:
        return "from"
    return "to" if kind in {"dose", "change", "keep", "when"} else ""


def _conversion_question(found: Slots, text: str, main: str | None) -> Question:
    number = found.numbers[0] if found.numbers else None
    quantity = number.quantity if number is not None else found.amount
    to_unit = found.units[-1] if found.units else None
    analyte = (number.analyte if number else None) or main
    if analyte is None and to_unit is not None:
        analyte = to_unit[1]
    return Question(
        "convert",
        analyte=analyte,
        substance=found.substance,
        spoons=found.spoons,
        basis=quantity.basis if quantity is not None else None,  # type: ignore[arg-type]
        value=quantity.value if quantity is not None else None,
        unit=quantity.unit if quantity is not None else None,
        to_unit=to_unit[0] if to_unit is not None else None,
        text=text,
    )


def _unknown_substance(
    kind: str, found: Slots, asking: Token, inside: list[Token], source: str
) -> str | None:
    """The words right behind the word of asking, as said: `how much coral powder for 90 l`.

    A unit, "of" and articles may stand between (`how many ml of the blue bottle`).
    """
    if kind not in {"dose", "effect"} or asking not in inside:
        return None
    words: list[Token] = []
    first = inside.index(asking) + 1
    if (named := trade.spelt(inside, first)) and asking.value == "how_much":
        return source[inside[first].start : inside[first + named - 1].end]  # how much kh plus
    for token in inside[first:]:
        if token in found.unknown:
            words.append(token)
        elif words or not _passed_over(token):
            break
    return " ".join(source[token.start : token.end] for token in words) or None


def _passed_over(token: Token) -> bool:
    return token.kind in {"fill", "unit"} or token.text in _ARTICLES or token.value == "new"


_ARTICLES = frozenset({"of", "de", "a", "an", "von", "van", "di", "av"})


ANY = "fish"
"""The species of a question about animals of no kind: `can i add fish`, `is it cycled`."""


def _species(kind: str, found: Slots, source: str) -> str | None:
    if found.readying:
        return ANY
    if found.suiting or not (kind == "safe" or found.joining):
        return None
    if found.unknown:
        return source[found.unknown[0].start : found.unknown[-1].end]
    return ANY if kind == "keep" else None


# --- beside readings ------------------------------------------------------------------------------


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
