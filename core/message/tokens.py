"""A message cut into tokens, each with its span in the source.

One compiled expression, whose alternatives each are a single run without nested repetition, so
that no text can make it go back over what it has read more than once (a test proves it of every
expression of this package from its parsed form).
"""

from __future__ import annotations

import re

from core.message import doubts, numbers
from core.message.ambiguous import copulas, resolved
from core.message.fold import MARK
from core.message.lexicon import Entry, Lexicon
from core.message.once import once
from core.message.token import Token as Token
from core.message.worded import joined

_TOKEN = re.compile(
    r"""
    [^\S\n]*+
  (?:
    (?P<word>[^\W\d_½¼¾⅓⅔⅛¹²³]+)
  | (?P<iso>\d{4}-\d\d?-\d\d?(?:t(?=\d))?)
  | (?P<clock>\d\d?[:h]\d\d(?::\d\d)?(?:z|[+-]\d\d:\d\d)?(?![\d:]))
  | (?P<dotted>\d\d?\.\d\d?\.(?:\d\d\d\d|\d\d)?(?![\d.,]))
  | (?P<slashed>\d\d?[/-]\d\d?[/-](?:\d\d\d\d|\d\d)(?![\d/-])|\d\d?/\d\d?/?(?![\d/.,]))
  | (?P<water>\d\d?h2o(?![^\W_]))
  | (?P<number>[.,]?\d[\d.,']*)
  | (?P<nl>\n)
  | (?P<mark><=|>=|\+/-|\+-|->|=>|\.\.+|<|[^\w\s]|[_½¼¾⅓⅔⅛¹²³])
  )
    """,
    re.VERBOSE,
)
_URL = re.compile(r"https?://\S+|www\.\S+")
_URL_HEADS = frozenset({"http", "https", "www"})
_MIXED = re.compile(r"[^\W_]{1,41}")
_WATER = re.compile(r" ?[.·*•∙x]? ?(\d\d?) ?h2o(?![^\W_])")
_SUPERSCRIPT = str.maketrans("", "", "¹²³" + MARK)


def cut(
    folded: str, words: Lexicon, source: str | None = None, *, most: int | None = None
) -> list[Token]:
    """The tokens of a folded text, words and phrases looked up.

    message = { word | number | date | clock | newline | other character }

    Blanks divide and are dropped; with `most`, no more pieces than that are cut. A word glued to
    digits is looked up whole ("no3"), then as the longest known beginning ("kh4", "7dgh8").
    The tokens are the caller's own to mark.
    """
    return [
        Token(each.kind, each.value, each.text, each.start, each.end)
        for each in _cut(folded, words, source, most)
    ]


@once
def _cut(folded: str, words: Lexicon, source: str | None, most: int | None) -> tuple[Token, ...]:
    out: list[Token] = []
    glued = -1  # where digits begin that touch a name which itself ends in a digit (no320)
    position, length = 0, len(folded)
    find, known, add = _TOKEN.match, words.words, out.append
    while position < length:
        match = find(folded, position)
        if match is None or (most is not None and len(out) >= most):
            break
        kind = match.lastgroup or "p"
        start, end = match.span(kind)
        text = folded[start:end]
        if kind == "word":
            entry = known.get(text)
            if entry is None and text in _URL_HEADS and (url := _URL.match(folded, start)):
                text, end = url.group(), url.end()
            elif end < length and folded[end].isdigit():
                text, entry = _mixed(folded, start, text, entry, known)
                end = start + len(text)
                if text[-1].isdigit() and end < length and folded[end].isdigit():
                    glued = end
                if entry is not None and entry[0] == "substance":
                    text, entry, end = _hydrate(folded, start, end, entry, known)
            elif entry is None and MARK in text:
                text = text.replace(MARK, "") or text
                entry = known.get(text)
            if entry is None:
                add(Token("word", None, text, start, end))
            else:
                add(Token(entry[0], entry[1], text, start, end))
        elif kind == "number":
            run = text if text.isdigit() else text.partition("..")[0].rstrip(".,'")
            end = start + len(run)
            number = numbers.read(run)
            torn = run[0] in ".," and out and out[-1].end == start and out[-1].text[-1].isdigit()
            if start == glued or torn:
                number = numbers.Number(number.value, None, "|", doubts.BAD_NUMBER)
            add(Token("number", number, run, start, end))
        elif kind == "mark":
            entry = known.get(text)
            if entry is not None:
                add(Token(entry[0], entry[1], text, start, end))
            elif text in numbers.FRACTIONS:
                add(Token("fraction", numbers.FRACTIONS[text], text, start, end))
            else:
                add(Token("p", text, text, start, end))
        else:
            add(Token("word" if kind == "water" else kind, text, text, start, end))
        position = end
    found = resolved(_phrases(out, words), words, folded if source is None else source)
    if source is not None and not source.isascii():
        copulas(found, source)
    if any([token.kind == "unit" for token in found]):  # noqa: C419 - a list is half the time
        found = joined(found)
    return tuple(found)


