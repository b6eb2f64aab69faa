"""How long and how far back what was said before is still spoken of."""

from __future__ import annotations

from datetime import timedelta
from typing import Final

LOOKED_AT: Final = 12
"""Latest offers among which a typed word finds its button."""

PATIENCE: Final = timedelta(hours=12)
GROUP_PATIENCE: Final = timedelta(minutes=15)
"""How long a bare yes or no is about our question; people say both to each other in a group."""
