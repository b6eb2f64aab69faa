"""From ``livestock.toml``, which people edit, to ``livestock.json``, which is read at work.

Reading the edited table and indexing its names takes a hundred milliseconds; what stands here is
that work done beforehand. After an edit: ``python -m core.advice._livestock_compile >
core/advice/livestock.json``; a test holds the two together.
"""

from __future__ import annotations

import json
import sys
import tomllib
from collections import defaultdict
from collections.abc import Iterator, Mapping
from importlib.resources import files
from typing import Any, Final

from core.advice._livestock_words import WORD_LONG_ENOUGH, joined, plain_name, stem

INDEXES: Final = ("names", "stems", "words", "heads")


def compiled() -> str:
    """The table as it is read at work, with the places of rows by name; a row a line."""
    text = files("core.advice").joinpath("livestock.toml").read_text(encoding="utf-8")
    raw = tomllib.loads(text)
    rows = raw["species"]
    lines = ",\n".join(_json(row) for row in rows)
    indexes = ",\n".join(
        f'"{of}": {_json(index)}' for of, index in _indexes(rows, raw["called"]).items()
    )
    heads = ",\n".join(f'"{of}": {_json(raw[of])}' for of in ("sources", "group"))
    return f'{{{heads},\n{indexes},\n"species": [\n{lines}\n]}}\n'


def _indexes(
    rows: list[dict[str, Any]], called: Mapping[str, list[str]]
) -> dict[str, dict[str, list[int]]]:
    """Places of rows by joined name, by stem, and by the stem of one word of their names.

    The heads are words for several kinds (shrimp, Garnelen): `called` lists them by the English.
    """
    found: dict[str, defaultdict[str, list[int]]] = {of: defaultdict(list) for of in INDEXES}

    def note(index: str, key: str, place: int) -> None:
        if place not in found[index][key]:
            found[index][key].append(place)

    for place, row in enumerate(rows):
        for name in _all_names(row):
            plain = plain_name(name)
            note("names", joined(plain), place)
            note("stems", stem(plain), place)
            for word in plain.split():
                if len(word) >= WORD_LONG_ENOUGH:
                    note("words", stem(word), place)
    for english, others in called.items():
        for word in (english, *others):
            for place in found["words"][stem(english)]:
                note("heads", plain_name(word), place)
    return {of: dict(index) for of, index in found.items()}


def _all_names(row: Mapping[str, Any]) -> Iterator[str]:
    yield row["scientific"]
    for names in row["names"].values():
        yield from names
    if "fishbase" in row:
        yield row["fishbase"]["name"]


def _json(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


if __name__ == "__main__":
    sys.stdout.reconfigure(encoding="utf-8")  # type: ignore[union-attr]
    sys.stdout.write(compiled())
