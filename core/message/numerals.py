"""Numbers in several words made one: `twenty five`, `quatre-vingt-dix-sept`, `cento e vinte`.

number = [ below "thousand" ] [ below "hundred" [ "and" ] ] [ ten [ "-" | "and" ] unit | below ]
       | [ number ] "point" digit { digit }

A language's file says in `[numeral]` which "and" stands between a ten and a unit (``ten_and``:
treinta y cinco), which words for one may follow a ten (``behind_ten``), its "and" (``behind_and``)
or a point (``behind_point``), and after which tens 11 to 19 follow (``score``: soixante-quinze).
"""

from __future__ import annotations

from functools import lru_cache

from core.message import doubts
from core.message.lexicon import lexicon
from core.message.numbers import Number
from core.message.tokens import Token

_MOST = 12
"""Words of one number; nobody says more in a message."""


def unglue(token: Token) -> None:
    """Make a word that is a number of several, written as one, a count (dreihundertzehn)."""
    if half := _and_half(token.text):
        token.kind, token.value, token.text = "number", Number(half), f"{half:g}"
        return
    if value := _glued(token.text):
        token.kind, token.value = "count", str(value)


@lru_cache(maxsize=4096)
def _and_half(word: str) -> float:
    """The number of a word that ends in a half: viereinhalb, vierenhalf; else 0.

    Examples
    --------
    >>> _and_half("viereinhalb"), _and_half("drieenhalf"), _and_half("anderthalb")
    (4.5, 3.5, 1.5)
    """
    for end in lexicon().numerals["and_half"]:
        if word.endswith(end):
            head = word.removesuffix(end)
            known = lexicon().words.get(head, ("", ""))
            if known[0] == "count":
                return int(known[1]) + 0.5
            if not head:
                return 1.5
    return 0.0


GLUED = 9
"""Letters of the shortest number over a hundred that is one word of others (centootto)."""


@lru_cache(maxsize=4096)
def _glued(word: str) -> int:
    """The number that a word of known words is: thousands, hundreds and below; else 0.

    Examples
    --------
    >>> _glued("vierhundertzwanzig"), _glued("tweehonderdvijftig"), _glued("hundertwasser")
    (420, 250, 0)
    """
    known = lexicon().words
    for place in range(3, len(word) - 1):
        head = known.get(word[:place], ("", ""))
        if head[0] != "count":
            continue
        large, rest = int(head[1]), word[place:]
        entry = known.get(rest, known.get(rest.removeprefix("und").removeprefix("en"), ("", "")))
        one = entry[1] == "one" and rest in _ONES
        below = int(entry[1]) if entry[0] == "count" else int(one) or _glued(rest)
        if below == 1000 and 1 < large < 1000:
            return large * below
        if (large % 100 == 0 and large < 1000 and 0 < below < 100) or (
            large % 1000 == 0 and 0 < below < 1000
        ):
            return large + below
        if large < 1000 < below < 2000:
            return large * 1000 + below - 1000  # zwei-tausendfünfzig
    return 0


_ONES = frozenset({"eins", "ein", "een", "uno", "ett"})


def join(tokens: list[Token]) -> list[Token]:
    """The tokens with every spoken number of several words as one token.

    It is of kind ``count``; with a point in it of kind ``number``, written in digits.
    """
    out: list[Token] = []
    index = 0
    low: Token | None = None  # the last number in words that a range may begin with
    while index < len(tokens):
        token = tokens[index]
        after = index + 1
        pair = None
        if after < len(tokens) and (token.kind == "count" or token.value == "one"):
            pair = _hundreds_left_out(tokens, index)
        if pair is not None:
            token, after = pair, index + 2
        elif token.kind == "count" or token.value in {"one", "zero"} or _is_point(token):
            after, joined = _joined(tokens, index)
            token = _measured(joined or token, out, tokens, after, low)
            low = token if token.kind == "number" else low
        out.append(token)
        index = after
    return out


def _hundreds_left_out(tokens: list[Token], index: int) -> Token | None:
    """A small number and one of two digits said of a name: 210 or 2.10, which only it can tell.

    `tds two ten`, `ph seven twenty`; the token takes both, for the doubt to offer what fits.
    """
    ends = index + 2 >= len(tokens) or tokens[index + 2].kind in {"analyte", "p", "nl", "unit"}
    named = index and (tokens[index - 1].kind == "analyte" or tokens[index - 1].value == "link")
    if not (ends and named and tokens[index + 1].kind == "count"):
        return None
    first, second = tokens[index : index + 2]
    large = "1" if first.value == "one" else str(first.value)
    if not (len(large) == 1 and len(str(second.value)) == 2):
        return None
    written = f"{large}.{second.value}"
    number = Number(float(written), float(f"{large}{second.value}"), problem=doubts.BAD_NUMBER)
    return Token("number", number, written, first.start, second.end)


