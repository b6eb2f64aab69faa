"""What can stop the start, in words for whoever started it."""

from __future__ import annotations


class StartError(Exception):
    """The program cannot start; the message says why, and goes to standard error as it is."""
