"""Words that tell a deed only by what stands beside them: they are made words of events."""

from __future__ import annotations

from core.message import bought, quantities
from core.message.amounts import GRAMS, SHARES, SPOONS
from core.message.dose_words import dose_words
from core.message.tokens import Token
from core.message.waters import is_whole, words

_WEIGHED = frozenset({*GRAMS, *SPOONS, "mL"})


_NEAR = 4
"""Words from a change to its water."""


def share_changed(tokens: list[Token]) -> None:
    """`30% change` is a change of water."""
    for index in range(2, len(tokens)):
        token = tokens[index]
        if token.value == "changing" and tokens[index - 1].value == "%":
            following = tokens[index + 1] if index + 1 < len(tokens) else token
            if tokens[index - 2].kind == "number" and following.value not in {"in", "link"}:
                token.kind, token.value = "event", "water_change"


def did_change(tokens: list[Token]) -> None:
    """`did 50 l ro`, `30% gemacht`: what was done by a share or litres alone is a change."""
    for place, token in enumerate(tokens):
        if not bought.is_word("did", token.text):
            continue
        first = place + 1
        while first < len(tokens) and (
            tokens[first].kind == "fill" or tokens[first].value == "one"
        ):
            first += 1
        amount = quantities.read(tokens, first) if first < len(tokens) else None
        last = place if amount is None else amount.last
        if amount is None and place >= 2:  # 30% gemacht
            if any(each.value == "water_change" for each in tokens[max(0, place - _NEAR) : place]):
                continue  # changement de 20 l fait: it is told already
            amount = quantities.read(tokens, place - 2)
            amount, last = (
                (None, 0) if amount is None or amount.last != place else (amount, place + 1)
            )
        ends = (
            last >= len(tokens) or tokens[last].kind in _ENDS or tokens[last].text in words().water
        )
        if not ends and amount is not None and tokens[last].value == "changing":  # did 25 l change
            behind = tokens[last + 1] if last + 1 < len(tokens) else None
            ends = behind is None or behind.kind in _ENDS or behind.value in {"and", "in"}
            if ends:
                tokens[last].kind = tokens[last].value = "fill"
        if amount is not None and amount.unit in _CHANGED and amount.value and ends:
            token.kind, token.value = "event", "water_change"
            return


_CHANGED = frozenset({"%", "L", "gal", "uk gal"})
_ENDS = frozenset({"p", "nl", "time"})


def whole_changed(tokens: list[Token]) -> None:
    """A word for all beside a change makes it the whole water: `changed all the water`.

    It stands before the word for the change, or between it and the water.
    """
    for index, token in enumerate(tokens):
        if token.value != "water_change":
            continue
        before = index - 1
        while before >= 0 and (tokens[before].kind == "fill" or tokens[before].value == "water"):
            if is_whole(tokens[before].text):
                break
            before -= 1
        wet = next(
            (n for n, t in enumerate(tokens[index + 1 :], index + 1) if t.value == "water"), 0
        )
        near = range(index + 1, wet if wet <= index + _NEAR else index + 1)
        places = [*([before] if before >= 0 else []), *near]
        whole = next((n for n in places if is_whole(tokens[n].text)), None)
        if whole is not None:
            tokens[whole].kind, tokens[whole].value = "mark", "whole"


def emptied(tokens: list[Token]) -> None:
    """A tank that was emptied and filled again changed all its water: `drained and refilled it`.

    No amount stands beside it: `drained half and refilled` is not read so.
    """
    if any(t.kind in {"number", "count", "fraction"} or t.value in SHARES for t in tokens):
        return
    values = {t.value for t in tokens}
    if "other" in values and "home" not in values:
        return  # drained and refilled the bucket
    told = words()
    for index, token in enumerate(tokens):
        if token.text not in told.emptied:
            continue
        for behind in tokens[index + 1 : index + 2 + _NEAR]:
            if behind.value == "top_up" or behind.text in told.filled:
                behind.kind, behind.value = "fill", "fill"
                token.kind, token.value = "event", "water_change"
                tokens[index + 1].kind, tokens[index + 1].value = "mark", "whole"
                return


def given_it(tokens: list[Token]) -> None:
    """What was given may be a change or a meal: `gave it a 20% change`, `gave them a feed`."""
    for index, token in enumerate(tokens):
        if token.value != "dose" or not token.text.startswith("gave "):
            continue
        given = tokens[index + 1 : index + 1 + _NEAR + 1]
        for place, each in enumerate(given):
            if each.kind in {"p", "nl", "substance"}:
                break
            if each.value != "water_change" and each.text not in dose_words()["meal"]:
                continue
            if each.value != "water_change":
                each.kind, each.value = "event", "fed"
            for light in (token, *(one for one in given[:place] if one.value == "one")):
                light.kind = light.value = "fill"
            break


