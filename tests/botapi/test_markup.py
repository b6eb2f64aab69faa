"""HTML as Telegram takes it: "HTML style" in the Bot API's documentation."""

from __future__ import annotations

import html

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.botapi.markup import MarkupError, parse_html

GOOD = [
    ("plain", "plain", [], "no markup"),
    ("<b>a</b>b", "ab", [("bold", 0, 1)], "one entity"),
    ("<b>a<i>b</i></b>", "ab", [("bold", 0, 2), ("italic", 1, 1)], "nested"),
    ("1 &lt; 2 &amp; 3 &gt; 2 &quot;", '1 < 2 & 3 > 2 "', [], "the four named entities"),
    ("&#39;&#x1F41F;", "'\N{FISH}", [], "numeric references"),
    ("\N{FISH}<b>a</b>", "\N{FISH}a", [("bold", 2, 1)], "offsets count UTF-16 units"),
    ('<a href="https://example.org/?a=1">x</a>', "x", [("text_link", 0, 1)], "a link"),
    ('<span class="tg-spoiler">x</span>', "x", [("spoiler", 0, 1)], "a spoiler"),
    ("<b></b>x", "x", [], "an empty entity is dropped"),
]
BAD = [
    ("a < b", "Unsupported start tag", "a bare less-than"),
    ("<blink>x</blink>", 'Unsupported start tag "blink"', "no such tag"),
    ("<br/>", "Unsupported start tag", "no line break tag"),
    ("<b>x", 'Can\'t find end tag corresponding to start tag "b"', "never closed"),
    ("x</b>", "Unexpected end tag at byte offset 1", "never opened"),
    ("é<b><i>x</b></i>", 'expected "</i>", found "</b>"', "crossed"),
    ("salt & water", "Unescaped '&' at byte offset 5", "a bare ampersand"),
    ("a&nbsp;b", 'Unsupported entity "&nbsp;"', "HTML's other names are not taken"),
    ("<span>x</span>", "tg-spoiler", "a span means a spoiler or nothing"),
    ("&#0;", "Invalid character reference", "no NUL"),
]


@pytest.mark.parametrize(("source", "plain", "entities", "why"), GOOD)
def test_good_html(source: str, plain: str, entities: list[tuple[str, int, int]], why: str) -> None:
    text, found = parse_html(source)
    assert text == plain, why
    assert [(e["type"], e["offset"], e["length"]) for e in found] == entities, why


@pytest.mark.parametrize(("source", "words", "why"), BAD)
def test_bad_html(source: str, words: str, why: str) -> None:
    with pytest.raises(MarkupError) as caught:
        parse_html(source)
    assert words in str(caught.value), why


@given(st.text(alphabet=st.characters(exclude_categories=["Cs"])))
def test_escaped_text_comes_back_whole(text: str) -> None:
    assert parse_html(html.escape(text)) == (text, [])
