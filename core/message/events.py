"""What was done to a tank or seen in it.

event   = [ amounts ] word { amount | substance | "with" water | species }
amount  = quantity in %, L, gal, g, kg, mL, spoons | half | count

An event ends at a comma, a line break, a full stop, the name of an analyte or another event.
Words of wishing, asking or denying beside it make it a doubt.
"""

from __future__ import annotations

from dataclasses import replace

from core.message import (
    animal_events,
    animal_names,
    animal_words,
    dose_name,
    doubts,
    event_bounds,
    event_words,
    herd,
    kinds,
    nearest,
    quantities,
    second_dose,
)
from core.message.amounts import GRAMS, LITRES, MILLILITRES, SPOONS
from core.message.dose_words import is_care
from core.message.event_parts import Found, Parts, added, doubt, judge, source_words
from core.message.model import Context, Event
from core.message.tokens import Token
from core.substances import MEDIA

__all__ = ["Found", "find", "source_words"]


def find(tokens: list[Token], source: str, context: Context) -> list[Found]:
    """All events of one line of tokens, in order and apart from each other."""
    out: list[Found] = []
    done = sure = 0
    for index, token in enumerate(tokens):
        if token.kind != "event" or index < done:
            continue
        found = _one(tokens, index, done, sure, source, context)
        if found is not None:
            told = _before(tokens, done, found, source, context)
            more = _more_animals(tokens, found, source, context)
            more = more or _more_doses(tokens, found, source, context) or _once_more(tokens, found)
            bracketed = bool(more) and tokens[found.last].text == "("
            told += animal_events.of_them([found, *more], bracketed)
            animal_events.share_kinds(told)
            out += told
            done = told[-1].last
            sure = done if told[-1].event is not None else sure
    return out


def _one(
    tokens: list[Token], index: int, floor: int, sure: int, source: str, context: Context
) -> Found | None:
    """The event whose word is at `index`; what stands before `sure` is told and makes no doubt."""
    kind = str(tokens[index].value)
    if tokens[index].text == "tpa" and not any(map(quantities.is_number, tokens[: index + 3])):
        return None  # Portuguese for a change, but also a slip for "tap": its amount must follow
    if kind == "note":
        return _note(tokens, index, source)
    first = event_bounds.left(tokens, index, floor, kind)
    last = event_bounds.right(tokens, index)
    start = min(token.start for token in tokens[first:last])  # a verb may have been put first
    end = max(token.end for token in tokens[first:last])
    parts = Parts(kind, start, end, word=tokens[index].text)
    parts.water = tokens[index].text not in {"changed", "replaced", "swapped", "exchanged"}
    parts.unsure = event_bounds.unsure_before(tokens, first, kind, sure)
    parts.denied = event_bounds.denied_before(tokens, first)
    if last < len(tokens) and tokens[last].text == "?":
        parts.unsure = True  # asked, not told
    parts.to_tank = kind == "given" and animal_words.leads_to_tank(tokens, last)
    if kind == "born":
        parts.parents = animal_names.parents(tokens, max(floor, sure), first, source)
    place = first
    while place < last:
        taken = place + 1 if place == index else None
        place = taken or event_words.take(tokens, place, index, parts, context)
    said = next((t for t in tokens[first:last] if t.kind == "count" or t.value == "one"), None)
    words = [t for t in parts.unknown if t.kind not in {"count", "number"}]
    words = [t for t in words if not kinds.is_kind(t.text)]
    if said is not None and any(nearest.counts_like(t.text, said.text) for t in words):
        parts.unsure = True  # "twenmty one": a part of the number was misspelt
    if tokens[first].kind == "count" and event_bounds.cut_off(tokens, first):
        parts.unsure = True
    if parts.weighed > 1 and len({token.value for token in parts.named}) > 1:
        parts.unsure = True  # dosed soda 5 g salt 3 g: of which thing how much
    if kind == "missing" and any(herd.saying(token.text) == "back" for token in tokens):
        parts.unsure = True  # the missing pleco is back
    if kind == "missing" and not animal_events.counted(parts) and _AWAY & {*parts.word.split()}:
        alone = first < index and event_bounds.tells_of_nothing_else(tokens, first)
        if not alone:
            return None  # the white spots on my neons are gone
    if kind == "lost" and context.group and not parts.unknown:
        parts.unsure = True  # people lose other things too
    if context.group and parts.all and all(herd.saying(t.text) == "any" for t in parts.unknown):
        parts.unsure = True  # "all my fish died once" wipes no record
    found = _made(parts, first, last, source)
    if (
        found is None and kind == "lost" and parts.unknown
    ):  # of a thing: nothing that bears on a value beside it
        for token in tokens[first:last]:
            token.kind = token.value = "fill"
    return found


