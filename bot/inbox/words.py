"""What the inbox itself says, where the conversation could not."""

from __future__ import annotations

from dataclasses import replace

from bot.chat.model import Line, Reply
from bot.chat.words.text import _


def failed(reference: str) -> Reply:
    """Say that a message could not be handled, with what to quote to the operator."""
    return Reply(
        lines=(
            Line(_("Sorry, something went wrong on my side and I stored nothing of that message.")),
            Line(
                _("Please say it another way, or quote {reference} to whoever runs me.").format(
                    reference=reference
                ),
                "quiet",
            ),
        )
    )


def undeliverable(reference: str) -> Reply:
    """Say that the message was understood and its answer cannot be shown."""
    return Reply(
        lines=(
            Line(_("I took note of your message, but my answer to it cannot be shown here.")),
            Line(
                _("Please quote {reference} to whoever runs me.").format(reference=reference),
                "quiet",
            ),
        )
    )


def maybe_repeat(reply: Reply) -> Reply:
    """Mark a reply that may have arrived before; one that edits in place does no harm twice."""
    if reply.edits is not None:
        return reply
    note = Line(_("You may see this answer twice: the line broke as I sent it."), "quiet")
    return replace(reply, lines=(*reply.lines, note))
