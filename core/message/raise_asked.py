"""``how do I raise the pH``, ``should I add baking soda``, ``coral``: to raise it, of no amount.

lowering asked = ( opener | supposed ) ( add product | lower "pH" )
needs_buffer = need buffer, beside light words
raise_asked = [ opener ] ( raise | get "up" ) ( "KH" | "pH" )   in any order
            | opener add ( buffer | medium )

Without an opener a message is one only where all its other words are light.
"""

from __future__ import annotations

import re
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.tokens import Token, cut
from core.message.wordfile import patterns
from core.substances import MEDIA

RAISED: Final = ("kh", "ph")
BUFFERS: Final = frozenset({"sodium bicarbonate", "potassium bicarbonate"})
SODA: Final = "soda"
"""One soda or the other: which, nobody said."""
PUT_IN: Final = BUFFERS.union(MEDIA)

_SECTIONS: Final = (
    "open", "raise", "get", "up", "add", "buffer", "supposed", "lowerer", "lower", "buffering",
    "need",
)  # fmt: skip
_MOST: Final = 24
"""Tokens of such a message, at most."""
_LIGHT: Final = frozenset({"mark", "ask", "fill", "several", "p", "command", "time", "tank"})


@cache
def words() -> dict[str, re.Pattern[str]]:
    """Section of the file → what finds its words."""
    return patterns("raise_asked.txt", _SECTIONS, {"open", "supposed"})


def asked(text: str) -> Question | None:
    """The wish to raise KH or pH, or to put bicarbonate in, of which no amount is told.

    Returns
    -------
    Question or None
        Of kind dose with `analyte`, or of kind effect with `substance`, which is None where it is
        only called a buffer, or soda; None where another thing is said, or a number stands there.

    Examples
    --------
    >>> asked("how do I raise the pH").analyte, asked("kan jag höja KH").analyte
    ('ph', 'kh')
    >>> asked("soll ich Natron zugeben").substance
    'sodium bicarbonate'
    >>> asked("should i add soda").kind, asked("should i add soda and salt")
    ('effect', None)
    >>> asked("my pH went up"), asked("raise kh to 6"), asked("does pH go up at night")
    (None, None, None)
    """
    plain, ways = fold(text).replace("-", " ").replace("'", " "), words()
    says = {section: found.search(plain) is not None for section, found in ways.items()}
    if not (says["raise"] or says["add"] or (says["get"] and says["up"])):
        return None
    tokens = cut(fold(text), lexicon(), text, most=_MOST + 1)
    counted = tokens[1:]  # "dois" is two in Portuguese, and opens a question in French
    if len(tokens) > _MOST or any(t.kind in {"number", "count", "fraction"} for t in counted):
        return None
    if tokens[0].kind in {"number", "fraction"}:
        return None
    named = [str(t.value) for t in tokens if t.kind == "analyte"]
    raised = next((each for each in named if each in RAISED), None)
    if raised is not None and (says["raise"] or (says["get"] and says["up"])):
        if set(named) <= {*RAISED} and (says["open"] or _all_light(tokens, ways["raise"])):
            return Question("dose", analyte=raised, text=text)
        return None
    buffer = next((str(t.value) for t in tokens if t.value in PUT_IN), None)
    soda = any(t.value == SODA for t in tokens)
    others = any(t.kind == "substance" and t.value not in {SODA, *PUT_IN} for t in tokens)
    if (buffer or says["buffer"] or soda) and not others and says["open"] and says["add"]:
        return Question("effect", substance=buffer, text=text)
    return None


def needs_buffer(text: str) -> bool:
    """Whether it is asked if a tank needs buffer, or how much, and nothing else is said.

    Of a bought product called a buffer nobody knows what is in it; what a tank needs is its KH.

    Examples
    --------
    >>> needs_buffer("how much buffer does my tank need"), needs_buffer("have i enough buffer?")
    (True, True)
    >>> needs_buffer("how much ph buffer for 50 l"), needs_buffer("how much buffer costs 5")
    (False, False)
    """
    plain, ways = fold(text), words()
    if ways["buffering"].search(plain) is None or ways["need"].search(plain) is None:
        return False
    tokens = cut(plain, lexicon(), text, most=_MOST + 1)
    said = ways["buffering"], ways["need"]
    return len(tokens) <= _MOST and all(
        token.kind in _LIGHT or any(each.fullmatch(token.text) for each in said)
        for token in tokens
        if token.kind != "nl"
    )


def lowering_asked(text: str) -> bool:
    """Whether it is asked, of no amount, if something sold to lower pH may go in, or pH be lowered.

    Examples
    --------
    >>> lowering_asked("what if I add ph down"), lowering_asked("should i use ph minus")
    (True, True)
    >>> lowering_asked("what if i lower the ph"), lowering_asked("what if ph is down to 6")
    (True, False)
    >>> lowering_asked("should i add 2 ml of ph down"), lowering_asked("i added ph down")
    (False, False)
    """
    plain, ways = fold(text).replace("-", " ").replace("'", " "), words()
    supposed = ways["supposed"].search(plain) is not None
    if re.search(r"\d", plain) or len(plain.split()) > _MOST:
        return False
    if not supposed and ways["open"].search(plain) is None:
        return False
    if ways["lowerer"].search(plain) is not None:
        return ways["add"].search(plain) is not None
    of_ph = {str(t.value) for t in cut(fold(text), lexicon(), text) if t.kind == "analyte"}
    return supposed and ways["lower"].search(plain) is not None and of_ph == {"ph"}


def _all_light(tokens: list[Token], raising: re.Pattern[str]) -> bool:
    """Whether nothing but the wish is said: `raise kh`, `kh erhöhen bitte`."""
    return all(
        token.kind in _LIGHT or token.value in RAISED or raising.fullmatch(token.text)
        for token in tokens
        if token.kind != "nl"
    )