def dose_behind(tokens: list[Token]) -> bool:
    """Put the word for a dose before its thing (`vinegar dosing 5 ml`, `essig dosiert 5 ml`)."""
    for index in range(len(tokens) - 2):
        thing, dose, number = tokens[index : index + 3]
        led = index == 0 or tokens[index - 1].kind in {"tank", "fill", "time", "p"}
        if dose.value == "dose" and thing.kind == "substance" and number.kind == "number" and led:
            dose.kind = "event"
            tokens[index], tokens[index + 1] = dose, thing
            return True
    return False


def dosed(tokens: list[Token]) -> bool:
    """Whether words beside so much of a substance were made a dose."""
    return dose_behind(tokens) or put_in(tokens) or gone_in(tokens) or thing_first(tokens)


def thing_first(tokens: list[Token]) -> bool:
    """Put the word for a dose before its thing: `epsom salt 3 tsp added`, `natron 10 g gegeben`."""
    for index in range(len(tokens) - 1):
        amount = (
            quantities.read(tokens, index + 1) if quantities.is_number(tokens[index + 1]) else None
        )
        thing = tokens[index]
        if thing.kind != "substance" or amount is None or amount.unit not in _WEIGHED:
            continue
        verb = tokens[amount.last] if amount.last < len(tokens) else None
        ends = amount.last + 1 >= len(tokens) or tokens[amount.last + 1].kind in {"p", "nl"}
        if (
            verb is not None
            and ends
            and (verb.value in _ADDED or bought.is_word("give", verb.text))
        ):
            verb.kind, verb.value = "event", "dose"
            tokens[index : amount.last + 1] = [verb, *tokens[index : amount.last]]
            return True
    return False


_ADDED = frozenset({"dose", "added"})


INTO = frozenset({"erin", "rein", "drin", "hinein"})
"""Dutch and German particles that tell a dose behind so much of a thing: `10 g Natron rein`."""


def gone_in(tokens: list[Token]) -> bool:
    """Make a particle behind so much of a substance a dose, where its clause ends with it."""
    for index in range(3, len(tokens)):
        thing, into = tokens[index - 1 : index + 1]
        said = tokens[index - 3]
        told = said.kind == "number" or said.value in SHARES or said.value == "one"
        weighed = tokens[index - 2].value in _WEIGHED and told
        behind = tokens[index + 1] if index + 1 < len(tokens) else None
        ends = behind is None or behind.kind in {"p", "nl"} or behind.value == "and"
        if into.text in INTO and thing.kind == "substance" and weighed and ends:
            into.kind, into.value = "event", "dose"
            return True
    return False


def put_in(tokens: list[Token]) -> bool:
    """Make a verb beside an amount of a substance a dose: `put 10 g of baking soda in`.

    Alone such verbs mean other things (`put 6 tetras in`). In some languages one stands at the end
    (`10 g Natron gegeben`).
    """
    for index in range(len(tokens) - 2):
        last = _measured(tokens, index)
        if last is None:
            continue
        behind = [t for t in tokens[last:] if t.kind != "fill" or t.text in _GONE]
        behind = [t for t in behind if t.value != "link"]
        if behind and behind[0].text in _OF:
            behind = behind[1:]
        if not behind or behind[0].kind != "substance":
            continue
        before = tokens[max(0, index - _BEFORE) : index]
        if any(t.kind not in {"fill", "word", "time"} and t.value != "about" for t in before[1:]):
            before = before[-1:]
        after = behind[1 : 3 if behind[1:2] and behind[1].text in _AUXILIARY else 2]
        for verb in [*before, *after]:
            if verb.kind != "event" and bought.is_word("give", verb.text):
                verb.kind, verb.value = "event", "dose"
                return True
    return False


def _measured(tokens: list[Token], index: int) -> int | None:
    """Behind an amount by mass or measure that begins here, `a teaspoon` too; None for none."""
    token = tokens[index]
    if token.value == "one" and index + 1 < len(tokens) and tokens[index + 1].value in SPOONS:
        return index + 2
    if not (quantities.is_number(token) or token.value in SHARES):
        return None
    amount = quantities.read(tokens, index)
    return None if amount is None or amount.unit not in _WEIGHED else amount.last


_GONE = frozenset({"went", "gone"})
"""Fillers that tell behind a thing that it went in."""

_BEFORE = 3
"""Words of which one may be such a verb before its amount: `wsypało mi się 30 g sody`."""

_AUXILIARY = frozenset({"sont", "est", "sono", "e", "is", "er", "in", "ist", "sind", "ar", "jest"})
"""Words that may stand between a thing and such a verb: `30 g de soude sont tombés`."""


_OF = frozenset({"of", "de", "di", "von", "van", "av"})
