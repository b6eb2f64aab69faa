"""Bought products by the names that the chat knows them by, and what is said of them.

A name of several words, or of words that mean something else (`kh plus`, `part b`, `buffer 8.2`),
is one thing wherever it stands whole: no word and no number of it is read apart.
"""

from __future__ import annotations

import re
from functools import cache, lru_cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.tokens import Token, cut
from core.message.waters import one_of
from core.message.wordfile import spelt

ENDINGS: Final = 5
"""Letters from which on a name of one word may have an ending of case or number (uzdatniacza)."""

SHORT: Final = 8
"""Words of a message that may be about a product alone."""

_EDGES: Final = " \t\n¿?¡!.,;:"


@cache
def _ways() -> dict[str, set[str]]:
    """Each meaning with all ways to say it.

    Raises
    ------
    ValueError
        If a line belongs to no known section or has no ``=``.
    """
    told = spelt("bought.txt", {"said", "label", "deed"})
    return {meaning: set(these) for _, meaning, these in told}


@cache
def _pattern(meaning: str) -> re.Pattern[str]:
    return re.compile(rf"(?<![^\W_])(?:{one_of(_ways()[meaning])})(?![^\W_])")


@cache
def _forgetting() -> re.Pattern[str]:
    words = {name: one_of(_ways()[name]) for name in ("forget", "article")}
    return re.compile(
        rf"(?:{words['forget']})\s+((?:(?:{words['article']})[\s]+)*)(\S.*)", re.DOTALL
    )


@lru_cache(maxsize=512)
def plain_name(name: str) -> str:
    """A product's name as it is compared: plain, without words of no weight.

    Examples
    --------
    >>> plain_name("my KH Plus")
    'kh plus'
    """
    weighty = [token.text for token in cut(fold(name), lexicon(), name) if token.kind != "fill"]
    return " ".join(weighty)


@lru_cache(maxsize=512)
def _spelt(names: tuple[str, ...]) -> tuple[re.Pattern[str], tuple[str, ...]]:
    """Where one of the names stands, the longest first, and the name of each of its groups.

    Without its words of no weight a name counts too, unless a word is left that means something.
    """
    whose: dict[str, str] = {}
    for name in names:
        whose.setdefault(fold(name), name)
    for name in names:
        plain = plain_name(name)
        if " " in plain or plain not in lexicon().words:
            whose.setdefault(plain, name)
    ways = []
    ordered = sorted(filter(None, whose), key=len, reverse=True)
    for name in ordered:
        own = name.isalpha() and name not in lexicon().words and len(name) >= ENDINGS
        written = r"[\s-]+".join(map(re.escape, _APART.split(name)))
        ways.append(f"({written}{_ENDING if own else ''})")
    pattern = re.compile(rf"(?<![^\W_])(?:{'|'.join(ways)})(?![^\W_])")
    return pattern, tuple(whose[name] for name in ordered)


_APART: Final = re.compile(r"[\s-]+")
"""Between the words of a name: red mix is red-mix."""

_ENDING: Final = r"[^\W\d_]{0,2}"


def mark(
    tokens: list[Token], folded: str, names: tuple[str, ...], spoken_of: str | None
) -> list[Token]:
    """`tokens` with every product named, or meant by a word for it, as one substance.

    Parameters
    ----------
    tokens : list of Token
        Of the folded text, with its tanks marked.
    names : tuple of str
        The chat's products.
    spoken_of : str or None
        The one that was just spoken of, which "of it" and "with it" mean.
    """
    spans = []
    if names:
        pattern, whose = _spelt(names)
        found = pattern.finditer(folded)
        spans = [(*each.span(), whose[(each.lastindex or 1) - 1]) for each in found]
    if spoken_of is not None:
        spans += [(*found.span(), spoken_of) for found in _pattern("it").finditer(folded)]
    for start, end, name in spans:
        within = [token for token in tokens if start <= token.start and token.end <= end]
        if not within or any(token.kind == "tank" for token in within):
            continue
        place = tokens.index(within[0])
        one = Token("substance", name, folded[start:end], start, end)
        tokens = [*tokens[:place], one, *tokens[place + len(within) :]]
    return tokens


def named_in(text: str, context: Context) -> str | None:
    """The one product that a short text without numbers names, None where it names none."""
    plain = fold(text)
    if not context.products or any(map(str.isdigit, plain)) or len(plain.split()) > SHORT:
        return None
    tokens = mark(cut(plain, lexicon(), text), plain, context.products, None)
    found = {str(token.value) for token in tokens if token.value in context.products}
    return found.pop() if len(found) == 1 else None


