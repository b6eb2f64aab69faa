"""What was done to a tank or seen in it.

event   = [ amounts ] word { amount | substance | "with" water | species }
amount  = quantity in %, L, gal, g, kg, mL, spoons | half | count

An event ends at a comma, a line break, a full stop, the name of an analyte or another event.
Words of wishing, asking or denying beside it make it a doubt.
"""

from __future__ import annotations

from core.message import (
    animal_events,
    doubts,
    event_bounds,
    herd,
    kinds,
    nearest,
    quantities,
    trade,
)
from core.message.amounts import GRAMS, MILLILITRES, SHARES, SPOONS, litres
from core.message.event_parts import Found, Parts, added, doubt, judge, source_words
from core.message.model import Context, Event
from core.message.quantities import Quantity
from core.message.tokens import Token, is_salt_water
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
            more = more or _more_doses(tokens, found, source, context)
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
    parts = Parts(kind, tokens[first].start, tokens[last - 1].end, word=tokens[index].text)
    parts.water = tokens[index].text not in {"changed", "replaced", "swapped", "exchanged"}
    parts.unsure = event_bounds.unsure_before(tokens, first, kind, sure)
    if last < len(tokens) and tokens[last].text == "?":
        parts.unsure = True  # asked, not told
    parts.to_tank = kind == "given" and animal_events.leads_to_tank(tokens, last)
    if kind == "born":
        parts.parents = animal_events.parents(tokens, max(floor, sure), first, source)
    place = first
    while place < last:
        place = _take(tokens, place, index, parts, context) if place != index else place + 1
    said = next((t for t in tokens[first:last] if t.kind == "count" or t.value == "one"), None)
    words = [t for t in parts.unknown if t.kind not in {"count", "number"}]
    words = [t for t in words if not kinds.is_kind(t.text)]
    if said is not None and any(nearest.counts_like(t.text, said.text) for t in words):
        parts.unsure = True  # "twenmty one": a part of the number was misspelt
    if tokens[first].kind == "count" and event_bounds.cut_off(tokens, first):
        parts.unsure = True
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
            place = _take(tokens, place, -1, parts, context)
        made = _made(parts, first, last, source)
        if made is None or made.event is None:
            return []
        out.append(made)
    return out


def _more_animals(tokens: list[Token], found: Found, source: str, context: Context) -> list[Found]:
    """Further counts behind an event of animals: `added 3 shrimp and 2 snails`."""
    out: list[Found] = []
    last = found.last
    while found.event is not None and found.kind in kinds.OF_ANIMALS:
        first = animal_events.next_group(tokens, last)
        if first is None:
            break
        end = event_bounds.right(tokens, first)
        if any(token.value == "link" for token in tokens[first:end]):
            break  # 2 guppies died and 1 neon is sick
        parts = Parts(found.kind, tokens[first].start, tokens[end - 1].end, word=found.word)
        place = first
        while place < end:
            place = _take(tokens, place, -1, parts, context)
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
    while found.kind == "dose" and found.event is not None and last + 3 < len(tokens):
        joined = tokens[last].value == "and" or tokens[last].text in {",", "+", "&"}
        amount = quantities.read(tokens, last + 1) if joined else None
        if amount is None or amount.unit not in {*GRAMS, *MILLILITRES, *SPOONS}:
            break
        end = event_bounds.right(tokens, last + 1)
        if not any(token.kind in {"substance", "word"} for token in tokens[amount.last : end]):
            break
        parts = Parts("dose", tokens[last + 1].start, tokens[end - 1].end, word=found.word)
        place = last + 1
        while place < end:
            place = _take(tokens, place, -1, parts, context)
        made = _made(parts, last, end, source)
        if made is None or made.event is None:
            break
        out.append(made)
        last = end
    return out


def _note(tokens: list[Token], index: int, source: str) -> Found | None:
    if index:
        return None
    start, end = tokens[0].start, tokens[-1].end
    text = source[tokens[0].end : end].strip(" :,")
    return Found(0, len(tokens), "note", event=Event("note", text=text, start=start, end=end))


