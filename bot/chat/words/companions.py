"""Who goes with a kind, and what a kind asks of its keeper beside good water."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words.text import N_, _
from core.advice.livestock import Species

GROUPS: Final = 3
NAMES_SHOWN: Final = 6
"""Lines of kinds, and kinds in a line."""


def demands(kind: Species, name: str) -> list[str]:
    """What a kind asks of its keeper beside good water."""
    return [_(_DEMANDS[demand]).format(name=name) for demand in kind.demands]


_DEMANDS: Final[Mapping[str, str]] = {
    "live_food": N_("{name}: small live food several times a day; many starve without."),
    "feeding": N_("{name}: many take no food in a tank and starve."),
    "mature": N_("{name}: only for a tank that has run steadily for half a year or more."),
    "light": N_("{name}: strong light, as a reef has it."),
    "calm": N_("{name}: no quick or lively company, which takes the food away."),
}
"""Common practice, no source."""


def companions(name: str, kinds: Sequence[Species], language: str = "en") -> list[str]:
    """Who goes with a kind, as far as the table tells."""
    if not kinds:
        return [
            _("I know nobody of whom nothing speaks against living with {name}.").format(name=name),
            _("Ask of one kind, for example: can i keep neons with {name}").format(name=name),
        ]
    groups: dict[str, list[str]] = {}
    for row in kinds:
        groups.setdefault(row.group, []).append(row.name_in(language))
    lines = [_("By water and manners these go with {name}, for example:").format(name=name)]
    lines += [
        _("{group}: {kinds}").format(group=_(group), kinds=", ".join(of[:NAMES_SHOWN]))
        for group, of in list(groups.items())[:GROUPS]
    ]
    return [*lines, _("Their number and each one's temper are not judged; few at a time.")]
