"""What a salt is for."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.text import _


def raises(name: str, raised: Sequence[str], missing: Sequence[str], *, kh: bool) -> list[str]:
    """What a salt raises and what not; `missing` is the half of hardness that it has none of."""
    shown = ", ".join(names.analyte(analyte) for analyte in raised)
    salt = names.said(name)
    lines = [_("{salt} raises {analytes}.").format(salt=salt.capitalize(), analytes=shown)]
    if missing:
        told = _("It brings no {ion}: GH is calcium and magnesium, and animals need both.")
        lines.append(told.format(ion=names.analyte(missing[0])))
    if not kh:
        lines.append(_("It raises no KH, so it does not hold pH."))
    ask = _("How much, I work out in safe steps. Ask: dose {analyte} +1 with {salt}")
    return [*lines, ask.format(analyte=names.said(raised[0]), salt=salt)]
