"""What sort of task a reminder is about, by its words."""

from __future__ import annotations

import re
from typing import Final

from core.schedule.model import Kind
from core.schedule.words import tasks
from core.schedule.words.vocabulary import fold, split

_SHARE: Final = re.compile(r"\d{1,2}(?: ?[-–] ?\d{1,2})? ?%")
"""A share and nothing else, which is of a water change."""


def kind_of(what: str) -> Kind:
    """Tell the sort of a task from its words; other where no sort is sure.

    Parameters
    ----------
    what : str
        The task in the keeper's words.

    Examples
    --------
    >>> kind_of("change quarry"), kind_of("change the carbon"), kind_of("call the club")
    ('change', 'media', 'other')
    """
    folded = [fold(word) for word, _, _ in split(what)]
    words, text = set(folded), f" {' '.join(folded)} "
    if _SHARE.fullmatch(what.strip()):
        return "change"
    if words & tasks.CALIBRATE:
        return "calibrate"
    if words & tasks.KIT and words & (tasks.RENEW | tasks.CHANGE | tasks.OBTAIN):
        return "kit"
    if words & tasks.TEST:
        return "test"
    if any(phrase in text for phrase in tasks.TOP_UP):
        return "top_up"
    return _by_thing(words, text)


def is_chore(what: str) -> bool:
    """Tell whether words name a chore: its verb, or a change of water.

    Of a value it is told that it changes, so that `ph changes` is none.

    Examples
    --------
    >>> is_chore("check filter"), is_chore("30% wasserwechsel"), is_chore("ph changes")
    (True, True, False)
    """
    words = {fold(word) for word, _, _ in split(what)}
    text = f" {' '.join(fold(word) for word, _, _ in split(what))} "
    if words & tasks.CHANGE and words & tasks.ANALYTES - tasks.WATER:
        return False
    share = "%" in words and bool(words & tasks.WATER)
    return share or bool(words & tasks.VERBS) or any(phrase in text for phrase in tasks.TOP_UP)


def names_things_only(what: str) -> bool:
    """Tell whether words name things or values that have a chore, and nothing else.

    Examples
    --------
    >>> names_things_only("the filter"), names_things_only("kh"), names_things_only("kh 4")
    (True, True, False)
    """
    words = {fold(word) for word, _, _ in split(what)} - tasks.ARTICLES
    return bool(words) and words <= tasks.OBJECTS


def names_task(what: str) -> bool:
    """Tell whether words name a chore, or a thing or value that has one.

    Examples
    --------
    >>> names_task("the filter"), names_task("thanks")
    (True, False)
    """
    words = {fold(word) for word, _, _ in split(what)}
    return is_chore(what) or bool(words & tasks.OBJECTS)


def is_again(what: str) -> bool:
    """Tell whether words only ask for the same task as before.

    Examples
    --------
    >>> is_again("again"), is_again("feed again")
    (True, False)
    """
    words = {fold(word) for word, _, _ in split(what)}
    return bool(words) and words <= tasks.AGAIN


def _by_thing(words: set[str], text: str) -> Kind:
    """The sort of a task whose verb alone does not tell it."""
    if words & tasks.MEDIA and words & (tasks.CHANGE | tasks.RENEW | tasks.CLEAN):
        return "media"
    if " water change" in text or words & tasks.WATER_CHANGE:
        return "change"
    if words & tasks.FILTER and words & (tasks.CLEAN | tasks.CHANGE | tasks.RENEW):
        return "filter"
    if words & tasks.CHANGE:
        return "other" if words & tasks.THINGS else "change"
    if words & tasks.FEED:
        return "feed"
    if words & tasks.DOSE:
        return "dose"
    if words & tasks.LOOK and words & tasks.ANALYTES:
        return "test"
    return _thing_alone(words - tasks.ARTICLES)


def _thing_alone(words: set[str]) -> Kind:
    """The sort of a task that only names its thing: the filter, kh and gh."""
    alone: tuple[tuple[frozenset[str], Kind], ...] = (
        (tasks.ANALYTES - tasks.WATER, "test"),
        (tasks.FILTER, "filter"),
        (tasks.MEDIA, "media"),
    )
    return next((kind for things, kind in alone if words and words <= things), "other")