def _measured(
    token: Token, before: list[Token], tokens: list[Token], after: int, low: Token | None
) -> Token:
    """A count as a number where it is plainly one of a name: `ph about seven`, `ten to twenty`."""
    if token.kind != "count" or not before:
        return token
    marked = before[-1].kind == "mark" and before[-1].value in _MARKS
    place = len(before) - (2 if marked else 1)
    while place > 0 and before[place].value == "link":
        place -= 1
    named = place >= 0 and before[place].kind == "analyte"
    begins = after + 1 < len(tokens) and tokens[after].value in {"to", "at_to"}
    ranged = begins and tokens[after + 1].kind in {"number", "count"}
    ends = len(before) > 1 and before[-1].value in {"to", "at_to"} and before[-2] is low
    if not (named and (marked or ranged)) and not ends:
        return token
    number = Number(float(str(token.value)))
    return Token("number", number, str(token.value), token.start, token.end)


_MARKS = frozenset({"approx", "less", "under", "more"})


def _joined(tokens: list[Token], index: int) -> tuple[int, Token | None]:
    """The index behind the number that begins here, and its token where it has several words."""
    first = tokens[index]
    whole, after = 0, index
    if first.kind == "count" or first.value == "one":
        whole, after = _number(tokens, index)
    elif first.value == "zero":
        after = index + 1
    elif not (index and (tokens[index - 1].kind == "analyte" or tokens[index - 1].value == "link")):
        return index + 1, None  # "point five" alone
    digits = ""
    if after + 1 < len(tokens) and _is_point(tokens[after]):
        digits = _decimals(tokens, after + 1)
    if digits and (first.value != "one" or first.text in lexicon().numerals["behind_point"]):
        after += 1 + len(digits)
        written = f"{whole}.{digits}"
        number = Number(float(written), problem=_cut_short(tokens, after))
        return after, Token("number", number, written, first.start, tokens[after - 1].end)
    pointed = after + 1 < len(tokens) and _is_point(tokens[after]) and first.kind == "count"
    if pointed and tokens[after + 1].kind in {"p", "word"}:  # its decimals are not understood
        number = Number(float(whole), problem=doubts.BAD_NUMBER)
        return after, Token("number", number, str(whole), first.start, tokens[after - 1].end)
    if after < index + 2:
        return index + 1, None
    words = " ".join(each.text for each in tokens[index:after])
    return after, Token("count", str(whole), words, first.start, tokens[after - 1].end)


def _cut_short(tokens: list[Token], after: int) -> str | None:
    """The problem of a number where a sign and more of its digits follow (`point two- five`)."""
    behind = tokens[after + 1] if after + 1 < len(tokens) else None
    torn = behind is not None and tokens[after].kind == "p" and behind.kind == "count"
    return doubts.BAD_NUMBER if torn else None


def _is_point(token: Token) -> bool:
    return token.kind == "mark" and token.value == "point"


def _decimals(tokens: list[Token], place: int) -> str:
    """The digits behind a point that are said one by one: `point zero two five`."""
    digits = ""
    for token in tokens[place : place + 3]:
        if token.kind == "count" and len(str(token.value)) == 1:
            digits += str(token.value)
        elif token.value == "zero" and token.text.isalpha():
            digits += "0"
        elif token.text in lexicon().numerals["behind_point"]:
            digits += "1"
        else:
            break
    return digits


def _number(tokens: list[Token], index: int) -> tuple[int, int]:
    """The number that begins here, and the index behind it."""
    first = tokens[index]
    thousands, below = 0, int(str(first.value)) if first.kind == "count" else 1
    place = index + 1
    while place < min(len(tokens), index + _MOST):
        step = 1 + _joint(tokens, place)
        joint = tokens[place].text if step > 1 else ""
        token = tokens[place + step - 1] if place + step <= len(tokens) else tokens[-1]
        if token.kind == "count" and token.value in {"100", "1000"} and not joint:
            if token.value == "100" and 0 < below < 100:
                below *= 100
            elif token.value == "1000" and 0 < below < 1000 and not thousands:
                thousands, below = below * 1000, 0
            else:
                break
        elif first.kind != "count" and place == index + 1:
            break  # "one" begins a number only before a hundred or a thousand
        elif (more := _part(tokens, place, token, joint, thousands, below)) > 0:
            below += more
        else:
            break
        place += step
    return thousands + below, place


def _joint(tokens: list[Token], place: int) -> int:
    """1 where an "and" or a hyphen stands here that could join two words of a number, else 0."""
    token = tokens[place]
    if place + 1 >= len(tokens):
        return 0
    close = tokens[place - 1].end == token.start and token.end == tokens[place + 1].start
    return int(token.value == "and" or (token.text == "-" and close))


def _part(
    tokens: list[Token], place: int, token: Token, joint: str, thousands: int, below: int
) -> int:
    """What a word adds to the number so far; 0 where it does not belong to it."""
    roles = lexicon().numerals
    before = tokens[place - 1].text
    ten = below % 10 == 0 and below % 100 >= 20
    if token.kind != "count":
        told = token.text in roles["behind_and" if joint else "behind_ten"]
        return int(ten and (told or (joint == "-" and token.text in roles["behind_ten"])))
    number = int(str(token.value))
    if ten and number < 10:
        return number if joint in {"", "-"} or joint in roles["ten_and"] else 0
    if ten and number < 20 and before in roles["score"]:
        return number
    hundred = below >= 100 and below % 100 == 0 and number < 100
    return number if hundred or (thousands and not below and number < 1000) else 0
