"""Which substances raise KH, and which of them lift pH too far for animals."""

from __future__ import annotations

from typing import Final

BUFFERS: Final = frozenset({"sodium bicarbonate", "potassium bicarbonate"})
STRONG: Final = frozenset(
    {
        "sodium carbonate",
        "sodium carbonate decahydrate",
        "potassium carbonate",
        "calcium hydroxide",
        "sodium hydroxide",
    }
)
"""They lift pH far too fast for a stocked fresh-water tank."""

IN_THE_SEA: Final = frozenset({"sodium carbonate decahydrate", "potassium carbonate"})
"""Those that may go into the sea, in parts under 0.3 pH."""
