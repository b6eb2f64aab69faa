"""Questions without a word of asking, known by their shape.

short = name "+" number | quantity "in" unit | name "under" number | "co2"
      | volume substance | verb name number | name number "ok" "?"  | verb substance
"""

from __future__ import annotations

from itertools import pairwise

from core.analytes import ANALYTES
from core.message import quantities
from core.message.amounts import SHARES
from core.message.asked_words import is_word
from core.message.lexicon import lexicon
from core.message.tokens import Token
from core.message.waters import names_pure

ENDS = frozenset({".", "?", "!", ";"})
"""Where a sentence ends."""
_VOLUMES = frozenset({"L", "gal", "uk gal"})
VERB_FIRST = frozenset({"en", "de", "nl", "sv"})
"""Languages in which a verb at the beginning makes a question."""


def asked(tokens: list[Token]) -> str | None:
    """The word of asking that a message without one stands for; None where nothing is asked."""
    if tokens and tokens[0].kind == "command" and tokens[0].value == "correct":
        return asked([token for token in tokens[1:] if token.text != ","])  # sorry, is kh 5 ok
    kinds = {token.kind for token in tokens}
    if "event" in kinds or "nl" in kinds or not kinds & {"analyte", "unit"}:
        return None
    words = [t for t in tokens if t.kind not in {"tank", "fill"} and t.text not in ENDS]
    if "tank" in kinds:
        into = {id(t) for t, tank in pairwise(tokens) if tank.kind == "tank"}
        words = [t for t in words if t.value != "in" or id(t) not in into]  # in nano
        if len(tokens) > 2 and tokens[0].kind == "tank" and tokens[1].text == ":":
            words, tokens = words[1:], tokens[2:]  # nano: kh +1
    if len(words) == 1 and words[0].value == "co2":
        return "co2"
    if len(words) < 2:
        return None
    moves = next((str(t.value) for t in words if t.value in {"raise", "change"}), None)
    if "analyte" in kinds and moves is not None and any(t.value == "uses" for t in words):
        return moves  # what can i use to lower ph
    if "analyte" in kinds and "number" not in kinds and any(t.value == "uses" for t in words):
        return "history"
    if ("analyte" in kinds or in_degrees(tokens)) and _judging(tokens, words[0]):
        return "history" if "number" not in kinds and _moves(words) else "safe"
    if "unit" in kinds and (_recipe(tokens, kinds) or _bucket(tokens, kinds)):
        return "how_much"
    if _plus(words) or _by_substance(words):
        return "dose"
    if _conversion(words):
        return "convert"
    if words[0].kind == "analyte" and words[1].value == "under" and len(words) == 3:
        return None if _floor(words) else "bound" if _least_mark(words) else "change"
    if words[0].value == "co2" and words[1].kind == "mark" and tokens[-1].text == "?":
        return "co2"
    return None


_AIMS = frozenset({"in", "for", "at_to", "to", "by", "home"})


def _by_substance(words: list[Token]) -> bool:
    """Whether a thing and the value that it shall make are all that is said: `soda to kh 5`."""
    between = {str(token.value) for token in words[1:-2]}
    return (
        len(words) > 3
        and (words[0].kind == "substance" or words[0].text == "soda")
        and bool(between & {"at_to", "to"} or {"for"} == between)
        and between <= _AIMS
        and words[-2].kind == "analyte"
        and quantities.is_number(words[-1])
    )


_WARMTH = frozenset({"°", "°C", "°F"})


def in_degrees(tokens: list[Token]) -> bool:
    """Whether a number in degrees stands where nothing is named: of a water that is its warmth."""
    if any(token.kind in {"analyte", "substance", "event"} for token in tokens):
        return False
    pairs = ((t, str(of.value).partition("@")[0]) for t, of in pairwise(tokens))
    return any(quantities.is_number(token) and unit in _WARMTH for token, unit in pairs)


_FLOORED = frozenset({"ammonia", "nitrite"})


def _floor(words: list[Token]) -> bool:
    """Whether "under" tells the end of a kit's scale rather than a wish (`nitrite under 0.1`)."""
    found = quantities.read(words, 1)
    small = found is not None and found.value is not None and found.value <= 1.0
    return small and str(words[0].value).partition("@")[0] in _FLOORED


def _least_mark(words: list[Token]) -> bool:
    """Whether "under" may tell the first mark of a kit's scale as well (`nitrate under 5`)."""
    found = quantities.read(words, 1)
    row = ANALYTES.get(str(words[0].value).partition("@")[0])
    if found is None or found.value is None or row is None:
        return False
    return found.unit in {None, "mg/L", "ppm"} and found.value <= row.resolution


def _judging(tokens: list[Token], first: Token) -> bool:
    """Whether it is asked if a number will do: `is kh 2 ok`, `kh 2 ok?`, `czy kh 2 jest ok`.

    A sentence that begins with a verb asks, in the languages that put it there for a question; in
    the others, and where a word of judging (ok, good, too much) stands in it, the mark asks.
    """
    marked = tokens[-1].text == "?"
    if first.value == "whether":
        return True
    if first is tokens[0] and first.value == "link" and first.text.isalpha():
        behind = next((t for t in tokens[1:] if t.kind not in {"fill", "tank"}), first)
        if behind.kind == "analyte" or quantities.is_number(behind):
            return marked or not VERB_FIRST.isdisjoint(lexicon().languages.get(first.text, ()))
    if not marked:
        return False
    judged = any(token.kind == "fill" and token.value == "judge" for token in tokens)
    unknown = any(token.kind in {"word", "several"} for token in tokens)
    numbered = any(quantities.is_number(token) for token in tokens)
    return judged and numbered and not unknown


