"""The words of time, language by language, as data; the grammar reads roles, not words."""

from __future__ import annotations

from functools import cache

from core.schedule.words.vocabulary import Vocabulary


@cache
def languages() -> tuple[Vocabulary, ...]:
    """All languages that are read; the first one wins where two know a text equally well.

    They are built when the first text is read, since most starts of the program read none.
    """
    from core.schedule.words.dutch import DUTCH
    from core.schedule.words.english import ENGLISH
    from core.schedule.words.french import FRENCH
    from core.schedule.words.german import GERMAN
    from core.schedule.words.italian import ITALIAN
    from core.schedule.words.polish import POLISH
    from core.schedule.words.portuguese import PORTUGUESE
    from core.schedule.words.spanish import SPANISH
    from core.schedule.words.swedish import SWEDISH

    return (ENGLISH, GERMAN, FRENCH, SPANISH, PORTUGUESE, ITALIAN, DUTCH, POLISH, SWEDISH)
