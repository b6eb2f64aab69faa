"""Dangers and cautions in words that nobody planned: rush, slips, half sentences, nine languages.

The tables stand in ``wordings/``. A heading ``[row] outcome, outcome`` names a row and what must
come back for each of its messages, one of: ``emergency:id``, ``refused:id``, ``caution:id`` or
``finding:id`` of a reply's facts, or ``says:words``. A line that begins with ``<`` is said before
every message of the row; a message is ``language|text``. They were written before the words of the
parser were looked at, so a row that fails is a rule that is too narrow: mend the rule.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path

import pytest

from bot.chat.model import Reply
from core.advice.forbidden import REFUSED
from tests.chat.harness import Talk

FOLDER = Path(__file__).parent / "wordings"
NAMED = ("emergency", "refused", "caution")
FORBIDDEN = {f"refused:{reason}" for reason in REFUSED}


@dataclass
class Row:
    """A row of a table: what is said before, the messages, and the outcomes that will do."""

    name: str
    outcomes: list[str]
    before: list[str] = field(default_factory=list)
    messages: list[tuple[str, str]] = field(default_factory=list)


def rows(table: str) -> list[Row]:
    """The rows of one table."""
    found: list[Row] = []
    for line in (FOLDER / f"{table}.txt").read_text(encoding="utf-8").splitlines():
        if not line or line.startswith("#"):
            continue
        if line.startswith("["):
            name, _, outcomes = line[1:].partition("]")
            found.append(Row(name, [each.strip() for each in outcomes.split(",")]))
        elif line.startswith("<"):
            found[-1].before.append(line[1:].strip())
        else:
            language, _, text = line.partition("|")
            found[-1].messages.append((language, text))
    return found


def outcomes(replies: list[Reply]) -> set[str]:
    """What came back, by the facts."""
    found = set()
    for reply in replies:
        found |= {f"{name}:{reply.facts[name]}" for name in NAMED if name in reply.facts}
        found |= {f"finding:{each['id']}" for each in reply.facts.get("findings", ())}
    return found


async def answered(talk: Talk, row: Row, text: str) -> list[Reply]:
    """Say a message in a chat of its own, behind what its row says before."""
    talk.chat = str(int(talk.chat) + 1)
    for line in row.before:
        await talk.say(line)
    return await talk.say(text)


DANGERS = rows("emergencies") + rows("cautions")


@pytest.mark.parametrize("row", DANGERS, ids=lambda row: row.name)
async def test_a_row_holds_in_other_words(talk: Talk, row: Row) -> None:
    missed = []
    for language, text in row.messages:
        replies = await answered(talk, row, text)
        said = "\n".join(reply.text for reply in replies).casefold()
        came = outcomes(replies) | {each for each in row.outcomes if each[5:].casefold() in said}
        if came.isdisjoint(row.outcomes):
            missed.append((language, text, said[:80]))
    assert not missed


@pytest.mark.parametrize("row", DANGERS, ids=lambda row: row.name)
def test_a_row_is_worded_in_four_languages(row: Row) -> None:
    assert len(row.messages) >= 5
    assert len({language for language, _ in row.messages}) >= 4


@pytest.mark.parametrize("row", rows("harmless"), ids=lambda row: row.name)
async def test_what_only_shares_the_words_is_not_refused(talk: Talk, row: Row) -> None:
    wrong = []
    for _, text in row.messages:
        came = outcomes(await answered(talk, row, text))
        if any(each.startswith(("emergency", "caution")) for each in came) or came & FORBIDDEN:
            wrong.append((text, came))
    assert not wrong
