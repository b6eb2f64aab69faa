"""Whether something is on record."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _, ngettext


def on_record(text: str) -> list[str]:
    """What was told last is on record."""
    told = _("Yes, on record: “{text}”. To take it back, send: undo")
    return [told.format(text=text.strip())]


def not_on_record() -> list[str]:
    """Nothing of late is."""
    return [_("No, nothing of late is on record. Send it again, for example: kh 4")]


def newest_on_record(texts: Sequence[str]) -> list[str]:
    """What was told before that, the newest first: whether it is what was meant is seen by it."""
    first, *rest = [text.strip() for text in texts]
    return [
        _("On record, the newest: “{text}”").format(text=first),
        *(_("Before that: “{text}”").format(text=text) for text in rest),
        _("What is not there was not stored: send that again."),
    ]


def parts_on_record(logged: int, count: int) -> list[str]:
    """How many parts of a plan are."""
    told = ngettext(
        "Yes: {logged} of {count} part is on record.",
        "Yes: {logged} of {count} parts is on record.",
        count,
    )
    return [told.format(logged=logged, count=count), _("Nothing more was logged now.")]


def how_many_grams(part: str) -> list[str]:
    """Less than a part of a plan went in: how much of it is asked."""
    told = _("How many grams of it went in? A part is {part}. Nothing is stored yet.")
    return [told.format(part=part), _("Send for example: dosed 0.5 g baking soda")]
