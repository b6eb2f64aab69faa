"""What puts right the deed or the reading that was just told: `oh wait it was only 2 g`.

put right = { light word } ( amount [ "not" amount ] | "not" amount amount
                           | "half" | thing [ "not" thing ] | "undo" [ "both" ] | time
           | "in" ( tank | "the other one" ) [ "not" tank ] | "wrong tank" [ tank ]
           | ( number | name ) tank | tank number | [ name ] water
           | "forget" ( name [ tank ] | tank "reading" ) [ time ] )

Every word must be one of a class of ``put_right.txt``, a number, a substance or a time. It is read
only right after what it may be about; alone none of it says what is meant. `amends` reads shorter
ways to say the same of numbers, times and names.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from typing import Final, Literal, NamedTuple

from core.message.commands import only_time
from core.message.right_pieces import Piece, pieces
from core.message.wordfile import spelt

LONGEST: Final = 90
"""A longer text says more than what was wrong. [characters]"""

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
    water: str | None = None
    """The name of the source that it was measured in."""
    name: str | None = None
    """The analyte that alone is meant, where it is told of a water or a tank."""
    forget: str | None = None
    """The analyte whose value is forgotten; empty where it is all that was told of `tank`."""
    marked: bool = False
    """Whether it has a word of regret, or that it was, or was only so much."""


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
    >>> put_right("oops 7.6 was betta", ["Betta"])[:2], put_right("betta 7.6", ["Betta"])
    (('7.6', 7.6), None)
    >>> put_right("wait ammonia was the tap one").water, put_right("tap ammonia") is None
    ('tap', True)
    >>> put_right("no the ammonia is in A", ["A"])[8:12], put_right("no kh in A", ["A"]) is None
    (('A', False, False, None), True)
    >>> put_right("no it was 2 g not tsp").number
    '2 g'
    >>> put_right("forget the nitrite").forget, put_right("remove the nitrite") is None
    ('nitrite', True)
    >>> put_right("delete the ph from yesterday, i misread it").timed
    True
    >>> put_right("oops that was a whole tablespoon").number, put_right("2 tbsp not 1 tsp").wrong
    ('1 tablespoon', 1.0)
    >>> put_right("i put in 2 g"), put_right("is it 2 g?"), put_right("no fish died")
    (None, None, None)
    """
    if len(text) > LONGEST or "?" in text:
        return None
    found = pieces(text, tanks)
    if not found:
        return None
    classes = {piece.kind for piece in found}
    deed, marked = "deed" in classes, bool(classes & _MARKS)
    if "have" in classes and not deed:
        return None  # actually i have 3
    core = _core(found)
    shape = "".join(_SHAPES[piece.kind] for piece in core)
    if shape[-2:] == "-k" and shape[:-2] in _OF_ONE:
        return _of_one(core[:-2])  # the kh was in moss, not fern
    if shape in _OF_ONE:
        told = (marked or "into" in classes) and not _is_none(found, text)
        return _of_one(core) if told else None
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
        told = placed or (regretted and shape == "k" and _told_to_be(found))
        told = told or (shape == "k" and _was_it(found))
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
        no_alone = all(p.text in _NO for p in found if p.kind in _MARKS)
        no_alone = no_alone and "," not in text  # no baking soda
        return None if no_alone else Right(substance=things[0], deed=deed)
    return Right(half=True, deed=deed, marked=True) if shape == "h" else None


def _core(told: list[Piece]) -> list[Piece]:
    """The pieces that have weight; a no between two of them is what it was not: 3 g no 6."""
    core: list[Piece] = []
    for piece in told:
        if piece.kind == "regret" and piece.text in _NO and core:
            core.append(Piece("not"))
        elif piece.kind not in {"light", "into", "is", "have", "deed", "spilt", *_MARKS}:
            core.append(piece)
    if core and core[-1].kind == "not":
        core.pop()
    if any(piece.kind == "tank" for piece in core):
        core = [piece for piece in core if piece.kind != "wrongtank"]
    today = [p for p in core if p.token is None or p.token.value not in _NOW]
    return today or core


_OF_ONE: Final = frozenset({"nk", "kn", "ak", "ka", "y", "ay", "ya", "ny", "yn"})
"""Shapes that tell of one value, or of all, whose water it is."""


def _of_one(core: list[Piece]) -> Right:
    """The 7.6 was betta, ammonia was the tap one: one value of those just told, and its water."""
    by_kind = {piece.kind: piece for piece in core}
    held = {kind: piece.text for kind, piece in by_kind.items()}
    number = by_kind.get("number")
    return Right(
        number=held.get("number"),
        wrong=None if number is None else number.value,
        tank=held.get("tank"),
        water=held.get("water"),
        name=held.get("analyte"),
        marked=True,
    )


def _is_none(told: list[Piece], text: str) -> bool:
    """Whether there is none of it: no ammonia in fern."""
    marks = [piece.text for piece in told if piece.kind in {*_MARKS, "is"}]
    first = [piece.kind for piece in told[:2]] == ["regret", "analyte"]
    return first and len(marks) == 1 and marks[0] in _NO and "," not in text


def _told_to_be(told: list[Piece]) -> bool:
    """Whether it is told of a tank that this is it, and nothing of how the tank is."""
    said = [piece.kind for piece in told if piece.kind not in {"light", "into"}]
    if "tank" not in said:
        return False
    place = said.index("tank")
    behind = set(said[place + 1 :]) <= {"regret", "not", "tank", "wrongtank"}
    return behind and place > 0 and said[place - 1] in {"is", "was", "wrongtank"}


def _was_it(told: list[Piece]) -> bool:
    """Whether all of a text is that it was a tank: those were quarry."""
    said = [piece.kind for piece in told if piece.kind != "light"]
    return said == ["was", "tank"]


def _forgotten(core: list[Piece], shape: str) -> Right | None:
    """Forget the nitrite; forget moss, delete that reading; to remove it is of the water."""
    taken = [piece.text for piece in core if piece.kind in {"gone", "undo"}]
    gone = any(text in _gone() or text.split()[0] in _gone() for text in taken)
    names = [piece.text for piece in core if piece.kind == "analyte"]
    tanks = [piece.text for piece in core if piece.kind == "tank"]
    days = [piece.token for piece in core if piece.token is not None]
    if days and not only_time(days):
        return None
    if not taken or set(shape) - set("guaklrt") or len(names) > 1 or len(tanks) > 1:
        return None
    if not names and not tanks:
        return None if days else Right(undo="last")
    if not gone or (not names and "r" not in shape):
        return None
    tank = tanks[0] if tanks else None
    return Right(forget=names[0] if names else "", tank=tank, timed=bool(days))


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
    "vessel": "v", "unit": "m", "water": "y",
}  # fmt: skip


def _taken_back(shape: str) -> Right | None:
    """Undo both, delete the last one, undo that, i havent done it."""
    rest = shape.replace("u", "").replace("x", "")
    undone = "x" in shape
    if rest in {"", "l"} and ("u" in shape or undone):
        return Right(undo="last", deed=undone)
    return Right(undo="both") if rest in {"b", "lb", "bl"} and "u" in shape else None
