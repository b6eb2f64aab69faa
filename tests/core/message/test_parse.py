"""What holds for every message: nothing raises, spans are true, length is bounded."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from core.analytes import MEASURABLE
from core.message import parse, parser, plain
from core.message.model import Context, Kit
from tests.messages import corpus

LINES = [case.text for case in corpus.cases()]
WORDS = sorted({word for line in LINES for word in line.split()})


def check(text: str, *, group: bool = False) -> None:
    parsed = parse(text, corpus.context(group=group))
    for doubt in parsed.doubts:
        assert 0 <= doubt.start <= doubt.end <= len(text)
        assert text[doubt.start : doubt.end].startswith(doubt.text)
    for value in parsed.values:
        assert text[value.start : value.end]
    assert (parsed.intent == "question") == (parsed.question is not None)
    assert (parsed.intent == "command") == (parsed.command is not None)


@settings(max_examples=300)
@given(st.text(max_size=300), st.booleans())
def test_any_text_is_read(text: str, group: bool) -> None:
    check(text, group=group)


@settings(max_examples=500)
@given(
    st.lists(st.sampled_from([*WORDS, "\n", ",", "?", "/"]), max_size=25),
    st.sampled_from(["", " "]),
)
@example(["%", "120l,", ".04", "1/2"], " ")  # a doubtful time beside a word that is no name
@example(["%", "2,", "+1", "19:00"], " ")
@example(["keep", "0.06", "as", "po41", "gh"], " ")  # a name that is a basis
@example(["kh", "5.", "what", "is", "my", "name?"], " ")  # what is asked for has no name
def test_any_heap_of_known_words_is_read(words: list[str], between: str) -> None:
    check(between.join(words))


def test_the_plain_path_agrees_with_the_full_one(monkeypatch: pytest.MonkeyPatch) -> None:
    cases = list(corpus.cases())
    quick = [parse(case.text, corpus.context(group=case.group)) for case in cases]
    monkeypatch.setattr(plain, "read", lambda *_: None)
    for case, found in zip(cases, quick, strict=True):
        assert parse(case.text, corpus.context(group=case.group)) == found, case.place


def test_a_text_over_the_limit_is_cut_at_a_line_break() -> None:
    line = "kh 4\n"
    text = "x" * (parser.LIMIT - 7) + "\n" + line + "no3 123456"
    parsed = parse(text, corpus.context())
    last = parsed.doubts[-1]
    assert last.reason == "too_long"
    assert last.start <= parser.LIMIT
    assert text[last.start :].startswith(last.text)


@pytest.mark.parametrize("text", ["½" * 150, "kh 4\n" + "1/" * 150, "9 " * 250, "@" * 400 + "kh 4"])
def test_a_text_of_too_many_pieces_is_read_up_to_a_whole_one(text: str) -> None:
    last = parse(text, corpus.context()).doubts[-1]
    most = parser.ANY_TOKENS + len(text) // parser.CHARACTERS_A_TOKEN
    assert last.reason == "too_long"
    assert last.end == len(text)
    assert len(text[: last.start].replace(" ", "")) <= most


@pytest.mark.parametrize("text", ["kh 4 " + "!" * 200, "\U0001f41f" * 200, "-" * 4000])
def test_a_row_of_signs_hides_nothing(text: str) -> None:
    parsed = parse(text, corpus.context())
    assert all(doubt.reason != "too_long" for doubt in parsed.doubts)
    assert [value.canonical for value in parsed.values] == [4.0] * text.startswith("kh 4")


def test_a_full_list_of_readings_is_no_such_text() -> None:
    lines = [f"{row.id.replace('_', ' ')}: {row.low:.4g} {row.unit}" for row in MEASURABLE.values()]
    for text in ("\n".join(lines), ",".join(f"{name}:9" for name in MEASURABLE)):
        parsed = parse(text, corpus.context())
        assert all(doubt.reason != "too_long" for doubt in parsed.doubts)


def test_a_number_that_the_limit_cuts_is_never_stored() -> None:
    for shift in range(12):
        text = "kh 4 " + " " * (parser.LIMIT - 12 + shift) + "no3 12345678"
        parsed = parse(text, corpus.context())
        assert [(v.analyte, v.canonical) for v in parsed.values] == [("kh", 4.0)]
        assert parsed.doubts[-1].reason == "too_long"


def test_a_hundred_thousand_characters() -> None:
    parsed = parse("ph 7.2 " * 15000, corpus.context())
    assert parsed.doubts[-1].reason == "too_long"


def test_without_a_blank_nothing_is_read() -> None:
    assert parse("9" * 5000, corpus.context()).values == ()


@pytest.mark.parametrize(
    ("text", "canonical", "basis"),
    [
        ("kh 5 drops", 2.5, None),  # the tank's kit: half a degree a drop
        ("gh 5 drops", 5.0, None),  # no kit: one degree a drop
        ("nitrate 5", 22.134, "N"),  # the kit states N
        ("nitrate 5 as no3", 5.0, "ion"),  # what is written goes before the kit
        ("quarry kh 5 drops", 5.0, None),  # another tank, another kit
        ("no2 0.1", 0.32845, "N"),  # the chat's default kit
    ],
)
def test_kits(text: str, canonical: float, basis: str | None) -> None:
    kits = {
        "Fern": {"kh": Kit(per_drop=0.5), "nitrate": Kit(basis="N")},
        "": {"nitrite": Kit(basis="N")},
    }
    prefix = "" if text.startswith("quarry") else "fern "
    parsed = parse(prefix + text, Context(now=corpus.NOW, tanks=corpus.TANKS, kits=kits))
    assert parsed.values[0].canonical == pytest.approx(canonical, rel=1e-3)
    assert parsed.values[0].basis == basis


def test_fahrenheit_chat_asks_about_cold_numbers() -> None:
    context = Context(now=corpus.NOW, fahrenheit=True)
    assert parse("temp 36", context).doubts[0].reason == "ambiguous_unit"
    assert parse("temp 78", context).values[0].unit == "°F"
    assert parse("temp 25", context).values[0].canonical == 25.0


def test_imperial_chat() -> None:
    context = Context(now=corpus.NOW, us_gallons=False)
    assert parse("changed 10 gal", context).events[0].litres == pytest.approx(45.4609)


def test_what_is_suggested_is_understood() -> None:
    for case in corpus.cases():
        if case.group:
            continue
        for doubt in parse(case.text, corpus.context()).doubts:
            for text in (doubt.suggestion, *doubt.choices):
                if text is None or doubt.reason in {"ambiguous_tank", "no_number"}:
                    continue
                again = parse(text, corpus.context())
                sound = again.values or again.events or again.question or again.command
                assert sound, (case.text, text)
                assert not again.doubts, (case.text, text)


def test_what_yes_would_store_is_what_is_suggested() -> None:
    for case in corpus.cases():
        for doubt in parse(case.text, corpus.context()).doubts:
            if doubt.value is not None and doubt.suggestion is not None:
                again = parse(doubt.suggestion, corpus.context()).values[0]
                assert (again.analyte, again.canonical) == (
                    doubt.value.analyte,
                    pytest.approx(doubt.value.canonical, rel=1e-5),
                )