_AWAY = frozenset({"gone", "weg", "borta", "esta", "estan"})
"""Words that say of all kinds of things that they are no longer there."""


def _before(
    tokens: list[Token], floor: int, found: Found, source: str, context: Context
) -> list[Found]:
    """Animals counted before those right before an event's word: `1 male and 2 females died`."""
    if found.event is None or found.kind not in kinds.OF_ANIMALS:
        return []
    if tokens[found.first].kind == "event":
        return []
    out: list[Found] = []
    for first, last in animal_events.groups_before(tokens, floor, found.first):
        parts = Parts(found.kind, tokens[first].start, tokens[last - 1].end, word=found.word)
        place = first
        while place < last:
            place = event_words.take(tokens, place, -1, parts, context)
        made = _made(parts, first, last, source)
        if made is None or made.event is None:
            return []
        out.append(made)
    return [] if found.kind == "lost" and animal_events.of_so_many(out, found) else out


def _more_animals(tokens: list[Token], found: Found, source: str, context: Context) -> list[Found]:
    """Further counts behind an event of animals: `added 3 shrimp and 2 snails`."""
    out: list[Found] = []
    last = found.last
    untold = found.doubt is not None and found.doubt.reason == doubts.NO_NUMBER
    while (found.event is not None or untold) and found.kind in kinds.OF_ANIMALS:
        first = animal_events.next_group(tokens, last)
        if first is None:
            if (uncounted := animal_events.uncounted(tokens, last, source)) is not None:
                out.append(uncounted)
            break
        end = event_bounds.right(tokens, first)
        if any(token.value == "link" for token in tokens[first:end]):
            break  # 2 guppies died and 1 neon is sick
        parts = Parts(found.kind, tokens[first].start, tokens[end - 1].end, word=found.word)
        place = first
        while place < end:
            place = event_words.take(tokens, place, -1, parts, context)
        made = _made(parts, last, end, source)
        if made is None:
            break
        out.append(made)
        last = end
    return out


def _more_doses(tokens: list[Token], found: Found, source: str, context: Context) -> list[Found]:
    """Further amounts behind a dose: `dosed 10 ml of part a and 10 ml of part b`."""
    out: list[Found] = []
    last = found.last
    while found.kind == "dose" and found.event is not None and last + 2 < len(tokens):
        joined = tokens[last].value == "and" or tokens[last].text in {",", "+", "&"}
        start = second_dose.ahead(tokens, last + joined)
        if start is None:
            start = last + 1
            amount = quantities.read(tokens, start) if joined else None
            if amount is None or amount.unit not in {*GRAMS, *MILLILITRES, *SPOONS}:
                break
            behind = tokens[amount.last : event_bounds.right(tokens, start)]
            if not any(token.kind in {"substance", "word"} for token in behind):
                break
        end = event_bounds.right(tokens, start)
        within = tokens[start:end]  # an amount may have been put first
        begins, stops = min(t.start for t in within), max(t.end for t in within)
        parts = Parts("dose", begins, stops, word=found.word)
        place = start
        while place < end:
            place = event_words.take(tokens, place, -1, parts, context)
        made = _made(parts, last, end, source)
        if made is None or made.event is None:
            break
        out.append(made)
        last = end
    return out


_SCALES = (("litres", LITRES), ("grams", GRAMS), ("millilitres", MILLILITRES))


