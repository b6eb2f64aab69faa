"""Words that mean different things in different languages, decided by what is beside them."""

from __future__ import annotations

from core.message.lexicon import Entry, Lexicon
from core.message.token import Token


def copulas(tokens: list[Token], source: str) -> None:
    """Tell apart what only the accent does: è and é is "is", not "and"; ça is no calcium."""
    for token in tokens:
        if token.text == "ca" and source[token.start : token.end].lower() == "ça":
            token.kind = token.value = "fill"
        elif token.text == "e" and source[token.start] in "èéÈÉ" and token.value == "and":
            token.value = "link"


def resolved(tokens: list[Token], words: Lexicon, source: str) -> list[Token]:
    """Words that mean different things in different languages, decided by what is beside them.

    A unit behind a number and a day before a clock time are what they are. Else the accents as
    written decide (à is not a), else the languages of the other words: each votes for its
    languages, and more the fewer it has. With no vote at all the English meaning is taken; a tie
    leaves the word as ``several``, which no grammar takes.
    """
    for token in tokens:
        if token.kind == "several":
            break
    else:
        return tokens
    votes: dict[str, float] = {}
    for token in tokens:
        languages = words.languages.get(token.text, ()) if token.kind != "several" else ()
        for language in languages:
            votes[language] = votes.get(language, 0.0) + 1.0 / len(languages)
    votes.pop("common", None)
    for index, token in enumerate(tokens):
        if token.kind == "several":
            name = str(token.value)
            meanings = words.several[name]
            written = words.written.get((name, source[token.start : token.end].lower()))
            entry = _by_place(tokens, index, meanings)
            if entry is None and written is not None:
                language, entry = written
                votes[language] = votes.get(language, 0.0) + 1.0
            if entry is not None:
                token.kind, token.value = entry
    elected: dict[str, Entry | None] = {}
    for token in tokens:
        if token.kind == "several":
            name = str(token.value)
            if name not in elected:
                elected[name] = _elected(words.several[name], votes)
            entry = elected[name]
            if entry is not None:
                token.kind, token.value = entry
    return tokens


def _by_place(
    tokens: list[Token], index: int, meanings: tuple[tuple[str, Entry], ...]
) -> Entry | None:
    """The meaning that the neighbours leave no doubt about."""
    number = index > 0 and tokens[index - 1].kind in {"number", "fraction", "slashed", "dotted"}
    clock = index + 1 < len(tokens) and tokens[index + 1].kind == "clock"
    following = tokens[index + 1].kind if index + 1 < len(tokens) else ""
    if index + 2 < len(tokens) and following == "number":
        clock = tokens[index + 2].text in {"h", "uhr", "uur"}
    if any(entry == _ORDINAL for _, entry in meanings):  # 8th, or the French TH 12
        glued = number and tokens[index - 1].end == tokens[index].start
        return next(entry for _, entry in meanings if (entry == _ORDINAL) == glued)
    if number and following in {"number", "count"}:
        for _, entry in meanings:
            if entry == ("time", "at"):
                return entry  # "kh 5 um zehn" has no micrometres
    for _, entry in meanings:
        if entry[0] == "count" and index + 1 < len(tokens) and tokens[index + 1].value == "hour":
            return entry  # "sept heures" is no September
        if number and (entry[0] == "unit" or (entry[1].startswith("month") and entry[1][5:])):
            return entry
        if clock and entry[0] == "time" and entry[1] in _DAYS:
            return entry
        if entry == ("time", "at") and following in {"dotted", "iso"}:
            return entry
        ends = index + 1 == len(tokens) and tokens[max(index - 2, 0)].kind == "number"
        if entry == ("event", "lost") and ends and index:
            return entry  # "2 garnelen tot", "2 tot" is no range
        if entry == ("ask", "dose") and following == "analyte" and index == 0:
            return entry  # "dos kh 8" is no two
        if (
            entry == ("mark", "to")
            and following == "number"
            and tokens[index - 1].kind == "analyte"
        ):
            return entry  # "subir kh para 5" is no volume
        if entry == ("mark", "and") and following == "analyte" and number:
            return entry
    return None


_ORDINAL = ("time", "ordinal")
_DAYS = frozenset("yesterday mon tue wed thu fri sat sun".split())  # noqa: SIM905


def _elected(meanings: tuple[tuple[str, Entry], ...], votes: dict[str, float]) -> Entry | None:
    scores: dict[Entry, float] = {}
    for language, entry in meanings:
        scores[entry] = max(scores.get(entry, 0.0), votes.get(language, 0.0))
    best = max(scores.values())
    winners = [entry for entry, score in scores.items() if score == best]
    if len(winners) == 1:
        return winners[0]
    for language, entry in meanings:
        if language in {"common", "en"} and entry in winners:
            return entry
    return None
