"""Where a line names a tank: by its name or nearly, by ``@``, by a colon behind it.

tank = name | "@" name | beginning of a name | name ":" | word somewhat like a name, at the head
"""

from __future__ import annotations

from core.message import amounts, beside_value, doubts, numbered, tanks
from core.message.clauses import Clause
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Context, Doubt
from core.message.state import Line, Statement
from core.message.tokens import Token
from core.message.waters import words
from core.message.word_classes import is_small

MOST = 12
"""Times, and tanks, that one line may have; more are no message of a keeper."""


_BEFORE_TANKS = frozenset({"in", "for", "to", "at_to"})
_OF_TANKS = frozenset({"water_change", "top_up", "filter", "fed"})
"""Events whose words are of the tank, where those of others may be of an animal (6 ferns)."""


_LABELLED = 6
"""Tokens at the head of a line that tell whether it has a label."""
_NAMES_BEFORE_COLON = {
    "mark": frozenset(
        {"adding", "up", "down", "in", "under", "more", "between", "by", "half", "quarter"}
        | {"third", "fish", "money", "likes", "uses"}
    ),
    "time": frozenset({"ago", "one"}),
    "command": frozenset({"wait", "more", "make", "its"}),
    "unit": frozenset({"cup", "bucket", "spoon", "tbsp", "tsp", "drops", "lb", "oz"}),
}
"""What means nothing of a value behind its colon: `add: kh 5` is of the tank Add."""


def of_events(tokens: list[Token], state: Statement) -> None:
    """Misspelt tanks that head a line of events, end it, or stand behind `in`."""
    _before_event(tokens)
    animals = any(t.kind == "event" and t.value not in _OF_TANKS for t in tokens)
    for index, token in enumerate(tokens):
        if token.kind != "word" or len(token.text) < 3:
            continue
        placed = index > 0 and tokens[index - 1].value in _BEFORE_TANKS
        following = tokens[index + 1] if index + 1 < len(tokens) else None
        heads = index == 0 and following is not None and following.kind in {"event", "number"}
        ends = following is None and not animals
        if placed or heads or ends:
            match = tanks.match(token.text, state.context.tanks)
            if match.name is not None:
                token.kind, token.value = "tank", match.name


def by_letter(tokens: list[Token], names: tuple[str, ...]) -> None:
    """A tank by a letter that one only begins with, or is told apart by: `q: kh 5`, `b kh 4`."""
    if len(tokens) < 3 or tokens[0].kind != "word" or len(tokens[0].text) != 1:
        return
    place = 2 if tokens[1].text == ":" else 1
    if tokens[place].kind != "analyte" or not number_ahead(tokens, place + 1):
        return
    letter = tokens[0].text
    apart = [name for name in names if fold(name).split()[-1] == letter]
    fitting = apart or [name for name in names if fold(name).startswith(letter)]
    if len(fitting) == 1:
        tokens[0].kind, tokens[0].value = "tank", fitting[0]


def label(tokens: list[Token], source: str) -> None:
    """Make a word at the head, before a colon and a value, a name: `hall: kh 6`.

    Without its accents it may be spelt like a verb of another language (håll), and a place is
    where a tank stands: neither asks anything there. An English verb as typed stays one. An
    article, an order or a way (den, add, up) says nothing of the values behind its colon, where
    a day, a water or a greeting does.
    """
    for place, head in enumerate(tokens):
        if not place or tokens[place - 1].kind == "nl":
            _label(tokens[place : place + _LABELLED], head, source)
            if head.kind == "word" and place + 1 < len(tokens) and tokens[place + 1].kind == "fill":
                behind = tokens[place + 1 : place + 1 + _LABELLED]
                _label(behind, behind[0], source)  # shrimp den: fed


def _label(tokens: list[Token], head: Token, source: str) -> None:
    if len(tokens) < 3 or head.kind in {"tank", "analyte", "number", "word"}:
        return
    colon = tokens[1].text == ":"
    done = colon and deed_at(tokens, 2)
    if not (done or _value_at(tokens, 1)) or not head.text.isalpha():
        return
    placed = head.text in numbered.places() and (colon or head.kind == "ask")
    typed = source[head.start : head.end].lower()
    if typed == head.text and (placed or (colon and _says_nothing(head))):
        head.kind, head.value = "word", None


def _says_nothing(head: Token) -> bool:
    """Whether a known word has no meaning before a colon, so that there it is a name."""
    if head.value in _NAMES_BEFORE_COLON.get(head.kind, ()):
        return True
    if "en" in lexicon().languages.get(head.text, ()):
        return False
    return head.kind == "ask" or (
        head.kind == "fill" and is_small(head.text) and not beside_value.is_opening(head.text)
    )


