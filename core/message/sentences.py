"""Where a question stands in a message: its word of asking and the sentence around it."""

from __future__ import annotations

from itertools import pairwise

from core.message import judged
from core.message.amounts import SHARES
from core.message.lexicon import lexicon
from core.message.shortforms import ENDS, VERB_FIRST
from core.message.tokens import Token

_PAUSES = ENDS | {",", ":"}
_OPENING_ONLY = frozenset(
    {
        "reach",
        "keep",
        "change",
        "convert",
        "dose",
        "history",
        "raise",
        "help",
        "status",
        "renew",
        "explain",
    }
)


def asking(tokens: list[Token]) -> int | None:
    """The index of the word of asking; weak ones count only where a sentence begins."""
    kinds: set[str] = set()
    for index, token in enumerate(tokens):
        if token.kind == "command" and token.value == "why" and len(tokens) > 1:
            return index
        if token.kind != "ask":
            continue
        kinds = kinds or {other.kind for other in tokens}
        if token.value == "current" and not _names_one(tokens, index):
            continue  # "kh 5. what is my name?"
        if token.value in {"status", "renew"} and not _all_known(tokens, index):
            continue  # "how are you", "how is the shop today"
        if token.value == "often" and not {"analyte", "number"} <= kinds:
            continue  # "how often do they eat"
        if token.value == "ready" and not (len(token.text.split()) > 2 or _turned(tokens)):
            continue  # "the tank is cycled" tells it
        if token.value == "explain" and ("number" in kinds or "analyte" not in kinds):
            continue
        if token.value == "reach" and not (_heads(tokens, index) and _aims(tokens, index)):
            continue  # "get well soon", "i get kh 4"
        if token.value == "pace" and ("analyte" not in kinds or "substance" in kinds):
            continue  # "how fast do they grow", "how fast does coral raise kh"
        if token.text == "what is" and kinds.isdisjoint({"analyte", "unit", "number"}):
            continue  # "what is wrong with my fish"
        if _is_whole(token):
            return index
        if token.value not in _OPENING_ONLY or _opens(tokens, index) or _purpose(tokens, index):
            return index
        if token.value == "keep" and _aims(tokens, index):
            return index
        if token.value in {"raise", "change"} and _moved(tokens, index):
            return index
    return None


def meaning(tokens: list[Token]) -> int | None:
    """Where a word's meaning is asked right behind a reading: `kh 5 what is gh`; else None."""
    for index, token in enumerate(tokens):
        if token.kind != "ask" or not index:
            continue
        asks = token.value == "explain" or token.text in _WHAT_IS
        if not asks or tokens[index - 1].kind not in {"number", "unit"}:
            continue
        behind = [other for other in tokens[index + 1 :] if other.kind != "fill"]
        named = bool(behind) and behind[0].kind == "analyte"
        return index if named and all(t.text in ENDS for t in behind[1:]) else None
    return None


_WHAT_IS = frozenset({"what is", "whats", "what's"})


_SUBJECTS = frozenset({"i", "we", "ich", "wir", "ik", "jag", "vi"})
"""Who stands behind a verb where it asks (should i), in the languages that turn the two."""


def asks_first(token: Token) -> bool:
    """Whether a sentence that begins with this word asks: is, can i, would, should, czy."""
    if token.kind != "mark":
        return False
    if token.value == "link":
        return token.text.isalpha() and not VERB_FIRST.isdisjoint(
            lexicon().languages.get(token.text, ())
        )
    return token.value in {"may", "does", "whether", "wish"}


def _turned(tokens: list[Token]) -> bool:
    """Whether a sentence is a question by its order or its mark."""
    return tokens[-1].text == "?" or asks_first(tokens[0])


_LACKING = frozenset({"without", "undechlorinated", "untreated", "ohne", "sans", "sin", "sem"})


def done_or_asked(tokens: list[Token], *, group: bool = False) -> str | None:
    """What is asked of an event that a sentence begins to ask about: a change, a top-up, or None.

    `is a 100% water change ok`, `should i change half`, `can i top up with tap water`, and by its
    mark `30% change ok?`, `change 30%?`. A share that is judged is that of a change, in a
    group only where one is named.
    """
    place = next((i for i, t in enumerate(tokens) if t.kind not in {"tank", "fill", "p"}), None)
    if place is None or not (asks_first(tokens[place]) or tokens[-1].text == "?"):
        return None
    if tokens[place].value == "wish" and tokens[-1].text != "?":
        following = tokens[place + 1 : place + 2]
        if not following or following[0].text not in _SUBJECTS:
            return None  # "will do 30% tonight", "need a water change"
    kinds = {token.kind for token in tokens}
    if "analyte" in kinds or "nl" in kinds or "substance" in kinds:
        return None
    if any(token.text in _LACKING for token in tokens):
        return None  # "can i swap 50% without conditioner" is of the chlorine, not of the share
    said = {str(token.value) for token in tokens if token.kind in {"event", "mark"}}
    if "top_up" in said and asks_first(tokens[place]):
        return "top_up"
    shared = any(token.value in SHARES or token.kind == "unit" for token in tokens)
    judged = _is_judged(tokens) and (said & _CHANGES or not group)
    ahead = said & _CHANGES if asks_first(tokens[place]) else "changing" in said
    return "what_if" if judged or (shared and ahead) else None


def _is_judged(tokens: list[Token]) -> bool:
    """Whether it is asked if a share is too much, or fine: `30% ok?`."""
    shared = any(token.value in SHARES or token.value == "%" for token in tokens)
    known = all(token.kind not in {"word", "several"} for token in tokens)
    return shared and known and any(t.kind == "fill" and t.value == "judge" for t in tokens)