def _once_more(tokens: list[Token], found: Found) -> list[Found]:
    """The same done once more: `changed 10 l then another 10 l`, `… and another 5 gal`."""
    event = found.event
    if event is None or event.kind not in {"water_change", "dose"}:
        return []
    place = found.first
    while place < len(tokens) - 1:
        token = tokens[place]
        again = herd.saying(token.text) in {"another", "further"}
        beyond = place >= found.last and token.kind != "fill" and token.value != "and"
        if beyond and not again and token.text != ",":
            break
        first = _amount_in(tokens, found.first, place) if again else None
        second = _amount_in(tokens, place + 1, place + 2) if again else None
        if second is not None and any(
            t.kind in {"substance", "word"} for t in tokens[second[2] : second[2] + 3]
        ):
            return []  # another 3 g of another thing
        if first is not None and second is not None and first[0] == second[0]:
            start, end = token.start, tokens[second[2] - 1].end
            found.event = _so_much(event, *first[:2], event.start, min(event.end, start))
            last, found.last = max(found.last, second[2]), place
            told = _so_much(event, *second[:2], start, end)
            return [Found(place, last, found.kind, found.word, event=told)]
        place += 1
    return []


def _amount_in(tokens: list[Token], first: int, last: int) -> tuple[str, float, int] | None:
    """The first amount of water or of a thing that begins there: its scale, how much, its end."""
    for place in range(first, min(last, len(tokens))):
        amount = quantities.read(tokens, place) if quantities.is_number(tokens[place]) else None
        for name, units in _SCALES:
            if amount is not None and amount.value is not None and amount.unit in units:
                return name, amount.value * units[amount.unit], amount.last
    return None


def _so_much(event: Event, scale: str, amount: float, start: int, end: int) -> Event:
    """The same event of so much, by one of `_SCALES`."""
    return replace(
        event,
        start=start,
        end=end,
        litres=amount if scale == "litres" else None,
        grams=amount if scale == "grams" else None,
        millilitres=amount if scale == "millilitres" else None,
    )


def _note(tokens: list[Token], index: int, source: str) -> Found | None:
    if index:
        return None
    start, end = tokens[0].start, tokens[-1].end
    text = source[tokens[0].end : end].strip(" :,")
    return Found(0, len(tokens), "note", event=Event("note", text=text, start=start, end=end))


def _made(parts: Parts, first: int, last: int, source: str) -> Found | None:
    kind = parts.kind
    if kind in {"added", "given"}:
        kind = added(parts)
    if kind == "dose":
        dose_name.settle(parts, source)
    told = parts.bare is not None and parts.substance is None and parts.unknown
    if kind == "dose" and told and kinds.names_animal(source_words(parts.unknown, source)):
        kind = "added"  # put in 3 guppies
    if kind == "given" and parts.to_tank:
        kind = "moved"  # took 3 neons to quarry
    untold = parts.percent is None and parts.litres is None
    if kind == "water_change" and parts.substance in MEDIA and untold:
        kind = "media"  # "swapped the carbon"
    said = source_words(parts.unknown, source) if parts.unknown else ""
    added_or_put = parts.kind == "added" or (kind == "dose" and parts.grams is None)
    if said and added_or_put and parts.substance is None and kinds.names_thing(said):
        kind = "media"  # added a filter, 5 plants, 10 kg gravel
    if (
        kind == "dose"
        and not parts.weighed
        and parts.substance is None
        and is_care(parts.word, said)
    ):
        told_of = source[parts.start : parts.end].strip()
        note = Event("note", text=told_of, start=parts.start, end=parts.end)
        return None if parts.unsure else Found(first, last, "note", parts.word, event=note)
    living = kind in kinds.OF_ANIMALS
    species = animal_names.species(parts, source) if living else None
    problem = judge(kind, parts, species)
    if problem == "":
        return None
    if problem is not None or parts.unsure:
        made = doubt(parts, problem or doubts.UNSURE_EVENT, source)
        return Found(first, last, kind, parts.word, doubt=made)
    substance = parts.substance
    if said and (kind == "dose" or (kind == "media" and substance is None)):
        substance = source_words(
            sorted(parts.unknown + parts.named, key=lambda token: token.start), source
        )
    counted = living or kind == "media"
    count = int(parts.bare) if counted and parts.bare is not None else parts.count
    count = (count or 1) * parts.each if living and parts.each > 1 else count if counted else None
    event = Event(
        animal_events.KEPT_AS.get(kind, kind),
        percent=parts.percent,
        litres=parts.litres,
        grams=parts.grams,
        millilitres=parts.millilitres,
        spoons=parts.spoons,
        count=count,
        substance=substance,
        species=species,
        text=animal_events.untold(parts, count) if living else None,
        start=parts.start,
        end=parts.end,
    )
    return Found(first, last, kind, parts.word, event)
