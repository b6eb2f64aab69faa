"""Standard streams that are closed, or that nobody reads any more."""

from __future__ import annotations

import os
import sys


def stand_in_for_closed() -> None:
    """Let a closed standard stream be the null device: the next file opened would get its number.

    That file is the database, and what is printed would be written into it.
    """
    for descriptor in range(3):
        try:
            os.fstat(descriptor)
        except OSError:
            os.open(os.devnull, os.O_RDWR)  # takes the lowest free number, which is this one
    sys.stdout = sys.stdout or os.fdopen(1, "w", closefd=False)
    sys.stderr = sys.stderr or os.fdopen(2, "w", closefd=False)


def leave_output() -> None:
    """Let the interpreter's last flush go nowhere: whoever read our output has left."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
