"""How much water a tank holds: asked for, sent in litres, or worked out from lengths."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any, Final

from bot.chat.model import Reply
from bot.chat.tank_words import Described, describe
from bot.chat.turn import Turn
from bot.chat.words import buttons, general
from bot.chat.words import same_deed as same_words
from bot.chat.words import tanks as words
from bot.chat.words import volume_open as open_words
from bot.chat.words.text import _
from bot.store.offers import Choice, Offer
from bot.store.tanks import StoredTank
from core.advice import limits
from core.message.how_full import other_volume
from core.message.same_deed import as_typed

ASKED_VOLUME: Final = "asked_volume"
"""Of an offer: that it is open whether a tank holds another amount than is on record."""


async def confirm_lengths(
    turn: Turn, stored: StoredTank, text: str, wish: Mapping[str, Any] | None
) -> Reply | None:
    """Lengths in answer to how much water a tank holds; None where the text has none."""
    said = describe(f"tank {text}", us_gallons=turn.chat.us_gallons)
    return None if said.box is None else await confirm_box(turn, stored, said, wish)


ROOM: Final = "takes_room"
"""Of a question how much water stones and wood leave in a tank, which it is of."""


async def ask_volume(
    turn: Turn, stored: StoredTank, lines: list[str], wish: Mapping[str, Any] | None = None
) -> Reply:
    """Ask how much water a tank holds, and keep what was wanted until the answer comes."""
    context = {"tank_id": stored.id, "wish": dict(wish) if wish is not None else None}
    return await turn.reply(
        lines, expects="volume", context=context, facts={"refused": "volume_unknown"}
    )


async def ask_room(
    turn: Turn,
    stored: StoredTank,
    held: Mapping[str, Any],
    context: Mapping[str, Any] | None = None,
    *,
    planned: bool = True,
) -> Reply:
    """Ask how much water stones and wood leave in a tank; `held` goes with the button."""
    used = stored.tank.volume_l or 0.0
    stays = {"tank_id": stored.id, "volume_l": used, **held}
    return await turn.reply(
        open_words.takes_room(used, planned=planned),
        choices=[Choice(open_words.stays(used), "volume_stays", "", stays)],
        expects="volume",
        context={"tank_id": stored.id, "wish": None, ROOM: [stored.id, used], **(context or {})},
        facts=facts(stored),
    )


async def set_volume(turn: Turn, stored: StoredTank, volume: float) -> StoredTank | None:
    """Set a tank's net volume; None where no tank can have it."""
    if not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return None
    return await turn.change_tank(stored, volume_l=volume)


async def press_send_volume(turn: Turn, offer: Offer, choice: Choice) -> list[Reply]:
    """The keeper will send the litres."""
    stored = turn.tank_by_id(choice.arguments["tank_id"])
    if stored is None:
        return [await turn.reply(general.already())]
    return [await ask_volume(turn, stored, words.send_litres(), offer.context.get("wish"))]


async def confirm_box(
    turn: Turn, stored: StoredTank, said: Described, wish: Mapping[str, Any] | None = None
) -> Reply:
    """Ask whether the volume that lengths give is right."""
    box = said.box
    if box is None or not limits.VOLUME_SMALLEST <= box.net_l <= limits.VOLUME_LARGEST:
        return await turn.reply(words.volume_implausible(box.net_l if box else 0.0))
    volume = round(box.net_l, 1)
    held = {"tank_id": stored.id, "volume_l": volume}
    return await turn.reply(
        words.box(stored.name, box),
        choices=[
            Choice(words.box_yes(box), "set_volume", "yes", held),
            Choice(_(words.NO_LITRES), "send_volume", "no", held),
        ],
        expects="volume",
        context={"tank_id": stored.id, "wish": wish},
        facts={"tank": stored.name, "gross_l": box.gross_l, "net_l": volume},
    )


async def ask_whether(
    turn: Turn,
    stored: StoredTank,
    volume: float,
    lines: list[str] | None = None,
    beside: Mapping[str, Any] | None = None,
    no: Choice | None = None,
) -> Reply:
    """Ask whether a volume that was said alone is what a tank holds; `lines` ask it otherwise.

    `beside` is what else the question keeps, `no` what is done where it is not.
    """
    held = {"tank_id": stored.id, "volume_l": volume}
    return await turn.reply(
        lines or words.whether_volume(stored.tank, volume),
        choices=[
            Choice(words.yes_volume(volume), "set_volume", "yes", held),
            no or Choice(buttons.no(), "leave_out", "no"),
        ],
        facts=facts(stored) | {"volume_l": volume},
        context={ASKED_VOLUME: held, **(beside or {})},
    )


async def ask_volume_or_change(turn: Turn, stored: StoredTank, litres: float) -> Reply:
    """Ask what litres beside a tank's name are: its volume, or so much of it that was changed."""
    held = stored.tank.volume_l
    if held is None or litres >= held:
        return await ask_whether(turn, stored, litres)
    changed = {"text": as_typed(stored.name, "water_change", litres)}
    volume = {"tank_id": stored.id, "volume_l": litres}
    return await turn.reply(
        same_words.volume_or_change(stored.name, held, litres),
        choices=[
            Choice(same_words.was_changed(stored.name, litres), "say_again", "", changed),
            Choice(same_words.holds(stored.name, litres), "set_volume", "", volume),
        ],
        facts=facts(stored) | {"litres": litres},
    )


async def ask_of_other(turn: Turn) -> Reply | None:
    """Ask about the one other volume that was not understood; None where none is told."""
    stored = turn.current_tank
    held = None if stored is None else stored.tank.volume_l
    if stored is None or held is None:
        return None
    volume = other_volume(turn.incoming.text, held, us_gallons=turn.chat.us_gallons)
    if volume is None or not limits.VOLUME_SMALLEST <= volume <= limits.VOLUME_LARGEST:
        return None
    return await ask_whether(turn, stored, volume)


async def ask_from_now(turn: Turn, stored: StoredTank, volume: float) -> Reply:
    """Ask whether to reckon from now on with what a tank holds at the moment."""
    held = {"tank_id": stored.id, "volume_l": volume}
    return await turn.reply(
        words.whether_from_now(stored.tank, volume),
        choices=[
            Choice(words.yes_volume(volume), "set_volume", "yes", held),
            Choice(buttons.no(), "leave_out", "no"),
        ],
        facts=facts(stored) | {"told_l": volume},
        context={ASKED_VOLUME: held},
    )


def facts(stored: StoredTank) -> dict[str, Any]:
    """What a reply about a tank has as facts."""
    told: dict[str, Any] = {"tank": stored.name, "kind": stored.tank.kind}
    if stored.tank.volume_l is not None:
        told["volume_l"] = stored.tank.volume_l
    if stored.tank.setup is not None:
        told["setup"] = stored.tank.setup
    return told