def _take(tokens: list[Token], place: int, index: int, parts: Parts, context: Context) -> int:
    token = tokens[place]
    if parts.kind in event_bounds.GIVEN and (named := trade.given(tokens, index, place)):
        parts.unknown += tokens[place : place + named]
        return place + named
    if parts.kind in kinds.OF_ANIMALS and animal_events.take(tokens, place, parts):
        return place + 1
    if kinds.is_numbered(tokens, place):
        parts.unknown.append(token)
        return place + 1
    if token.text == "-" and _is_minus(tokens, place):
        if parts.kind in kinds.OF_ANIMALS:
            parts.bare = 0.0  # added -3 guppies
            return place + 2
        parts.unsure = True  # changed -10%
    numbered = quantities.is_number(token) or token.kind == "count"
    if numbered or token.value == "approx" or token.value in SHARES:
        quantity = quantities.read(tokens, place)
        if quantity is not None:
            if quantity.unit is None and event_bounds.share(token) and parts.kind == "water_change":
                above, slash, below = token.text.partition("/")
                part = int(above) / int(below) if slash else quantity.value or 0.0
                parts.percent = 100.0 * part
                return quantity.last
            _amount(quantity, parts, context)
            if quantity.last > index > place:
                return index
            return quantity.last
    if token.kind == "command" and token.value == "no":
        parts.unsure = True
    elif token.kind == "mark":
        mark = str(token.value)
        if mark in SHARES:
            parts.percent = SHARES[mark]
        elif mark == "water":
            parts.water = True
        elif mark == "fish":
            parts.unknown.append(token)
        elif mark in event_bounds.UNSURE:
            parts.unsure = True
        elif mark == "other" and parts.kind in {"water_change", "top_up"}:
            parts.substance = parts.substance or token.text
            parts.water = True
    elif token.kind == "substance":
        if parts.kind in {"water_change", "top_up"} and is_salt_water(tokens, place):
            return place + 1
        parts.substance = str(token.value)
        parts.named.append(token)
    elif token.kind in {"word", "several", "event", "analyte"}:
        if not event_bounds.adds(token, parts.kind):
            parts.unknown.append(token)
    elif token.kind == "count" and parts.bare is None:
        parts.bare = float(str(token.value))
        parts.before = len(parts.unknown)
    elif token.kind == "time" and token.value == "one" and parts.count is None:
        following = tokens[place + 1] if place + 1 < len(tokens) else token
        if following.kind == "unit" and following.value in SPOONS:
            parts.spoons = SPOONS[str(following.value)]  # a teaspoon of it
            return place + 2
        of_them = place + 1
        while of_them + 1 < len(tokens) and (
            tokens[of_them].kind == "fill" or tokens[of_them].value == "link"
        ):
            of_them += 1  # one of my guppies
        living = parts.kind in kinds.OF_ANIMALS and tokens[min(of_them, len(tokens) - 1)].kind
        gone = living == "event" and parts.kind == "lost"  # one is dead
        gone = gone or (parts.kind == "lost" and following is token)  # se murió uno
        parts.count = 1 if following.kind in {"word", "event"} or living == "word" or gone else None
        parts.before = len(parts.unknown)
        slip = nearest.counts(following.text) and not kinds.is_kind(following.text)
        parts.unsure = parts.unsure or slip  # "a dozwn guppies"
    return place + 1


def _is_minus(tokens: list[Token], place: int) -> bool:
    """Whether a dash behind an event's word is glued to its number, and so less than nothing."""
    before, following = tokens[place - 1], tokens[place + 1 : place + 2]
    glued = bool(following) and following[0].start == tokens[place].end
    return glued and before.kind == "event" and quantities.is_number(following[0])


def _amount(quantity: Quantity, parts: Parts, context: Context) -> None:
    value, unit = quantity.value, quantity.unit
    if quantity.grouped is not None and parts.kind in kinds.OF_ANIMALS and unit is None:
        value = quantity.grouped  # 10,000 fish are no ten
    elif quantity.grouped is not None:
        parts.unsure = True
        return
    if value is None or quantity.problem or quantity.sign:
        parts.unsure = True
        return
    if unit is None:
        parts.unsure = parts.unsure or (parts.kind in kinds.OF_ANIMALS and parts.bare is not None)
        parts.bare = value
        parts.before = len(parts.unknown)
    elif unit == "%":
        parts.percent = value
        parts.share_end = quantity.last
    elif unit in GRAMS:
        parts.heavy = parts.heavy or unit in {"kg", "mg"}
        parts.grams = value * GRAMS[unit]
    elif unit in MILLILITRES:
        parts.millilitres = value
    elif unit in SPOONS:
        parts.spoons = value * SPOONS[unit]
    else:
        volume = litres(quantity, us_gallons=context.us_gallons)
        if parts.whither and volume is not None:
            return  # moved to the 20 gal: a place
        if volume is None:
            parts.unsure = True
        elif not 0 < parts.share_end < quantity.first:
            parts.litres = volume  # but in "30% of 90 l" the volume is that of the whole


def _made(parts: Parts, first: int, last: int, source: str) -> Found | None:
    kind = parts.kind
    if kind in {"added", "given"}:
        kind = added(parts)
    told = parts.bare is not None and parts.substance is None and parts.unknown
    if kind == "dose" and told and kinds.names_animal(source_words(parts.unknown, source)):
        kind = "added"  # put in 3 guppies
    if kind == "given" and parts.to_tank:
        kind = "moved"  # took 3 neons to quarry
    untold = parts.percent is None and parts.litres is None
    if kind == "water_change" and parts.substance in MEDIA and untold:
        kind = "media"  # "swapped the carbon"
    said = source_words(parts.unknown, source) if parts.unknown else ""
    if said and parts.kind == "added" and parts.substance is None and kinds.names_thing(said):
        kind = "media"  # added a filter, 5 plants, 10 kg gravel
    living = kind in kinds.OF_ANIMALS
    species = animal_events.species(parts, source) if living else None
    problem = judge(kind, parts, species)
    if problem == "":
        return None
    if problem is not None or parts.unsure:
        made = doubt(parts, problem or doubts.UNSURE_EVENT, source)
        return Found(first, last, kind, parts.word, doubt=made)
    substance = parts.substance
    if said and (kind == "dose" or (kind == "media" and substance is None)):
        # A word that we do not know may make another thing of it: liquid carbon is no carbon.
        substance = source_words(sorted(parts.unknown + parts.named, key=_start), source)
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


def _start(token: Token) -> int:
    return token.start