def _mixed(
    folded: str,
    start: int,
    letters: str,
    entry: tuple[str, str] | None,
    known: dict[str, tuple[str, str]],
) -> tuple[str, tuple[str, str] | None]:
    """The longest known beginning of letters and digits in one run, else the whole run.

    A formula may be followed by its charge in superscripts (``ca²``), which is left out.
    """
    match = _MIXED.match(folded, start)
    whole = match.group() if match else letters
    if whole in known:
        return whole, known[whole]
    if len(whole) > 40:
        return letters, entry
    if folded[start + len(whole) : start + len(whole) + 1] in _CHARGES and whole in _IONS:
        return whole, None  # the phrase with its sign follows (ca2+)
    if _WARM.fullmatch(whole):
        return "t", known.get("t")
    if not _well_made(whole, known):
        return whole, known.get(whole.translate(_SUPERSCRIPT))
    bare = whole.translate(_SUPERSCRIPT)
    if bare in known:
        return whole, known[bare]
    for end in range(len(whole) - 1, len(letters) - 1, -1):
        # What follows must begin a number, so that no name is cut in the middle of a word.
        if whole[end].isdigit() and whole[:end] in known:
            return whole[:end], known[whole[:end]]
    if entry is not None:
        return letters, entry
    return whole, None


_CHARGES = frozenset("+-")
_IONS = frozenset({"ca2", "mg2", "cu2", "fe2", "fe3", "so42", "po43"})
"""Formulas with the number of their charges, which are no numbers."""
_WARM = re.compile(r"t[123]\d")
"""Warmth by one letter (t25), which lamps (t5, t8) have before one digit."""
_RUNS = re.compile(r"\d+|\D+")


def _well_made(whole: str, known: dict[str, Entry]) -> bool:
    """Whether a run of letters and digits is names, numbers and units (`kh4gh8dgh`).

    A run with letters that we do not know is one unknown word, so that no part of a formula or a
    code becomes a reading; a name of one letter is not taken from within a run.
    """
    letters = [run for run in _RUNS.findall(whole) if not run[0].isdigit()]
    if len(letters) < 2:
        return len(letters[0]) > 1
    return all(len(run) > 1 or known.get(run, ("",))[0] == "unit" for run in letters) and all(
        known.get(run, ("",))[0] in {"analyte", "unit"} or any(char in "²³¹" for char in run)
        for run in letters
    )


def _hydrate(
    folded: str, start: int, end: int, entry: Entry, known: dict[str, Entry]
) -> tuple[str, Entry, int]:
    """A formula with its water (MgSO4·7H2O), whose digits are no readings."""
    match = _WATER.match(folded, end)
    if match is None:
        return folded[start:end], entry, end
    whole = f"{folded[start:end]}·{match.group(1)}h2o"
    return whole, known.get(whole, ("substance", whole)), match.end()


def _phrases(tokens: list[Token], words: Lexicon) -> list[Token]:
    """Tokens that together are one entry of the lexicon, joined; the longest phrase wins."""
    phrases, openers = words.phrases, words.openers
    out: list[Token] = []
    index, count = 0, len(tokens)
    while index < count:
        token = tokens[index]
        index += 1
        if index < count:
            text = token.text
            if text not in openers:
                out.append(token)
                continue
            for rest, entry, close in phrases.get((text, tokens[index].text), ()):
                if _continues(tokens, index - 1, rest, close):
                    end = index + len(rest)
                    text = " ".join((text, *rest))
                    token = Token(entry[0], entry[1], text, token.start, tokens[end - 1].end)
                    index = end
                    break
        out.append(token)
    return out


def _continues(tokens: list[Token], index: int, rest: tuple[str, ...], close: bool) -> bool:
    """Whether the pieces of a phrase follow; those of a sign stand close (`no3-n`, `n.d.`)."""
    if index + len(rest) >= len(tokens):
        return False
    place = index
    for piece in rest:
        place += 1
        token = tokens[place]
        if token.text != piece:
            return False
        if (
            close
            and token.start != tokens[place - 1].end
            and not (piece[0].isalnum() and tokens[place - 1].text[-1].isalnum())
        ):
            return False
    # A sign at the end belongs to a number that it touches: k+2 is a change, not an ion.
    return not (rest[-1] == "+" and place + 1 < len(tokens) and _touches(tokens, place))


def _touches(tokens: list[Token], place: int) -> bool:
    following = tokens[place + 1]
    return following.kind == "number" and following.start == tokens[place].end


def is_salt_water(tokens: list[Token], place: int) -> bool:
    """Whether a salt names the water behind it: `changed 20% with salt water` doses none."""
    named = tokens[place].value in {"sodium chloride", "sea salt"}
    return named and place + 1 < len(tokens) and tokens[place + 1].value == "water"
