"""Pure readers that many looks ask about the same message keep their last answers."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import Final, ParamSpec, TypeVar, cast

LATELY: Final = 32
"""Answers kept: a message is read whole, in parts and without its marks, and workers take turns."""

P = ParamSpec("P")
T = TypeVar("T")


def once(read: Callable[P, T]) -> Callable[P, T]:
    """The reader, which reads the same text only once as long as it is spoken of.

    What it gives must not be changed by those who ask.
    """
    return cast("Callable[P, T]", lru_cache(maxsize=LATELY)(read))
