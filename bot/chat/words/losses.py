"""What is said where animals died."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.text import _


def lost(cause: str | None, missing: Sequence[str]) -> list[str]:
    """The cause that is known, then what to look at before anything else.

    Parameters
    ----------
    cause : str or None
        What the last readings show to be wrong.
    missing : sequence of str
        Analytes that nobody read just now.
    """
    lines = [] if cause is None else [cause]
    if missing:
        asked = names.listed([names.label(each) for each in missing])
        told = _("Test {what} now, remove the dead, and look at any others.")
        return [*lines, told.format(what=asked)]
    if cause is None:
        lines.append(
            _("The last readings show no cause: test oxygen, chlorine and copper as well.")
        )
    return [*lines, _("Remove the dead, and look at any others.")]
