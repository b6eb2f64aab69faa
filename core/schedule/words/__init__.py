"""The words of time, language by language, as data; the grammar reads roles, not words."""

from core.schedule.words.dutch import DUTCH
from core.schedule.words.english import ENGLISH
from core.schedule.words.french import FRENCH
from core.schedule.words.german import GERMAN
from core.schedule.words.italian import ITALIAN
from core.schedule.words.polish import POLISH
from core.schedule.words.portuguese import PORTUGUESE
from core.schedule.words.spanish import SPANISH
from core.schedule.words.swedish import SWEDISH
from core.schedule.words.vocabulary import Vocabulary

LANGUAGES: tuple[Vocabulary, ...] = (
    ENGLISH,
    GERMAN,
    FRENCH,
    SPANISH,
    PORTUGUESE,
    ITALIAN,
    DUTCH,
    POLISH,
    SWEDISH,
)
"""All languages that are read, the one that is tried first before the others."""
