"""What went into a bucket or to another place, in words."""

from __future__ import annotations

from bot.chat.words.text import _


def not_of_tank(tank: str | None, asks: str | None) -> list[str]:
    """It is on no tank's record; what asks for its effect, with the bucket's own litres."""
    lines = [
        _("That went into water apart: nothing is stored, no tank was dosed.")
        if tank is None
        else _("That went into water apart: nothing is stored for {tank}.").format(tank=tank),
    ]
    if asks is not None:
        lines.append(_("What it makes, with your litres: {asks}").format(asks=asks))
    lines.append(
        _(
            "Stir, let it clear, check GH, KH and pH before it goes in; tell me the change"
            " when it is made."
        )
    )
    return lines


def elsewhere(tank: str | None) -> list[str]:
    """What went to another place is on no tank's record; what got in all the same is to be told."""
    return [
        _("That went elsewhere: nothing is stored, no tank was dosed.")
        if tank is None
        else _("That went elsewhere: nothing is stored for {tank}.").format(tank=tank),
        _(
            "If some of it got into the water, tell me how much, for example: put in 2 g baking"
            " soda"
        ),
    ]
