"""The one way in which files of words are written."""

from __future__ import annotations

import pytest

from core.message.wordfile import alternatives, entries


def test_entries_carry_their_section_and_notes_are_left_out() -> None:
    text = "# of waters\n[water]\nro = ro water, osmosis  # pure\n\n[share]\n0.5 = half\n"
    assert list(entries(text, "w.txt")) == [
        ("water", "ro", "ro water, osmosis"),
        ("share", "0.5", "half"),
    ]


@pytest.mark.parametrize("line", ["no equals", "[other]\na = b"])
def test_a_line_that_is_no_entry_is_named_with_its_file(line: str) -> None:
    with pytest.raises(ValueError, match=r"w\.txt line [23]"):
        list(entries(f"[water]\n{line}\n", "w.txt", {"water"}))


def test_alternatives_stand_between_commas() -> None:
    assert alternatives(" half , the half,, ") == ["half", "the half"]
