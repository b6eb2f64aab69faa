from __future__ import annotations

from datetime import timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.terminal.lines import LineError, Move, Press, Say, read_line


@pytest.mark.parametrize(
    ("line", "meaning", "why"),
    [
        ("", None, "a blank line"),
        (" \t ", None, "blank to the eye"),
        ("; kh 4", None, "a comment"),
        (";", None, "an empty comment"),
        ("kh 4 ; no3 20", Say("kh 4 ; no3 20"), "a semicolon separates values elsewhere"),
        (" ; kh 4", Say(" ; kh 4"), "only a line that starts with it is a comment"),
        ("#2", Press(2), "the second button"),
        ("#2 ", Press(2), "a stray space after it"),
        ("#12", Press(12), "two digits"),
        ("#0", Press(0), "no such button, which the session says"),
        ("#", Say("#"), "no number"),
        ("#2 please", Say("#2 please"), "words"),
        ("#\u0662", Say("#\u0662"), "other scripts' digits are words"),
        ("+90m", Move(timedelta(minutes=90)), "minutes"),
        ("+6h", Move(timedelta(hours=6)), "hours"),
        ("+3d", Move(timedelta(hours=72)), "a day is 24 h"),
        ("+2w", Move(timedelta(days=14)), "weeks"),
        ("+0m", Move(timedelta()), "what is due now"),
        ("+5", Say("+5"), "no unit"),
        ("+5M", Say("+5M"), "might be months"),
        ("kh +2", Say("kh +2"), "a question of dose"),
        ("+2h later", Say("+2h later"), "words"),
        ("yes", Say("yes"), "words"),
        ("a\x00b\x1b[2J", Say("a\x00b\x1b[2J"), "control characters go through as text"),
    ],
)
def test_a_line(line: str, meaning: object, why: str) -> None:
    assert read_line(line, group=False) == meaning, why
    assert read_line(line, group=True) == meaning, why


@pytest.mark.parametrize(
    ("line", "meaning", "why"),
    [
        (">anna: kh 4", Say("kh 4", "Anna"), "by Anna"),
        (">Anna Maria:kh 4", Say("kh 4", "Anna Maria"), "a name of two words"),
        ("> anna : note: high", Say("note: high", "Anna"), "the first colon ends the name"),
        (">anna: #2", Press(2, "Anna"), "anyone in a group can press"),
        (">anna: +3d", Say("+3d", "Anna"), "the clock is the owner's"),
        (">anna:", None, "she says nothing"),
    ],
)
def test_another_person_in_a_group(line: str, meaning: object, why: str) -> None:
    assert read_line(line, group=True) == meaning, why


@pytest.mark.parametrize("line", [">anna kh 4", ">: kh 4", ">"])
def test_nobody_named(line: str) -> None:
    with pytest.raises(LineError, match="names who speaks"):
        read_line(line, group=True)


@pytest.mark.parametrize("line", [">anna: kh 4", ">", "> 160"])
def test_another_person_without_a_group(line: str) -> None:
    with pytest.raises(LineError, match="--group"):
        read_line(line, group=False)


@given(st.text())
def test_any_other_text_is_said_as_it_is(line: str) -> None:
    if line.strip() and line[0] not in ";#+>":
        assert read_line(line, group=False) == Say(line)
