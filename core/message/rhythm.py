"""How often something is done, as a text tells it: `30% twice a week`, `alle 10 Tage 20%`."""

from __future__ import annotations

import re
from typing import Final

from core.message.fold import fold

WEEK: Final = 7.0
MONTH: Final = 30.0

_UNITS: Final = {
    1.0: r"days?|tage?n?|jours?|dias?|giorn[oi]|dag(?:en)?|dni|dzien|dagar",
    WEEK: r"weeks?|woche?n?|semaines?|semanas?|settiman[ae]|we(?:ek|ken)|tydzien|tygodni\w*"
    r"|veckan?|veckor",
    MONTH: r"months?|monate?n?|mois|mes(?:es)?|mesi?|maand(?:en)?|miesiac\w*|manad(?:en|er)?",
}
_WORDS: Final = {
    1.0: r"daily|taglich|taegl?ich|quotidien\w*|diari\w+|giornalier\w+|dagelijks\w*|codzienn\w+"
    r"|dziennie|daglig\w*",
    WEEK: r"weekly|wochentlich|woechentlich|hebdomadaire\w*|semanal\w*|settimanal\w+"
    r"|wekelijks\w*|cotygodniow\w+|tygodniowo|veckovis|veckobyte\w*",
    MONTH: r"monthly|monatlich|mensuel\w*|mensual\w*|mensal\w*|mensil\w+|maandelijks\w*"
    r"|miesiecznie|comiesieczn\w+|manadsvis",
}
_EACH: Final = (
    r"every|each|alle|jede[nrsm]?|tous les|toutes les|chaque|cada|a cada|todos (?:los|os)"
    r"|todas (?:las|as)|ogni|tutti i|tutte le|elke|iedere|om de|co|kazd\w+|varje|var"
)
_A: Final = r"a|an|per|pro|im|in der|die|am|par|por|a la|al|ao|alla|na|w|i|om"
_TIMES: Final = {
    "once": 1, "twice": 2, "thrice": 3, "einmal": 1, "zweimal": 2, "dreimal": 3,
    "raz": 1, "dwukrotnie": 2,
}  # fmt: skip
_COUNTS: Final = {
    "two": 2, "three": 3, "zwei": 2, "drei": 3, "deux": 2, "trois": 3, "dos": 2, "tres": 3,
    "duas": 2, "due": 2, "tre": 3, "twee": 2, "drie": 3, "dwa": 2, "trzy": 3, "tva": 2,
    "second": 2, "other": 2, "third": 3, "zweiten": 2, "zweite": 2, "tweede": 2, "andra": 2,
}  # fmt: skip
_COUNT: Final = rf"\d{{1,3}}|{'|'.join(_COUNTS)}"
_UNIT: Final = "|".join(_UNITS.values())

_OFTEN: Final = re.compile(
    rf"\b(?:(?P<each>{_EACH}) (?:(?P<of>{_COUNT}) )?(?P<unit>{_UNIT})"
    rf"|(?:(?P<times>{'|'.join(_TIMES)})"
    rf"|(?P<count>{_COUNT}) ?(?:x|times|mal|fois|veces|vezes|volte|keer|maal|razy|ganger))"
    rf" (?:{_A}) (?P<in>{_UNIT})"
    rf"|(?P<word>{'|'.join(_WORDS.values())})"
    rf"|(?<!\bin )(?!i dag\b)(?:{_A}) (?P<bare>{_UNIT}))\b"
)


def days_between(text: str) -> float | None:
    """Days from one time to the next; None where nothing is told of how often.

    Examples
    --------
    >>> days_between("what if i change 30% twice a week"), days_between("20% every 10 days")
    (3.5, 10.0)
    >>> days_between("20 % wöchentlich"), days_between("change 50%") is None
    (7.0, True)
    """
    found = _OFTEN.search(" ".join(fold(text).split()))
    if found is None:
        return None
    if found["word"] is not None:
        return _of(_WORDS, found["word"])
    if found["bare"] is not None:
        return _of(_UNITS, found["bare"])
    if found["each"] is not None:
        return _number(found["of"]) * _of(_UNITS, found["unit"])
    times = _TIMES[found["times"]] if found["times"] else _number(found["count"])
    return _of(_UNITS, found["in"]) / max(times, 1.0)


def _of(table: dict[float, str], word: str) -> float:
    return next(days for days, words in table.items() if re.fullmatch(words, word))


def _number(word: str | None) -> float:
    if word is None:
        return 1.0
    return float(word) if word.isdigit() else float(_COUNTS[word])
