"""``how many changes of 30% till gh 8``: a share of the water, and the value to reach."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import cache
from typing import Final

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.tokens import cut
from core.message.wordfile import spelt
from core.water.substances import SUBSTANCES

OF_WATER: Final = ("nitrate", "gh", "kh", "phosphate", "salinity")
"""What a change of water is counted for: it mixes by amounts."""

LITRES: Final = "L"


@cache
def _words() -> dict[str, re.Pattern[str]]:
    return {
        meaning: re.compile(rf"(?<!\w)(?:{'|'.join(map(re.escape, ways))})(?!\w)")
        for _section, meaning, ways in spelt("change_count.txt", {"count"})
    }


def counted(question: Question) -> Question | None:
    """The question how many changes of a share reach a value, of whatever kind it was read.

    Parameters
    ----------
    question : Question
        As read; a share in percent, or the litres of one change.

    Returns
    -------
    Question or None
        Of kind change with `analyte`, `target` and either `percent` or `litres`; None where no
        count is asked.

    Examples
    --------
    >>> asked = Question("dose", analyte="gh", target=8.0, percent=30.0, substance="wechsel",
    ...                  text="wie viele wechsel von 30% bis gh 8")
    >>> counted(asked).kind, counted(asked).substance
    ('change', None)
    >>> counted(Question("change", percent=30.0, text="what if i change 30%")) is None
    True
    """
    if question.analyte not in OF_WATER or question.substance in SUBSTANCES:
        return None
    litres = question.litres or (question.volume_l if question.percent is None else None)
    held = question.premises.get(question.analyte)
    target = next((n for n in (question.target, held, question.start_value) if n is not None), None)
    if target is None or not (question.percent or litres) or not _asks_count(question, litres):
        return None
    others = {of: value for of, value in question.premises.items() if of != question.analyte}
    volume = None if litres is not None else question.volume_l
    return replace(
        question, kind="change", target=target, litres=litres, volume_l=volume,
        start_value=None, substance=None, premises=others,
    )  # fmt: skip


def _asks_count(question: Question, litres: float | None) -> bool:
    """Whether changes are counted: how many of them, or of a share how often, in how many days."""
    text = question.text or ""
    plain = fold(text)
    words = _words()
    many = any(token.value == "how_much" for token in cut(plain, lexicon(), text))
    if many and words["changes"].search(plain) is not None:
        return True
    return litres is None and words["often"].search(plain) is not None
