"""The wording of plans, changes and calls for help, read as a whole in a golden file.

Figures are checked elsewhere; here a change of any word shows in a diff. Lines that begin with ~
are said without looking at the answer, which is another topic's. To accept new wording:

    python -m tests.chat.test_plan_words
"""

from __future__ import annotations

import asyncio
import tempfile
from pathlib import Path

from tests.chat.harness import talking

FOLDER = Path(__file__).parent / "golden"
SAID = FOLDER / "plans_said.txt"
ANSWERED = FOLDER / "plans.txt"


async def transcript(folder: Path) -> str:
    """All that was said, and all that came back, with its buttons."""
    lines = []
    async with talking(folder) as talk:
        for text in SAID.read_text(encoding="utf-8").splitlines():
            if text.startswith("~"):
                await talk.say(text[1:])
                continue
            lines.append(f"> {text}")
            for reply in await talk.say(text):
                lines += [f"  {line.text}" for line in reply.lines]
                if reply.buttons:
                    lines.append(f"  [{' | '.join(button.label for button in reply.buttons)}]")
            lines.append("")
    return "\n".join(lines)


async def test_wording_is_as_it_was_read(tmp_path: Path) -> None:
    assert await transcript(tmp_path) == ANSWERED.read_text(encoding="utf-8")


async def test_no_answer_is_longer_than_six_lines(tmp_path: Path) -> None:
    for block in (await transcript(tmp_path)).split("\n\n"):
        if block.startswith("> more"):
            continue
        spoken = [line for line in block.splitlines()[1:] if not line.startswith("  [")]
        assert len(spoken) <= 6, block


def accept() -> None:
    """Write the golden file anew."""
    with tempfile.TemporaryDirectory() as folder:
        ANSWERED.write_text(asyncio.run(transcript(Path(folder))), encoding="utf-8")


if __name__ == "__main__":
    accept()
