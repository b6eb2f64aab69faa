"""What puts right the deed or the reading that was just told: `oh wait it was only 2 g`.

put right = { light word } ( amount [ "not" amount ] | "not" amount amount
                           | "half" | thing [ "not" thing ] | "undo" [ "both" ] | time
           | "in" ( tank | "the other one" ) [ "not" tank ] | "wrong tank" [ tank ]
           | "forget" ( name [ tank ] | tank "reading" ) )

Every word must be one of a class of ``put_right.txt``, a number, a substance or a time. It is read
only right after what it may be about; alone none of it says what is meant. `amends` reads shorter
ways to say the same of numbers, times and names.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Final, Literal, NamedTuple

from core.message import quantities
from core.message.commands import only_time
from core.message.fold import fold
from core.message.lexicon import lexicon, meanings
from core.message.tokens import Token, cut
from core.message.wordfile import spelt

LONGEST: Final = 90
"""A longer text says more than what was wrong. [characters]"""

_PHRASE: Final = 6
_EDGES: Final = " \t\n¿?¡!.,;:-…"
_MARKS: Final = frozenset({"regret", "only", "was"})


class Right(NamedTuple):
    """What was meant: a number as typed, so much of what was told, another thing, or nothing.

    `unit` is what the number told was in.
    `wrong` is the number, `other` the thing that it was not; `deed` whether a word tells that
    something was done, so that no reading is meant; `undo` how much is taken back.
    """

    number: str | None = None
    wrong: float | None = None
    half: bool = False
    substance: str | None = None
    other: str | None = None
    timed: bool = False
    undo: Literal["", "last", "both"] = ""
    unit: str | None = None
    tank: str | None = None
    other_tank: bool = False
    deed: bool = False
    forget: str | None = None
    """The analyte whose value is forgotten; empty where it is all that was told of `tank`."""
    marked: bool = False
    """Whether it has a word of regret, or that it was, or was only so much."""


class _Piece(NamedTuple):
    kind: str
    text: str = ""
    value: float | None = None
    token: Token | None = None


@cache
def _ways() -> dict[str, str]:
    """Plain phrases → the class that they are of; a word of two is of the first."""
    found: dict[str, str] = {}
    for _section, meaning, told in spelt("put_right.txt", {"word"}):
        for way in told:
            found.setdefault(" ".join(way.split()), meaning)
    return found


def class_of(phrase: str) -> str | None:
    """The class of a plain phrase, as in ``put_right.txt``.

    Examples
    --------
    >>> class_of("scratch that"), class_of("only"), class_of("epsom")
    ('regret', 'only', None)
    """
    return _ways().get(phrase)


def put_right(text: str, tanks: Sequence[str] = ()) -> Right | None:
    """What a text puts right; None where it is no such text, asks or says more.

    Examples
    --------
    >>> put_right("oh wait it was only 2g").number, put_right("3 g not 6").wrong
    ('2g', 6.0)
    >>> put_right("half of that actually").half, put_right("no wait, undo both").undo
    (True, 'both')
    >>> put_right("it was baking soda not washing soda").substance
    'sodium bicarbonate'
    >>> put_right("did it in quarry by mistake", ["Quarry"]).tank
    'Quarry'
    >>> put_right("oh wait wrong tank, thats Main", ["Main"]).tank
    'Main'
    >>> put_right("no it was 2 g not tsp").number
    '2 g'
    >>> put_right("forget the nitrite").forget, put_right("remove the nitrite") is None
    ('nitrite', True)
    >>> put_right("i put in 2 g"), put_right("is it 2 g?"), put_right("no fish died")
    (None, None, None)
    """
    if len(text) > LONGEST or "?" in text:
        return None
    pieces = _pieces(text, tanks)
    if not pieces:
        return None
    classes = {piece.kind for piece in pieces}
    deed, marked = "deed" in classes, bool(classes & _MARKS)
    if "have" in classes and not deed:
        return None  # actually i have 3
    core = _core(pieces)
    shape = "".join(_SHAPES[piece.kind] for piece in core)
    if "a" in shape or "r" in shape:
        return _forgotten(core, shape)
    if shape.strip("-") == "w":
        return Right(other_tank=True)
    if "u" in shape or "x" in shape:
        return _taken_back(shape)
    if shape == "v":  # thats the mix bucket
        return Right(undo="last", marked=True) if classes & {"is", "was", *_MARKS} else None
    if shape == "m":
        said = core[0].text if classes & {"is", "was", *_MARKS} else None
        return None if said is None else Right(unit=said.removeprefix("in "))
    if shape in {"k", "k-k", "o"}:
        placed = "into" in classes and (marked or deed)
        regretted = bool(classes & {"regret", "wrongtank"})
        told = placed or (regretted and shape == "k" and _told_to_be(pieces))
        tank = core[0].text if shape != "o" else None
        return Right(tank=tank, other_tank=shape == "o", deed=deed) if told else None
    if "t" in shape:
        alone = set(shape) == {"t"} and only_time([p.token for p in core if p.token])
        return Right(timed=True, deed=deed) if alone and (marked or deed) else None
    if "spilt" in classes:
        return Right(half=True, deed=True, marked=True) if shape == "h" else None
    numbers = [piece for piece in core if piece.kind == "number"]
    things = [piece.text for piece in core if piece.kind == "thing"]
    if shape in {"n-n", "-nn"}:
        meant, wrong = numbers if shape == "n-n" else numbers[::-1]
        return Right(number=meant.text, wrong=wrong.value, deed=deed)
    if shape in {"s-s", "-ss"} and things[0] != things[1]:
        meant_so, other = things if shape == "s-s" else things[::-1]
        return Right(substance=meant_so, other=other, deed=deed)
    if not marked:
        return Right(half=True, deed=True) if shape == "h" and deed else None
    if shape == "n":
        return Right(number=numbers[0].text, deed=deed)
    if shape == "s":
        no_alone = all(p.text in _NO for p in pieces if p.kind in _MARKS)
        no_alone = no_alone and "," not in text  # no baking soda
        return None if no_alone else Right(substance=things[0], deed=deed)
    return Right(half=True, deed=deed, marked=True) if shape == "h" else None


def _core(pieces: list[_Piece]) -> list[_Piece]:
    """The pieces that have weight; a no between two of them is what it was not: 3 g no 6."""
    core: list[_Piece] = []
    for piece in pieces:
        if piece.kind == "regret" and piece.text in _NO and core:
            core.append(_Piece("not"))
        elif piece.kind not in {"light", "into", "is", "have", "deed", "spilt", *_MARKS}:
            core.append(piece)
    if core and core[-1].kind == "not":
        core.pop()
    if any(piece.kind == "tank" for piece in core):
        core = [piece for piece in core if piece.kind != "wrongtank"]
    today = [p for p in core if p.token is None or p.token.value not in _NOW]
    return today or core


def _told_to_be(pieces: list[_Piece]) -> bool:
    """Whether it is told of a tank that this is it, and nothing of how the tank is."""
    said = [piece.kind for piece in pieces if piece.kind not in {"light", "into"}]
    if "tank" not in said:
        return False
    place = said.index("tank")
    behind = set(said[place + 1 :]) <= {"regret", "not", "tank", "wrongtank"}
    return behind and place > 0 and said[place - 1] in {"is", "was", "wrongtank"}


def _forgotten(core: list[_Piece], shape: str) -> Right | None:
    """Forget the nitrite; forget moss, delete that reading; to remove it is of the water."""
    taken = [piece.text for piece in core if piece.kind in {"gone", "undo"}]
    gone = any(text in _gone() or text.split()[0] in _gone() for text in taken)
    names = [piece.text for piece in core if piece.kind == "analyte"]
    tanks = [piece.text for piece in core if piece.kind == "tank"]
    if not taken or set(shape) - set("guaklr") or len(names) > 1 or len(tanks) > 1:
        return None
    if not names and not tanks:
        return Right(undo="last")
    if not gone or (not names and "r" not in shape):
        return None
    return Right(forget=names[0] if names else "", tank=tanks[0] if tanks else None)


@cache
def _gone() -> frozenset[str]:
    told = spelt("put_right.txt", {"word"})
    return frozenset(way for _section, meaning, ways in told if meaning == "gone" for way in ways)


_NO: Final = frozenset({"no", "non", "nao", "nie", "nej", "nee", "nein"})
_NOW: Final = frozenset({"today", "now"})

_SHAPES: Final = {
    "number": "n", "thing": "s", "not": "-", "half": "h", "undo": "u", "undone": "x",
    "last": "l", "both": "b", "time": "t",
    "tank": "k", "other": "o", "gone": "g", "analyte": "a", "reading": "r", "wrongtank": "w",
    "vessel": "v", "unit": "m",
}  # fmt: skip


def _taken_back(shape: str) -> Right | None:
    """Undo both, delete the last one, undo that, i havent done it."""
    rest = shape.replace("u", "").replace("x", "")
    undone = "x" in shape
    if rest in {"", "l"} and ("u" in shape or undone):
        return Right(undo="last", deed=undone)
    return Right(undo="both") if rest in {"b", "lb", "bl"} and "u" in shape else None


def _pieces(text: str, tanks: Sequence[str]) -> list[_Piece]:
    """What a text is made of, in order; empty where a word is of no class."""
    plain = fold(text).strip(_EDGES)
    tokens = cut(plain, lexicon(), plain)
    if any(token.kind == "ask" for token in tokens):
        return []
    names = {fold(tank): tank for tank in tanks}
    out: list[_Piece] = []
    place = end = 0
    while place < len(tokens):
        token = tokens[place]
        if token.start < end or token.text in _EDGES:
            place += 1
            continue
        if quantities.is_number(token):
            found = quantities.read(tokens, place)
            if found is None or found.value is None or found.problem:
                return []
            last = tokens[found.last - 1]
            out.append(_Piece("number", plain[token.start : last.end], found.value))
            place, end = found.last, last.end
            continue
        named = next((each for each in names if _stands(plain, token.start, each)), None)
        if named is not None:
            out.append(_Piece("tank", names[named]))
            place, end = place + 1, token.start + len(named)
            continue
        size, meaning = _class_at(plain, token.start)
        if token.kind == "substance" and token.end >= token.start + size:
            out.append(_Piece("thing", str(token.value)))
            end = token.end
        elif size:
            out.append(_Piece(meaning, plain[token.start : token.start + size]))
            end = token.start + size
        elif (count := _count(token.text)) and (count != "1" or "," in text):  # no, eran dos
            out.append(_Piece("number", count, float(count)))
            end = token.end
        elif token.kind == "time" or (token.kind in {"clock", "iso", "dotted"}):
            out.append(_Piece("time", token=token))
            end = token.end
        elif token.kind == "analyte":
            out.append(_Piece("analyte", str(token.value).partition("@")[0]))
            end = token.end
        elif token.kind == "fill" or (token.kind == "unit" and out and out[-1].kind == "not"):
            end = token.end  # 2 grams, not teaspoons
        else:
            return []
        place += 1
    return out


def _count(word: str) -> str | None:
    """The digits of a number in words; None for all else."""
    return next((name for kind, name in meanings(word) if kind == "count"), None)


def _stands(plain: str, start: int, name: str) -> bool:
    """Whether a name stands at a place, alone."""
    behind = plain[start + len(name) : start + len(name) + 1]
    return plain.startswith(name, start) and not behind.isalnum()


def _class_at(plain: str, start: int) -> tuple[int, str]:
    """How many characters the longest phrase at a place has, and its class; 0 for none."""
    words = plain[start:].split(" ", _PHRASE)[:_PHRASE]
    for count in range(len(words), 0, -1):
        phrase = " ".join(words[:count])
        bare = phrase.rstrip(_EDGES)
        meaning = _ways().get(bare)
        if meaning is not None:
            return len(bare), meaning
    return 0, ""
