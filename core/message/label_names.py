"""Under which name a label is told: `my buffer: 5 g per 80 l raises kh 1` is of "my buffer"."""

from __future__ import annotations

from dataclasses import dataclass
from itertools import pairwise
from typing import Final

from core.message import bought, kinds
from core.message.fold import fold
from core.message.labels import MOVING, find_dose
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.tokens import Token, cut

_ACTING: Final = frozenset({"ask", "command", "event"})
_PARTS: Final = frozenset({":", "=", ",", ";", "."})


@dataclass(frozen=True, slots=True)
class Name:
    """A product's name as typed; `sure` where a colon or what it does marks it as one."""

    said: str
    sure: bool


def named(text: str, context: Context) -> Name | None:
    """The name that a label is told under, None where none stands before it.

    A name of one word that means something in a message (`kh`), or that begins with a word of
    asking or of a deed (`dose kh`), would be found in other messages: it is none. Two words of the
    trade may be one (`kh plus`, `liquid gh`).

    Examples
    --------
    ``alk part b: 1 ml ...`` is of "alk part b", for sure; ``a powder called reef alk, label: 6 g``
    of "reef alk"; in ``shrimp mineral 2 g per 10 l ...`` "shrimp mineral" may be one.
    """
    tokens = cut(fold(text), lexicon(), text)
    if tokens and tokens[0].text == "/":  # /label@bot
        gaps = (i for i, (one, other) in enumerate(pairwise(tokens), 1) if other.start > one.end)
        tokens = tokens[next(gaps, 0) :]
    dose = find_dose(tokens, context)
    if dose is None:
        return None
    head = tokens[: dose.first]
    colons = [i for i, token in enumerate(head) if token.text in {":", "="}]
    moving = next((i for i, token in enumerate(head) if token.value in MOVING), len(head))
    first = not colons and 0 < moving < len(head)
    head = head[: colons[-1]] if colons else head[:moving]
    bracket = next((i for i, token in enumerate(head) if token.text == "("), len(head))
    close = next((i for i, token in enumerate(head) if token.text == ")"), len(head))
    head = [*head[:bracket], *head[close + 1 :]]
    for part in reversed(_parts(head, context)):
        said = _stripped(part, filled=first)
        if said and _is_name(said):
            name = text[said[0].start : said[-1].end]
            sure = bool(colons) or first or name.casefold() in map(str.casefold, context.products)
            return Name(name, sure) if sure or _is_short(said) else None
    return None


def question_behind(text: str, context: Context) -> int | None:
    """Where a question begins that is asked behind a label; None where none is.

    Examples
    --------
    >>> from datetime import datetime, UTC
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC))
    >>> text = "5 g per 80 l raises kh 1, how much for kh 4"
    >>> text[question_behind(text, context) :]
    'how much for kh 4'
    >>> question_behind("how much of it: 5 g per 80 l raises kh 1", context) is None
    True
    """
    tokens = cut(fold(text), lexicon(), text)
    dose = find_dose(tokens, context)
    behind = [] if dose is None else tokens[dose.last :]
    return next((each.start for each in behind if each.value == "how_much"), None)


def name_of(text: str, context: Context) -> str | None:
    """A text as a product's name, None where it can be none."""
    tokens = cut(fold(text), lexicon(), text)
    tank = fold(text) in map(fold, context.tanks)
    return None if tank or not _is_name(tokens) else text.strip()


def _parts(head: list[Token], context: Context) -> list[list[Token]]:
    """What stands between colons and commas, without tanks and without words for a label."""
    tanks = {fold(tank) for tank in context.tanks}
    parts: list[list[Token]] = [[]]
    for token in head:
        if token.text in _PARTS and token.text != ".":
            parts.append([])
        else:
            parts[-1].append(token)
    return [
        part
        for part in parts
        if part and not {_text(part)} & tanks and not bought.is_word("says", _text(part))
    ]


def _text(tokens: list[Token]) -> str:
    return " ".join(token.text for token in tokens)


def _stripped(part: list[Token], *, filled: bool) -> list[Token]:
    """A name without what is said before it (new product, a powder called) and behind it.

    `filled` is whether words of no weight before it are none of it: `my kh plus raises kh by 1`.
    """
    while filled and len(part) > 1 and part[0].kind == "fill":
        part = part[1:]
    for place in range(len(part) - 1, 0, -1):
        for size in (3, 2, 1):
            if size <= place and bought.is_word("called", _text(part[place - size : place])):
                return part[place:]
    for meaning in ("label", "have", "new"):
        for size in (3, 2, 1):
            if len(part) > size and bought.is_word(meaning, _text(part[:size])):
                part = part[size:]
    while len(part) > 1 and (bought.is_word("says", part[-1].text) or part[-1].value == "link"):
        part = part[:-1]
    while part and not any(map(str.isalnum, part[-1].text)):
        part = part[:-1]  # RED MIX!!
    return part


def _is_short(said: list[Token]) -> bool:
    """Whether what no colon marks as a name is a few words and no number."""
    return len(said) <= _FEW and all(any(map(str.isalpha, token.text)) for token in said)


_FEW: Final = 3


def _is_name(said: list[Token]) -> bool:
    kept = [token for token in said if token.kind != "fill"]
    own = any(token.kind == "word" for token in kept)
    if (
        not kept
        or kept[0].kind in _ACTING
        or (kept[0].kind == "time" and not own)
        or not any(map(str.isalpha, _text(kept)))
    ):
        return False
    if kinds.is_kind(_text(said)):
        return False  # guppy: 5 g
    spelt = [token for token in kept if any(map(str.isalpha, token.text))]
    return own or len(spelt) > 1 or kept[0].kind == "substance"