def is_word(meaning: str, plain: str) -> bool:
    """Whether a plain word, or two, is one of those of a meaning.

    Examples
    --------
    >>> is_word("measure", "messloffel"), is_word("per", "cup")
    (True, False)
    """
    return plain in _ways()[meaning]


def opens_label(command: str) -> bool:
    """Whether a word behind a slash announces a product's label: /label, /etikett, /product.

    Examples
    --------
    >>> opens_label("label"), opens_label("produkt"), opens_label("tank")
    (True, True, False)
    """
    return is_word("label", command) or is_word("product", command)


def wished(tokens: list[Token], products: tuple[str, ...]) -> str | None:
    """The word of asking that a wish and what is for it stand for: `kh auf 6 mit KH Plus`.

    Of a salt only where its words of aim can tell of no reading: `kh 6 with baking soda` may.
    """
    last = len(tokens)
    while last > 1 and (tokens[last - 1].kind == "substance" or tokens[last - 1].value == "and"):
        last -= 1
    if len(tokens) < 3 or tokens[-1].kind != "substance" or last == len(tokens):
        return None
    if tokens[last].kind != "substance":
        last += 1  # a "with" that is also a word for and
    kinds = {token.kind for token in tokens}
    aims = not kinds - _OF_WISH and any(_aims(tokens, place) for place in range(last))
    if tokens[-1].value not in products and not aims:
        return None
    led = tokens[0].kind in {"analyte", "tank"} or (aims and tokens[0].value == "wish")
    pronoun = is_word("it", tokens[-1].text)  # kh auf 6 damit
    joined = pronoun or any(
        is_word("with", token.text) for token in tokens[max(last - 2, 0) : last]
    )
    return "dose" if led and joined and {"analyte", "number"} <= kinds else None


def _aims(tokens: list[Token], place: int) -> bool:
    """Whether a word makes a wish of the number behind it: right behind its name, or before all."""
    if tokens[place].kind != "mark" or tokens[place].value not in _AIMS:
        return False
    if place == 0:
        return tokens[place].value == "wish"
    return tokens[place - 1].kind in {"analyte", "number", "unit"}


_AIMS: Final = frozenset({"to", "at_to", "wish"})
_OF_WISH: Final = frozenset({"analyte", "tank", "number", "unit", "mark", "fill", "substance", "p"})


def without_it(text: str) -> str:
    """A text, folded, without the words for what was just spoken of.

    Examples
    --------
    >>> without_it("change 20% with that")
    'change 20% '
    """
    return _pattern("it").sub("", fold(text))


def means_one(text: str) -> bool:
    """Whether a text has words for the product that was just spoken of."""
    return _pattern("it").search(fold(text)) is not None


def introduced(text: str) -> str | None:
    """The name of a new product of which no number is told; None where none is.

    Examples
    --------
    >>> introduced("new product: hard mineral, no strength on the bag")
    'hard mineral'
    >>> introduced("new product kh plus: 5 g per 80 l raises kh 1") is None
    True
    """
    found = _introducing().match(fold(text))
    if found is None or any(map(str.isdigit, text)) or len(fold(text)) != len(text):
        return None
    return text[found.start(1) : found.end(1)].strip() or None


@cache
def _introducing() -> re.Pattern[str]:
    phrases = [way for way in _ways()["new"] if " " in way]
    return re.compile(rf"\s*(?:{one_of(phrases)})\s*:?\s+([^,;.!?\n]+)")


def called(text: str) -> str | None:
    """The name that is given to what was told of before; None for other talk.

    Examples
    --------
    >>> called("call it blue jar"), called("nenn es Pulver Nord!"), called("call me")
    ('blue jar', 'Pulver Nord', None)
    """
    said = text.strip(_EDGES)
    found = re.match(rf"(?:{one_of(_ways()['call'])})\s+(?=\S)", fold(said))
    return said[found.end() :] if found is not None and len(fold(said)) == len(said) else None


def lists(text: str) -> bool:
    """Whether a text asks for the list of products, and nothing else.

    Examples
    --------
    >>> lists("Produkte?"), lists("products for plants")
    (True, False)
    """
    return " ".join(fold(text).strip(f"{_EDGES}/").split()) in _ways()["list"]


def forgotten(text: str) -> tuple[str, ...]:
    """What a text wants forgotten, as said and without articles; empty where it is other talk.

    Examples
    --------
    >>> forgotten("Vergiss mein KH Plus!"), forgotten("fern: kh 4")
    (('mein KH Plus', 'KH Plus'), ())
    """
    said = text.strip(_EDGES)
    found = _forgetting().fullmatch(fold(said))
    if found is None or len(fold(said)) != len(said):
        return ()
    return said[found.start(1) :].strip(), said[found.start(2) :].strip()