def _moves(words: list[Token]) -> bool:
    """Whether it is asked how a value moves: `is kh falling`."""
    return any(token.kind == "mark" and token.value in {"down", "up"} for token in words)


def _recipe(tokens: list[Token], kinds: set[str]) -> bool:
    """A volume with a substance, or with "to", and nothing done: `soda 120 l kh 3 to 6`."""
    if "analyte" not in kinds and "substance" not in kinds:
        return False
    volume = any(token.kind == "unit" and token.value in _VOLUMES for token in tokens)
    ends = any(token.kind == "mark" and token.value in {"to", "at_to", "from"} for token in tokens)
    return volume and ("substance" in kinds or ends)


def _bucket(tokens: list[Token], kinds: set[str]) -> bool:
    """New water wished for: a volume without minerals, and what it is to hold.

    `want 20 l ro at gh 6`, or a vessel and all that is to be in it: `ro bucket 20 l gh 6 kh 4`;
    what is told of such a water has no wish in it.
    """
    values = {token.value for token in tokens}
    vessels = [t for t in tokens if any(is_word("vessel", word) for word in t.text.split())]
    listed = bool(vessels) and all(
        token.kind in _LISTED
        or token.value in {"other", "water", "and"}
        or token in vessels
        or is_word("of", token.text)
        for token in tokens
    )
    wishes = "wish" in values or listed
    wished = wishes and "other" in values and not _VOLUMES.isdisjoint(map(str, values))
    return (
        wished and {"analyte", "number"} <= kinds and names_pure(" ".join(t.text for t in tokens))
    )


_LISTED = frozenset({"analyte", "number", "unit", "fill", "p"})


def _plus(words: list[Token]) -> bool:
    """One or two of: name "+" number [unit]."""
    index = 0
    for _ in range(2):
        if index + 2 >= len(words) or words[index].kind != "analyte":
            return False
        sign, number = words[index + 1 : index + 3]
        found = quantities.read(words, index + 1) if sign.text == "+" else None
        if found is None or sign.end != number.start:
            return False
        index = found.last
        if index == len(words):
            return True
        index += words[index].text == "," or words[index].value == "and"
    return False


def _conversion(words: list[Token]) -> bool:
    """Quantity with unit, "in" or "to", unit."""
    found = quantities.read(words, 0)
    if found is None or found.unit is None or found.last + 2 != len(words):
        return False
    joint, unit = words[found.last], words[found.last + 1]
    joined = joint.value in {"in", "to"} or joint.text == "="
    return joined and unit.kind == "unit"


def supposed_change(tokens: list[Token]) -> str | None:
    """The word of asking of a change that is supposed: `if i change 30% with …, what happens`.

    So is one that is only named: `change 20%`. A Spanish "si" is the word for yes as well, which a
    comma would follow.
    """
    place = next((i for i, t in enumerate(tokens) if t.kind not in {"tank", "fill", "p"}), None)
    if place is None or place + 1 >= len(tokens):
        return None
    first, behind = tokens[place], tokens[place + 1]
    supposed = first.value == "if" or (first.text == "si" and behind.value == "changing")
    shared = any(token.value in SHARES or token.value == "%" for token in tokens)
    changing = any(token.value == "changing" for token in tokens)
    bare = all(token.kind != "fill" for token in tokens[:place])  # "acabo de" has done it
    named = bare and first.value == "changing" and not first.text.endswith("ing")
    named = named and _is_share(tokens, place)
    return "what_if" if (supposed and shared and changing) or named else None


def _is_share(tokens: list[Token], place: int) -> bool:
    """Whether a share or litres, and perhaps a water, is all that stands behind a word."""
    quantity = quantities.read(tokens, place + 1)
    if quantity is None or quantity.unit not in {"%", *_VOLUMES}:
        return False
    rest = tokens[quantity.last :]
    waters = {"and", "other", "home", "in", "source"}
    return all(token.kind in {"tank", "fill", "p"} or token.value in waters for token in rest)


def will_it_help(tokens: list[Token]) -> bool:
    """An auxiliary, then a thing, and no number.

    `will crushed coral do anything`, `should i add peat`, `can i lower ph with driftwood`,
    `i want to put limestone in the filter`.
    """
    words = [token for token in tokens if token.kind not in {"fill", "tank"}]
    if not words or words[0].value not in _AUXILIARIES:
        return False
    if words[0] is not tokens[0] and not (
        words[0] is tokens[1] and any(token.value in _PUTTING for token in words)
    ):
        return False
    words = [token for token in words if token.value not in _HANDLING][:4]
    if len(words) < 2:
        return False
    thing = words[1].kind == "substance"
    if not thing and words[1].kind == "ask" and words[1].value in {"raise", "change"}:
        thing = any(token.kind == "substance" for token in tokens)
    return thing and all(t.kind != "nl" and not quantities.is_number(t) for t in tokens)


_AUXILIARIES = frozenset({"does", "wish", "whether", "may"})
_PUTTING = frozenset({"adding", "got"})
_HANDLING = _PUTTING | {"new", "water", "some", "to", "at_to"}
