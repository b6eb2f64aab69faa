"""A message is cut once for all its readers, each of which marks its own tokens."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.tokens import cut


@given(st.text(max_size=60))
def test_what_one_reader_marks_no_other_sees(text: str) -> None:
    plain = fold(text)
    before = [repr(token) for token in cut(plain, lexicon(), text)]
    for token in cut(plain, lexicon(), text):
        token.kind, token.value = "fill", "marked"
    assert [repr(token) for token in cut(plain, lexicon(), text)] == before


def test_the_same_letters_typed_otherwise_are_cut_anew() -> None:
    small = cut("e", lexicon(), "e")
    accented = cut("e", lexicon(), "è")  # is, in Italian
    assert [token.value for token in small] == ["and"]
    assert [token.value for token in accented] == ["link"]


def test_no_more_pieces_than_asked_for_are_cut() -> None:
    whole = cut("kh 4 gh 6 ph 7", lexicon())
    part = cut("kh 4 gh 6 ph 7", lexicon(), most=2)
    assert len(whole) == 6
    assert [token.text for token in part] == ["kh", "4"]
