"""A line of words cut into tokens, with the roles that a vocabulary gives them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, TypeVar

from core.schedule.slips import spelt_right
from core.schedule.words.vocabulary import Role, Vocabulary, fold, split

T = TypeVar("T")
Parsed = tuple[T, int] | None
"""What a grammar function gives: the value and the index of the next token, or None."""

LONGEST_NUMBER = 6
"""A run of more digits than this is no count, day, year or hour, and is read as this many nines."""


@dataclass(frozen=True, slots=True)
class Token:
    """A run of digits, a word, or a single sign; `glued` where no space stands before it."""

    text: str
    start: int
    end: int
    glued: bool
    folded: str


class Line:
    """The tokens of a text, and the words of one language to read them by.

    Grammar functions take a line and the index of a token and give (value, index of the next
    token), or None where they do not match. They keep no state, so any of them can be tried
    anywhere.
    """

    def __init__(
        self, text: str, vocabulary: Vocabulary, tokens: tuple[Token, ...] | None = None
    ) -> None:
        self.text = text
        self.vocabulary = vocabulary
        self.tokens = tokens_of(text) if tokens is None else tokens
        self._roles: list[dict[Role, tuple[Any, int]] | None] = [None] * len(self.tokens)

    def __len__(self) -> int:
        return len(self.tokens)

    def word(self, i: int, role: Role) -> Parsed[Any]:
        """The value that the phrase at token `i` has in a role: the longest such phrase."""
        if not 0 <= i < len(self.tokens):
            return None
        roles = self._roles[i]
        if roles is None:
            roles = self._roles[i] = self._roles_at(i)
        found = roles.get(role)
        return None if found is None else (found[0], i + found[1])

    def may_begin(self, i: int) -> bool:
        """False where no grammar function can match: not a number, no phrase's first word."""
        token = self.tokens[i]
        return token.folded in self.vocabulary.phrases or self.digits(i) is not None

    def skip(self, i: int, *roles: Role) -> int:
        """The index after one phrase of any of the roles, or `i` itself."""
        for role in roles:
            found = self.word(i, role)
            if found is not None:
                return found[1]
        return i

    def digits(self, i: int) -> Parsed[str]:
        """A run of ASCII digits as written."""
        if i < len(self.tokens) and self.tokens[i].text.isascii() and self.tokens[i].text.isdigit():
            return self.tokens[i].text, i + 1
        return None

    def integer(self, i: int) -> Parsed[int]:
        """A run of digits as a number; an absurdly long one as 999999."""
        found = self.digits(i)
        if found is None:
            return None
        short = found[0] if len(found[0]) <= LONGEST_NUMBER else "9" * LONGEST_NUMBER
        return int(short), found[1]

    def sign(self, i: int, *signs: str, glued: bool = False) -> Parsed[str]:
        """One of the signs; with `glued`, only where it and what follows touch their left side."""
        if i >= len(self.tokens) or self.tokens[i].text not in signs:
            return None
        if glued and not (self.tokens[i].glued and self.is_glued(i + 1)):
            return None
        return self.tokens[i].text, i + 1

    def is_glued(self, i: int) -> bool:
        """True where token `i` follows the one before it without a space."""
        return i < len(self.tokens) and self.tokens[i].glued

    def at_end(self, i: int) -> bool:
        """True where nothing but punctuation follows."""
        return all(token.folded in ".,;:!?)" for token in self.tokens[i : i + 4]) and (
            len(self.tokens) - i <= 4
        )

    def span(self, i: int, j: int) -> tuple[int, int]:
        """The place in the text of tokens `i` up to `j`."""
        if not self.tokens or i >= len(self.tokens):
            return len(self.text), len(self.text)
        return self.tokens[i].start, self.tokens[max(i, j - 1)].end

    def _roles_at(self, i: int) -> dict[Role, tuple[Any, int]]:
        roles: dict[Role, tuple[Any, int]] = {}
        for phrase, entry in self.vocabulary.phrases.get(self.tokens[i].folded, ()):
            window = self.tokens[i : i + len(phrase)]
            if tuple(token.folded for token in window) != phrase:
                continue
            for role, value in entry.items():
                roles.setdefault(role, (value, len(phrase)))
        return roles


def first_of(line: Line, i: int, *rules: Callable[[Line, int], Parsed[T]]) -> Parsed[T]:
    """What the first grammar function that matches gives."""
    for rule in rules:
        found = rule(line, i)
        if found is not None:
            return found
    return None


def tokens_of(text: str) -> tuple[Token, ...]:
    """Cut a text into tokens."""
    tokens: list[Token] = []
    last = -1
    for word, start, end in split(text):
        tokens.append(Token(word, start, end, start == last, spelt_right(fold(word))))
        last = end
    return tuple(tokens)
