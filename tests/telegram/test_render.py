"""Replies as Telegram's HTML: held to the parser of the strict local server."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.chat.model import Button, Line, Reply
from bot.telegram.render import LONGEST_TEXT, keyboard, pages, to_html, to_plain, units
from tests.botapi.markup import parse_html, utf16_length

LINES = st.lists(
    st.builds(Line, st.text(max_size=40), st.sampled_from(["plain", "strong", "quiet"])),
    max_size=5,
)
LONG = st.lists(
    st.builds(
        Line,
        st.text(st.sampled_from("ab \n\N{FISH}<&"), max_size=300).map(lambda text: text * 30),
        st.sampled_from(["plain", "strong"]),
    ),
    min_size=1,
    max_size=4,
)
MORE = Button("more", "1:more", "more")


def test_emphasis_and_escaping() -> None:
    lines = [Line("KH 4 < 6 & rising", "strong"), Line("<b>net</b> volume", "quiet"), Line("ok")]
    assert to_html(lines) == (
        "<b>KH 4 &lt; 6 &amp; rising</b>\n<i>&lt;b&gt;net&lt;/b&gt; volume</i>\nok"
    )


@given(LINES)
def test_any_text_is_taken_and_shown_as_it_is(lines: list[Line]) -> None:
    shown, _ = parse_html(to_html(lines))
    assert shown == to_plain(lines)
    shown.encode()


def test_what_no_screen_shows_is_replaced() -> None:
    assert to_html([Line("a\x00\x1b[31m\ud800\tb")]) == "a\ufffd\ufffd[31m\ufffd\tb"


def test_a_short_reply_is_one_page() -> None:
    reply = Reply((Line("kh 4"),), (MORE,), token=7)
    assert pages(reply) == [reply]


@settings(max_examples=60)
@given(LONG)
def test_pages_fit_and_lose_nothing_but_blanks(lines: list[Line]) -> None:
    whole = Reply(tuple(lines), (MORE,), token=7, edits="5")
    split = pages(whole)
    for page in split:
        shown, _ = parse_html(to_html(page.lines))
        assert utf16_length(shown) <= LONGEST_TEXT
    blank = not whole.text.strip()
    assert blank or all(page.text.strip() for page in split)
    kept = "".join("".join(page.text.split()) for page in split)
    assert kept == "".join(whole.text.split())
    assert [page.buttons for page in split] == [()] * (len(split) - 1) + [(MORE,)]
    assert [page.token for page in split] == [None] * (len(split) - 1) + [7]
    assert [page.edits for page in split] == ["5"] + [None] * (len(split) - 1)


def test_pages_break_at_line_breaks() -> None:
    lines = tuple(Line(f"{number} {'x' * 1000}") for number in range(9))
    split = pages(Reply(lines))
    assert [len(page.lines) for page in split] == [4, 4, 1]
    assert tuple(line for page in split for line in page.lines) == lines


def test_a_line_too_long_for_any_message_breaks_at_blanks() -> None:
    (first, second) = pages(Reply((Line("word " * 1000, "strong"),)))
    assert first.text.endswith("word")
    assert second.text.startswith("word")
    assert second.lines[0].emphasis == "strong"


def test_a_picture_takes_a_short_text_along_and_goes_before_a_long_one() -> None:
    short = Reply((Line("kh"),), (MORE,), picture="x.png")
    assert pages(short) == [short]
    long = Reply((Line("k" * 1025),), (MORE,), picture="x.png", token=7)
    first, second = pages(long)
    assert (first.picture, first.lines, first.buttons, first.token) == ("x.png", (), (), None)
    assert (second.picture, second.text, second.buttons) == (None, "k" * 1025, (MORE,))


def test_a_picture_and_a_document_are_two_messages() -> None:
    both = Reply((Line("kh"),), (MORE,), picture="x.png", document="x.csv")
    first, second = pages(both)
    assert (first.picture, first.document, first.text) == ("x.png", None, "kh")
    assert (second.picture, second.document, second.buttons) == (None, "x.csv", (MORE,))


def test_every_file_of_a_long_reply_is_sent_once() -> None:
    split = pages(Reply((Line("k" * 1025),), (MORE,), picture="x.png", document="x.csv"))
    assert [page.picture for page in split if page.picture] == ["x.png"]
    assert [page.document for page in split if page.document] == ["x.csv"]
    assert split[-1].buttons == (MORE,)


@pytest.mark.parametrize(
    ("labels", "rows", "why"),
    [
        (["done", "in 1 hour", "this evening"], [3], "three short ones side by side"),
        (["done", "in 1 hour", "this evening", "tomorrow", "skip"], [3, 2], "three a row at most"),
        (["remind me to retest in 24 h", "log it"], [2], "as wide as a row"),
        (["remind me to retest in 24 h", "log this dose"], [1, 1], "too wide for one"),
        (["x" * 60, "y"], [1, 1], "wider than a row"),
    ],
)
def test_keyboards(labels: list[str], rows: list[int], why: str) -> None:
    made = keyboard([Button(label, f"1:{label[:9]}") for label in labels])
    assert made is not None
    grid = json.loads(made)["inline_keyboard"]
    assert [len(row) for row in grid] == rows, why
    assert [button["text"] for row in grid for button in row] == labels


def test_no_buttons_no_keyboard() -> None:
    assert keyboard(()) is None


@given(st.text())
def test_length_is_counted_as_telegram_counts_it(text: str) -> None:
    assert units(text) == utf16_length(text) == len(text.encode("utf-16-le", "surrogatepass")) // 2
