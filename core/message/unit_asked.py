"""``25 french to german degrees``, ``1.024 in ppt``, ``1 tsp baking soda grams``."""

from __future__ import annotations

from typing import Final

from core.message.amounts import SPOONS
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.plan_said import LONGEST_TEXT
from core.message.tokens import cut
from core.message.word_classes import Said, said

FILE: Final = "unit_asked.txt"

HARD: Final = {
    "german": "°dH", "french": "°fH", "english": "°e", "ppm": "ppm", "meq": "meq/L",
    "mmol": "mmol/L", "gpg": "gpg",
}  # fmt: skip
SALT: Final = {"sg": "SG", "ppt": "g/kg"}
WARM: Final = {"celsius": "°C", "fahrenheit": "°F"}

GRAVITY: Final = (0.99, 1.05)
"""A bare number between these is a specific gravity."""


def unit_asked(text: str) -> Question | None:
    """The question for a number in another unit; None where a text asks none, or says more.

    Spoons are asked in grams, or grams in spoons, of the one substance that is named.

    Examples
    --------
    >>> found = unit_asked("25 french to german degrees")
    >>> found.value, found.unit, found.to_unit
    (25.0, '°fH', '°dH')
    >>> unit_asked("3 meq to kh").to_unit, unit_asked("1.024 in ppt").unit
    ('°dH', 'SG')
    >>> unit_asked("1 tsp baking soda grams").spoons, unit_asked("kh 3 meq") is None
    (1.0, True)
    """
    if len(text) > LONGEST_TEXT:
        return None
    plain = " ".join(fold(text).split())
    named = [token for token in cut(plain, lexicon(), plain) if token.kind == "substance"]
    rest = plain
    for token in reversed(named):
        rest = f"{rest[: token.start]} it {rest[token.end :]}"
    told = said(FILE, rest)
    if told is None or len(told.numbers) > 1:
        return None
    if named:
        return _spoons(text, told, [str(token.value) for token in named])
    return None if not told.numbers else _between(text, told)


def _between(text: str, told: Said) -> Question | None:
    ((value, unit),) = told.numbers
    behind = told.classes[told.classes.index("number") + 1 :]
    before = told.classes[: told.classes.index("number")]
    wanted = [each for each in behind if each in {*HARD, *SALT, *WARM}]
    analyte = next((each for each in (*before, *behind) if each in {"kh", "gh"}), None)
    if unit is None and len(before) == 1 and before[0] in SALT:
        unit = before[0]  # sg 1.024 to ppt
    if unit is None and len(wanted) == 1 and GRAVITY[0] <= value <= GRAVITY[1]:
        unit = "sg" if wanted == ["ppt"] else None
    if not wanted and behind[-1:] in (("kh",), ("gh",)) and "to" in behind and unit in HARD:
        wanted = ["german"]  # 3 meq to kh
    if "to" not in behind or unit is None or len(wanted) != 1:
        return None
    to = wanted[0]
    if unit in HARD and to in HARD and (analyte is not None or "mmol" not in {unit, to}):
        return Question(
            "convert", analyte=analyte, value=value, unit=HARD[unit], to_unit=HARD[to], text=text
        )
    for units, of in ((SALT, "salinity"), (WARM, "temperature")):
        if unit in units and to in units and unit != to:
            return Question(
                "convert", analyte=of, value=value, unit=units[unit], to_unit=units[to], text=text
            )
    return None  # a mmol/L of hardness is twice one of alkalinity


def _spoons(text: str, told: Said, named: list[str]) -> Question | None:
    """Spoons of a substance in grams, or grams in spoons: of that no number is to be told."""
    if len(set(named)) != 1:
        return None
    value, unit = told.numbers[0] if told.numbers else (None, None)
    if unit in SPOONS and value is not None and "gram" in told.classes:
        return Question(
            "convert", substance=named[0], spoons=value * SPOONS[unit], unit=unit, to_unit="g",
            text=text,
        )  # fmt: skip
    if unit == "gram" and "spoon" in told.classes:
        return Question("convert", substance=named[0], grams=value, to_unit="tsp", text=text)
    if value is None and told.has("spoon", "gram") and "one" in told.classes:
        return Question(
            "convert", substance=named[0], spoons=1.0, unit="tsp", to_unit="g", text=text
        )
    return None
