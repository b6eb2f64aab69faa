"""That nobody lives in a tank any more, told without a name: `all sold`, `the tank is empty`.

vacated = "all" gone | gone "all" | tank [ "is" ] "empty" | "no" "fish" [ "left" ]
        | "there is" "no" "fish" | "not" "have" "fish"
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

from core.message import herd
from core.message.commands import command_of
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context
from core.message.tanks import marked
from core.message.tokens import Token, cut

LONGEST: Final = 60
"""A longer text tells more. [characters]"""

_GONE: Final = frozenset({"gone", "weg", "fort", "borta", "bort", "away"})
_NO_MORE: Final = frozenset({"plus", "plus de", "piu"})
"""French and Italian for no more, beside ne and non."""
_THERE_IS: Final = frozenset({"hay", "gibt", "y a", "ha", "ma", "ci", "finns"})
"""Words for being there in nine languages, which are nothing else beside animals."""
_LIGHT: Final = frozenset({"anymore", "longer", "ya", "juz", "n"})
_NOW: Final = frozenset({"now", "today", "yesterday"})
_MEANT: Final = (
    frozenset({"all", "gone"}),
    frozenset({"empty", "tank"}),
    frozenset({"none", "any"}),
    frozenset({"not", "have", "any"}),
)


_BESIDE: Final = frozenset({"tank", "any", "have"})


@dataclass(frozen=True, slots=True)
class Vacated:
    """A tank without animals, or the one in use where none is named."""

    tank: str | None = None


def told(text: str, context: Context) -> Vacated | None:
    """The tank that is told to be without animals; None where a text tells anything else.

    Examples
    --------
    >>> from datetime import UTC, datetime
    >>> context = Context(now=datetime(2026, 3, 1, tzinfo=UTC), tanks=("Fern",))
    >>> told("fern is empty", context), told("all sold", context), told("alle verkauft", context)
    (Vacated(tank='Fern'), Vacated(tank=None), Vacated(tank=None))
    >>> told("the kh kit is empty", context), told("is the tank empty?", context)
    (None, None)
    """
    if len(text) > LONGEST or "?" in text:
        return None
    folded = fold(text)
    tokens = marked(cut(folded, lexicon(), text), folded, context)
    said = [_role(token) for token in tokens]
    if not tokens or tokens[0].value == "link" or "" in said:
        return None
    meant = {role for role in said if role != "light"}
    if "empty" in meant and said.index("empty") < said.index(
        "tank" if "tank" in meant else "empty"
    ):
        return None  # empty the tank
    named = next((str(token.value) for token in tokens if token.kind == "tank"), None)
    fits = any(meaning <= meant <= meaning | _BESIDE for meaning in _MEANT)
    return Vacated(named) if fits else None


def _role(token: Token) -> str:
    """What a word adds: one of `_MEANT`, light where it adds nothing, "" where it tells more."""
    if token.kind == "tank" or token.value == "home":
        return "tank"
    animals = herd.saying(token.text)
    if animals in {"all", "none", "any", "empty"}:
        return animals
    if token.value in {"given", "missing"} or token.text in _GONE:
        return "gone"
    if token.value in {"not", "nd"} or token.text in _NO_MORE or command_of(token) == "no":
        return "not"
    if "have" in herd.asking(token.text) or token.text in _THERE_IS:
        return "have"
    heavy = token.value in {"kit", "judge"}
    light = (token.kind == "fill" and not heavy) or token.text in ".,!:'"
    light = light or token.value in {"link", "more", "in", *_NOW} or token.text in _LIGHT
    of_them = animals == "further" or "tally" in herd.asking(token.text)
    return "light" if light or of_them or token.text.startswith("gave ") else ""