_CHANGES = frozenset({"water_change", "changing"})
_DONE = frozenset({"changed", "replaced", "swapped", "exchanged", "did", "done"})


def of_a_change(tokens: list[Token]) -> bool:
    """Whether "is it safe" is asked of a change still to be made: `is it ok to change 50%`."""
    shared = any(token.value in SHARES or token.value == "%" for token in tokens)
    if not shared or any(t.text in _DONE or t.kind == "analyte" for t in tokens):
        return False
    return any(t.kind in {"event", "mark"} and t.value in _CHANGES for t in tokens)


def _is_whole(token: Token) -> bool:
    """Whether a phrase asks wherever it stands (`ph 8.4 how do i lower it`)."""
    return token.value in {"raise", "change"} and token.text.count(" ") >= 2


def _names_one(tokens: list[Token], index: int) -> bool:
    """Whether an analyte is named in the sentence of a word of asking."""
    first, last = around(tokens, index)
    return any(token.kind == "analyte" for token in tokens[first:last])


def _all_known(tokens: list[Token], index: int) -> bool:
    """Whether the words behind are only tanks, their names and words without meaning."""
    _, last = around(tokens, index)
    return all(
        token.kind in {"fill", "tank", "p", "time", "event"} or token.value in {"home", "new"}
        for token in tokens[index + 1 : last]
    )


def _aims(tokens: list[Token], index: int) -> bool:
    """To keep an analyte at a number, said behind other words: `a routine to keep no3 under 20`."""
    behind = {token.kind for token in tokens[index + 1 :]}
    return {"analyte", "number"} <= behind and all(t.kind != "analyte" for t in tokens[:index])


def _purpose(tokens: list[Token], index: int) -> bool:
    """To raise or to lower something, with a thing named before: `add vinegar to lower ph`."""
    before = tokens[:index]
    return (
        tokens[index].value in {"raise", "change"}
        and any(token.kind == "substance" for token in before)
        and all(token.kind not in {"event", "nl", "p"} for token in before)
        and any(token.kind == "analyte" for token in tokens[index:])
    )


def _moved(tokens: list[Token], index: int) -> bool:
    """Whether a value is to be raised or lowered by or to a number: `hey guys raise my kh by 3`.

    The verb stands before it all, behind words that tell nothing, or last in German and Dutch.
    """
    first, last = around(tokens, index)
    before, behind = tokens[first:index], tokens[index + 1 : last]
    if any(token.kind in {"event", "ask"} or token.value in _UNWISHED for token in before):
        return False
    named = [place for place, token in enumerate(before) if token.kind == "analyte"]
    if not named:
        kinds = [token.kind for token in behind]
        told = any(token.kind in {"number", "count", "time"} for token in before)
        return "analyte" in kinds and "number" in kinds[kinds.index("analyte") :] and not told
    if behind or len(named) > 1 or _VERB_LAST.isdisjoint(_languages(tokens[index])):
        return False
    joints = lexicon().numerals["by_so_much"]
    return any(
        (token.text in joints or token.value == "to") and follower.kind == "number"
        for token, follower in pairwise(before[named[0] :])
    )


def _languages(token: Token) -> frozenset[str]:
    return lexicon().languages.get(token.text, frozenset())


_VERB_LAST = frozenset({"de", "nl"})
"""Languages that put an infinitive behind what it is about: `kh um 3 erhöhen`."""
_UNWISHED = frozenset({"not", "was", "if", "no"})


def _heads(tokens: list[Token], index: int) -> bool:
    """Whether nothing but a tank stands before a word in its sentence."""
    before = tokens[index - 1] if index else None
    return before is None or before.kind in {"nl", "tank"} or before.text in _PAUSES


def _opens(tokens: list[Token], index: int) -> bool:
    place = index - 1
    while place >= 0:
        token = tokens[place]
        if token.kind == "nl" or token.text in _PAUSES:
            return True
        named = token.kind == "analyte" and tokens[index].value == "history"
        if (
            token.kind not in {"fill", "tank"}
            and not named
            and token.value not in {"wish", "other", "and", "may"}
        ):
            return False
        place -= 1
    return True


def around(tokens: list[Token], place: int) -> tuple[int, int]:
    """From the end of the sentence before to the end of this one."""
    first = place
    told = judged.begins(tokens, place)
    begins = told if told is not None and _tells(tokens, told) else None
    if begins is not None:
        first = begins
    while (
        first != begins
        and first > 0
        and tokens[first - 1].kind != "nl"
        and tokens[first - 1].text not in ENDS
    ):
        parted = tokens[first - 1].text == "," or (first == place and _is_whole(tokens[place]))
        if parted and _tells(tokens, first - 1 if tokens[first - 1].text == "," else first):
            break
        first -= 1
    last = place
    while last < len(tokens) and tokens[last].kind != "nl" and tokens[last].text not in ENDS:
        last += 1
    return first, last


def _tells(tokens: list[Token], comma: int) -> bool:
    """Whether what stands before a comma is a reading told: names and numbers, no premise."""
    place = comma - 1
    named = False
    while place >= 0 and tokens[place].kind != "nl" and tokens[place].text not in ENDS:
        token = tokens[place]
        if token.kind in {"substance", "ask"} or token.value in {"if", "from", "L", "gal"}:
            return False
        if token.kind == "unit" and token.value in {"L", "gal", "uk gal", "g", "%"}:
            return False
        named = named or token.kind == "analyte" or token.kind == "event"
        place -= 1
    return named