def _before_event(tokens: list[Token]) -> None:
    """Put a tank that stands between a word for an event and its amounts before the word.

    So `changed fern 30%` and `topped off fern with 2 l` are read as any other.
    """
    for index in range(len(tokens) - 2):
        event, tank, behind = tokens[index : index + 3]
        amount = behind.kind in {"number", "count", "fraction"} or behind.text == "with"
        if event.kind == "event" and event.value != "moved" and tank.kind == "tank" and amount:
            tokens[index], tokens[index + 1] = tank, event


def take(line: Line, name: str, index: int) -> int:
    """Note a tank at a token; the index behind it."""
    if not line.tanks and not line.begun and not line.events:
        line.tank_first = True
    done = line.events[-1][0] == len(line.clauses) - 1 if line.events else False
    if (line.clauses[-1].items or done) and line.tank_first:
        line.clauses.append(Clause())
    line.tanks.append((len(line.clauses) - 1, name))
    return index + 1


def named(tokens: list[Token], index: int, line: Line, state: Statement) -> int:
    """A tank by prefix, nearly, or one the chat does not have (`@name`, `name:`); else 0."""
    token = tokens[index]
    called = token.text == "@"
    place = index + 1 if called else index
    if len(line.tanks) >= MOST:
        return 0
    if place >= len(tokens) or not (
        tokens[place].kind in {"word", "several", "analyte"} or idle(tokens, place)
    ):
        return 0
    word = tokens[place]
    opens = not line.begun and not line.events
    colon = place + 1 < len(tokens) and tokens[place + 1].text == ":"
    ahead = tokens[place + 2] if colon and place + 2 < len(tokens) else None
    heads = (
        colon
        and index == 0
        and opens
        and (
            ahead is None
            or ahead.kind in {"analyte", "event", "time"}
            or deed_at(tokens, place + 2)
            or (ahead.kind == "number" and tanks.near(word.text, state.context.tanks) is not None)
        )
    )
    if index == 0 and not called and not colon and (last := _headed(tokens)):
        state.talk = state.talk or state.context.group
        return _stranger(tokens, 0, last, line, state)
    before = index == 0 and _number_first(tokens)
    if not (called or heads or before) and number_ahead(tokens, place + 1):
        return 0
    closes = place + 1 == len(tokens)
    placed = index > 0 and tokens[index - 1].text in {"in", "for"}
    if not (called or heads or opens or closes or placed) or len(word.text) < 2:
        return 0
    match = tanks.match(word.text, state.context.tanks) if len(word.text) > 2 else tanks.Match(None)
    written = state.source[word.start : word.end]
    state.talk = state.talk or (called and match.name is None)
    if match.name is not None:
        take(line, match.name, place)
    elif match.candidates:
        state.doubts.append(
            Doubt(
                written, word.start, word.end, doubts.AMBIGUOUS_TANK, None, None, match.candidates
            )
        )
        take(line, written, place)
    elif called or heads:
        return _stranger(tokens, place, place, line, state)
    elif before:
        return 0
    elif index == 0 and _like_a_tank(tokens, state):
        state.talk = state.talk or state.context.group
        return _stranger(tokens, place, place, line, state)
    else:
        return 0
    return place + 1


def deed_at(tokens: list[Token], place: int) -> bool:
    """Whether a deed stands here, behind its amount or without one: `30% change`."""
    for token in tokens[place : place + _LABELLED]:
        if token.kind == "event":
            return True
        if token.kind not in {
            "number",
            "unit",
            "fraction",
            "count",
            "fill",
        } and token.value not in {
            "one",
            "half",
        }:
            return False
    return False


def _number_first(tokens: list[Token]) -> bool:
    """Whether a number and its name stand behind the first word (`quarrry 8.1 ph`)."""
    return len(tokens) > 2 and tokens[1].kind == "number" and tokens[2].kind == "analyte"


def _like_a_tank(tokens: list[Token], state: Statement) -> bool:
    """Whether the first word, before a name with its number, is somewhat like a tank.

    Alone on its line, it goes before those below.
    """
    named = len(tokens) > 2 and tokens[1].kind == "analyte" and number_ahead(tokens, 2)
    named = named or (len(tokens) == 1 and "\n" in state.source[tokens[0].end :].strip(" "))
    return named and tanks.near(tokens[0].text, state.context.tanks) is not None


def _headed(tokens: list[Token]) -> int:
    """The last of two or three words before a colon at the head (`shrimp cube: ph 7`), else 0."""
    known = False
    for place, token in enumerate(tokens[:4]):
        if token.text == ":":
            ahead = tokens[place + 1].kind if place + 1 < len(tokens) else "analyte"
            headed = place > 1 and known
            headed = headed and (ahead in {"analyte", "time"} or deed_at(tokens, place + 1))
            return place - 1 if headed else 0
        known = known or token.kind == "word"
        if token.kind not in {"word", "several"} and token.value not in {"fish", "home"}:
            return 0
    return 0


