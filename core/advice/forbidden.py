"""What gets no dose at all, by whatever name: the rows of the cautions that must refuse."""

from __future__ import annotations

import re
from typing import Final

from core.advice.alarm_words import named

_CALCIUM: Final = r"\b(calcium|cacl2|gypsum|kalkwasser)\b"
_BUFFER: Final = r"\b(baking soda|bicarb\w*|soda ash|carbonate|buffer|alk\w*|kh)\b"
_AT_ONCE: Final = r"\b(together|at once|(at )?the same (time|place|bucket|bottle)|mix(ed|ing)?)\b"

_WORDS: Final[tuple[tuple[str, str | None], ...]] = (
    (
        "mixing",
        r"(bleach|chlorine cleaner|hypochlorite).*(acid|vinegar|ammonia|peroxide|cleaner)"
        r"|(acid|vinegar|ammonia|peroxide).*(bleach|hypochlorite)"
        r"|(dechlorinator|thiosul(f|ph)ate).*\bacid|\bacid\b.*(dechlorinator|thiosul(f|ph)ate)",
    ),
    ("battery_acid", None),
    ("caustic", None),
    (
        "medicine",
        r"copper(?! (pipe|plumb|boiler|tub))"
        r"|\b(for|treat|against|cure|with|has|have|got|of) (ich|ick)\b"
        r"|(?<!\w\w )\b(ich|ick)\b"  # not the German word behind its verb: darf ich
        r"|\b(white ?spots?|fungus|velvet|fin ?rot|popeye|dropsy|parasites?|sick)\b"
        r"|euthan|put (it|him|her|them|my fish) down|kill (the|my) fish",
    ),
    (
        "human",
        r"\b(drink|drinking|drank|cook|cooking|infant)\b|\bbaby\b(?! (?!bottle|formula|food)\w)"
        r"|\bmy (dog|cat|horse)\b"
        r"|my (skin|wound|hand|rash)",
    ),
    (
        "release",
        r"(release|set free|let go|dump|pour|flush)\b.*(river|lake|stream|sea\b(?! salt)|wild|drain"
        r"|creek|ditch|toilet)|(release|set free|let go|dump)\b.*pond",
    ),
    ("condensate", None),
    (
        "together",
        rf"({_CALCIUM}.*{_BUFFER}|{_BUFFER}.*{_CALCIUM}).*{_AT_ONCE}",
    ),
    ("bleach", r"bleach|hypochlorite|disinfectant|detergent"),
)
"""Rows in the order in which they go before each other; None: the words of danger say it all."""


def forbidden(text: str, *, asked: bool = True) -> str | None:
    """Name the row of the cautions that a text asks against, None where there is none.

    Parameters
    ----------
    text : str
        The question as written.
    asked : bool, optional
        False for what does not look like a question: only the words of danger are heeded then.

    Returns
    -------
    str or None
        mixing, battery_acid, caustic, medicine, human, release, condensate, together or
        bleach.

    Examples
    --------
    >>> forbidden("how much formalin for 100 l")
    'medicine'
    """
    found = named(text)
    said = found.get("refuse", frozenset())
    if asked:
        said |= found.get("asked", frozenset())
    folded = text.casefold()
    for reason, pattern in _WORDS:
        if reason in said or (asked and pattern and re.search(pattern, folded)):
            return reason
    return None
