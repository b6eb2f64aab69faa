"""The words of time, language by language, as data; the grammar reads roles, not words."""

from core.schedule.words.english import ENGLISH
from core.schedule.words.vocabulary import Vocabulary

LANGUAGES: tuple[Vocabulary, ...] = (ENGLISH,)
"""All languages that are read, the one that is tried first before the others."""
