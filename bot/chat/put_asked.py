"""What is asked to be put in and is no animal: ``can i put hydrogen peroxide in``, ``… it all in``.

What is known to harm is refused by its name; of what nobody knows nothing goes in on our word.
"""

from __future__ import annotations

import re
from typing import Final

from bot.chat import dose_reply
from bot.chat.model import Reply
from bot.chat.turn import Turn
from bot.chat.words import strangers as words
from core.advice import alarm_words
from core.advice.livestock import lookup, named_in
from core.advice.plan import Refusal
from core.message import acid_in, kinds
from core.message.dose_words import names_put_in
from core.message.fold import fold
from core.message.model import Question
from core.message.plan_words import telling

_BY_DEED: Final = {
    "formalin": "medicine",
    "medicine": "medicine",
    "battery_acid": "battery_acid",
    "caustic": "caustic",
    "bleach_named": "bleach",
    "condensate": "condensate",
}
"""What a thing is by the words of danger → the reason why none goes in."""

_IT: Final = frozenset(
    "it that this everything es das alles tout ca le lo todo eso todo isso tudo tutto questo het"  # noqa: SIM905
    " alles dat to wszystko det allt".split()
)
"""Words for one thing or mass that was spoken of; animals are many, or named."""


def means_amount(text: str) -> bool:
    """Whether a text asks to put in what was spoken of, and that is no animals.

    Examples
    --------
    >>> means_amount("thats a lot can i put it all in"), means_amount("can i put them all in")
    (True, False)
    >>> means_amount("can i add fish")
    False
    """
    heard = telling(text)
    words_ = re.findall(r"[^\W\d_]+", fold(text))
    return heard is not None and heard.meaning in _PUTS and not _IT.isdisjoint(words_)


_PUTS: Final = frozenset({"at_once", "go_on", "lot"})


async def answer(turn: Turn, question: Question) -> Reply | None:
    """Say no to what harms or is unknown; None where it is an animal or may be one."""
    text = question.text or ""
    if means_amount(text) and not named_in(text):
        return await turn.reply(words.nothing_planned(), facts={"refused": "no_plan"})
    said = " ".join(re.split(_BEHIND, question.species or "")[0].split())
    if not said or is_animal(said):
        return None
    if (reason := harm(said)) is not None:
        named = {"substance": said} if reason in {"acid", "harmful"} else {}
        return await dose_reply.refuse(turn, Refusal(reason, named), None)
    if names_put_in(said):
        facts = {"refused": "substance_unknown", "substance": said}
        return await turn.reply(words.unknown_thing(said), facts=facts)
    return None


_BEHIND: Final = (
    r"(?i)\b(?:safe|ok|okay|harmful|dangerous|bad|sicher|sûr|seguro|sicuro|veilig|bezpieczne|säkert"
    r"|in|into|to|at|rein|hinein|ins|dans|en|em|nel|nella|erin|do|i|with|for|mit|für|avec|pour|con|para|com|per|met|voor|dla|z|med|för)\b"
)
"""What stands behind a thing that is asked about, and is none of its name."""


def is_animal(said: str) -> bool:
    """Whether the table knows a name, or a word of it is an animal's."""
    found = lookup(said)
    return bool(found.species or found.candidates or named_in(said)) or kinds.names_any(said)


def harm(said: str) -> str | None:
    """Why a thing by this name never goes in with animals; None where nobody knows."""
    thing = acid_in.thing_named(said)
    if thing is not None:
        return {"sour": "acid", "peroxide": "harmful", "bleach": "bleach"}[thing]
    deeds = alarm_words.named(said).get("deed", frozenset())
    by_name = next((_BY_DEED[deed] for deed in _BY_DEED if deed in deeds), None)
    if by_name is not None or "unseen" not in deeds:
        return by_name
    before = said.rpartition(" ")[0]  # an oil catfish may be one
    of_another = before and "unseen" in alarm_words.named(before).get("deed", frozenset())
    return None if of_another and not names_put_in(said) else "harmful"
