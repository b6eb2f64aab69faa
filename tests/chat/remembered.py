"""What was said in another test of the same run is not worked out again.

Most tests begin with the same lines: a tank, its readings, a plan. A conversation is a way through
a tree, whose branches are messages and spans of time; the database and the replies at a place
depend on nothing but that way. A test walks it, without a database, as far as another test went
before it and on from there; only where it leaves the beaten way is the database of that place laid
in its file. So a message is answered for the first time by the house itself, always.
"""

from __future__ import annotations

import sqlite3
import zlib
from collections.abc import Hashable
from contextlib import closing
from dataclasses import dataclass, field
from pathlib import Path

from bot.chat.model import Reply


@dataclass(slots=True)
class Place:
    """Where a conversation is: what came back last, what is stored, and where it may go on.

    `database` is None where no test went on from here so far.
    """

    replies: tuple[Reply, ...] = ()
    database: bytes | None = None
    ways: dict[Hashable, Place] = field(default_factory=dict)


_beginnings: dict[Hashable, Place] = {}


class Walk:
    """The way of one test, from an empty chat on.

    Parameters
    ----------
    path : Path
        The SQLite file of its house.
    beginning : hashable
        All that the answers depend on before anything is said.
    """

    def __init__(self, path: Path, beginning: Hashable) -> None:
        self._path = path
        self._place: Place | None = _beginnings.setdefault(beginning, Place())
        self._behind = False

    def known(self, step: Hashable) -> tuple[Reply, ...] | None:
        """Go a step that another test went and went on from; None where none did."""
        place = None if self._place is None else self._place.ways.get(step)
        if place is None or place.database is None:
            return None
        self._place, self._behind = place, True
        return place.replies

    def leave(self) -> None:
        """Have the file as it is at this place, before the house goes a step that may be new."""
        place = self._place
        if place is None:
            return
        if self._behind and place.database is not None:
            _lay(place.database, self._path)
            self._behind = False
        elif place.database is None:
            place.database = _lift(self._path)

    def arrive(self, step: Hashable, replies: tuple[Reply, ...]) -> None:
        """Note where the house came to by a step."""
        if self._place is not None:
            self._place = self._place.ways.setdefault(step, Place(replies))

    def end(self) -> None:
        """Be on nobody's way from here on: the test looks into its house or changes it."""
        if self._behind:
            self.leave()
        self._place = None


def _lift(path: Path) -> bytes:
    with closing(sqlite3.connect(path)) as file:
        return zlib.compress(file.serialize(), 1)


_JOURNAL = slice(18, 20)
"""Bytes of the header of a SQLite file that tell its journal: in memory there is no log beside."""


def _lay(database: bytes, path: Path) -> None:
    whole = bytearray(zlib.decompress(database))
    whole[_JOURNAL] = b"\x01\x01"
    with closing(sqlite3.connect(":memory:")) as held, closing(sqlite3.connect(path)) as file:
        held.deserialize(bytes(whole))
        file.execute("PRAGMA synchronous = OFF")
        held.backup(file)
