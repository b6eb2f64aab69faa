"""What could live in a water as it is: the answer."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from typing import Final

from bot.chat.words.keeping import LINES
from bot.chat.words.text import _, ngettext
from core.advice.livestock import Suited

NAMES_SHOWN: Final = 6


def could_live(
    suited: Sequence[Suited], source: str, water: Collection[str], language: str = "en"
) -> list[str]:
    """What could live in a water as it is, by company, the best suited first."""
    if not suited and not {"gh", "kh", "salinity"} & set(water):
        return [
            _(
                "Tell me GH and KH of {source} first, for example: /source {source} gh 8 kh 5"
            ).format(source=source)
        ]
    if not suited:
        return [
            _("{source} as it is suits no kind that I know.").format(source=source),
            _("Blended with RO, or hardened with salts, it can: ask what if i change 50% with ro"),
        ]
    groups: dict[str, list[str]] = {}
    for one in suited:
        groups.setdefault(one.species.group, []).append(one.species.name_in(language))
    best = sorted(groups.items(), key=lambda item: -len(item[1]))
    count = len(suited)
    head = ngettext(
        "{source} as it is suits {count} kind that I know, by its water alone; some of them:",
        "{source} as it is suits {count} kinds that I know, by its water alone; some of them:",
        count,
    )
    lines = [head.format(source=source, count=count)]
    lines += [
        _("{group}: {kinds}").format(group=_(group), kinds=", ".join(kinds[:NAMES_SHOWN]))
        for group, kinds in best[: LINES - 2]
    ]
    return [
        *lines,
        _("By hardness first; warmth, company and the size of the tank are not judged."),
    ]