def told_apart(tokens: list[Token], index: int, line: Line, state: Statement) -> int:
    """A tank told apart from others at the head (`the main tank is ph 7`): the index behind it.

    It is asked about, since which of the chat's tanks it is, if any, is not said; else 0.
    """
    first, apart = tokens[index], words().tanks["apart"]
    if line.tanks or line.events or index + 3 >= len(tokens):
        return 0
    home = first.kind != "tank" and _is_home(tokens[index + 1])
    home = home and (first.text in apart or first.text in numbered.places())
    behind = _is_home(first) and tokens[index + 1].text in apart
    if not (home or behind) or any(token.kind != "fill" for token in tokens[:index]):
        return 0
    if not _value_at(tokens, index + 2):
        return 0
    state.talk = state.talk or state.context.group
    return _stranger(tokens, index, index + 1, line, state)


def counted(tokens: list[Token], index: int, line: Line, state: Statement) -> int:
    """A tank by a word with a number (`rack 2 kh 9`, `kh 9 in rack 2`): the index behind it.

    One that is not on record is asked about, so that nothing goes to the tank in use; else 0.
    """
    if line.tanks or line.events or (last := numbered.last_of(tokens, index, state.source)) is None:
        return 0
    placed = index > 0 and tokens[index - 1].value in _BEFORE_TANKS
    ends = line.begun and placed and last + 1 == len(tokens)
    heads = not line.begun and all(
        token.kind == "fill" or token.value in _BEFORE_TANKS for token in tokens[:index]
    )
    if not ends and not (heads and _value_at(tokens, last + 1)):
        return 0
    start, end = tokens[index].start, tokens[last].end
    written = fold(state.source[start:end]).replace(" ", "")
    for name in state.context.tanks:
        if fold(name).replace(" ", "") == written:
            return take(line, name, last)
    state.talk = state.talk or state.context.group
    return _stranger(tokens, index, last, line, state)


def _value_at(tokens: list[Token], place: int) -> bool:
    """Whether a name with its number stands here, behind a word for "is" or without one."""
    while place < len(tokens) and tokens[place].value == "link":
        place += 1
    named = place + 1 < len(tokens) and tokens[place].kind == "analyte"
    return named and number_ahead(tokens, place + 1)


def _is_home(token: Token) -> bool:
    """Whether a word means a tank, be it the name of one as well."""
    if token.kind == "tank":
        return lexicon().words.get(token.text) == ("mark", "home")
    return token.value == "home"


def _stranger(tokens: list[Token], first: int, last: int, line: Line, state: Statement) -> int:
    """A tank that the chat does not have: asked, with the nearest one offered."""
    start, end = tokens[first].start, tokens[last].end
    written = state.source[start:end]
    nearest = tanks.near(written, state.context.tanks)
    rest = state.source[end : tokens[-1].end].strip(" :")
    offered = f"{nearest} {rest}" if nearest and rest else None
    state.doubts.append(Doubt(written, start, end, doubts.UNKNOWN_TANK, offered))
    take(line, written, last)
    return last + 1


def alike(tokens: list[Token], index: int, state: Statement) -> bool:
    """A word that names an analyte, and nearly a tank, before a name or alone (`fer ph 7`)."""
    alone = len(tokens) == 1
    if not state.context.tanks or not (
        alone or (index + 1 < len(tokens) and tokens[index + 1].kind == "analyte")
    ):
        return False
    word = tokens[index].text
    return len(word) > 2 and tanks.match(word, state.context.tanks).name is not None


def poses(tokens: list[Token], context: Context) -> bool:
    """Whether a known word heads a line just where a tank would and is nearly one (`kit kh 9`)."""
    if len(tokens) < 2 or tokens[1].kind not in {"analyte", "event"} or idle(tokens, 0):
        return False
    token = tokens[0]
    if token.kind not in POSING or len(token.text) < 3 or not token.text.isalpha():
        return False
    return tanks.match(token.text, context.tanks).name is not None


POSING = frozenset({"fill", "mark", "time", "command"})


def posed(tokens: list[Token], line: Line, state: Statement) -> int:
    """Ask whether such a word is the tank; with it said what follows is of no tank."""
    return _stranger(tokens, 0, 0, line, state)


def idle(tokens: list[Token], place: int) -> bool:
    """Whether a share shares nothing here: at the head, before a name (`quart kh 9`)."""
    return (
        place <= 1
        and tokens[place].value in amounts.SHARES
        and place + 1 < len(tokens)
        and tokens[place + 1].kind == "analyte"
        and number_ahead(tokens, place + 2)
    )


def number_ahead(tokens: list[Token], place: int) -> bool:
    """Whether a number stands here, behind a word for "is" or without one."""
    while place < len(tokens) and tokens[place].kind == "mark" and tokens[place].value == "link":
        place += 1
    return place < len(tokens) and tokens[place].kind in {"number", "fraction", "slashed", "dotted"}
