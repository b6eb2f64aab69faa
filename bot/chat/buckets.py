"""New water made in a bucket: RO with salts, sea water."""

from __future__ import annotations

import re
from typing import Any

from bot.chat import changes, dose_reply
from bot.chat.model import Reply
from bot.chat.supply import Supply
from bot.chat.turn import Turn
from bot.chat.wished import TABLE_SALT, goals
from bot.chat.words import salts as words
from bot.chat.words import sources as source_words
from core.advice import limits
from core.advice.changes import source_water
from core.advice.plan import Refusal
from core.advice.recipes import DEMINERALISED, ORDER, Recipe, recipe, sea_water
from core.advice.salts import CALCIUM_TO_MAGNESIUM, HIGHEST
from core.advice.tapped import softened
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Parsed, Question
from core.message.tokens import cut

UNSAID = ("do", "water", "tap")
"""Words behind "how much" and "what" that name no salt: `what do i add to 60 l tap`."""

MAKING = ("prepare", "make", "mix", "remineralise", "remineralize")
_MAKING = re.compile(rf"\b({'|'.join(MAKING)}|sea ?water|salt ?water)\b", re.IGNORECASE)


async def with_pure_water(turn: Turn, question: Question, parsed: Parsed) -> list[Reply]:
    """A bucket of RO with salts, or so much RO into a tank that it reaches a wish."""
    if question.volume_l is None:
        return await changes.change(turn, question, parsed)
    targets = _wished(question)
    if not targets:
        return [await turn.reply(words.no_recipe())]
    if set(targets) == {"salinity"}:
        return [await _sea_water(turn, targets["salinity"], question.volume_l)]
    ratio = question.ratio or CALCIUM_TO_MAGNESIUM
    found = recipe(targets, question.volume_l, _salts_named(question), ratio)
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, None)]
    more = words.recipe_more(ratio)
    return [await turn.reply(words.recipe(found), more=more, facts=_facts(found))]


async def of_source(turn: Turn, question: Question, source: Supply) -> Reply:
    """Salts that make so much of a source what is wished: water for a change, without animals."""
    targets = _wished(question)
    if not targets or not set(targets).issubset(ORDER):
        return await turn.reply(words.no_recipe())
    lacking = [name for name in ("kh", "gh") if name in targets and name not in source.readings]
    if lacking:
        return await turn.reply(source_words.lacks(source.name, lacking[0]))
    ratio = question.ratio or CALCIUM_TO_MAGNESIUM
    water = source_water(source.state, DEMINERALISED)
    found = recipe(targets, question.volume_l, _salts_named(question), ratio, of=water)
    if isinstance(found, Refusal):
        return await dose_reply.refuse(turn, found, source.name)
    lines = words.recipe(found, source.name)
    if source.treated > 0.0:
        lines.insert(1, words.dechlorinate_first())
    if (hardness := softened(source.readings)) is not None:
        lines.insert(1, source_words.softened(source.name, *hardness))
    facts = _facts(found) | {"source": source.name}
    return await turn.reply(lines, more=words.recipe_more(ratio), facts=facts)


def _wished(question: Question) -> dict[str, float]:
    """All that new water is to hold, by analyte."""
    targets = {**question.premises, **goals(question)[0]}
    return {name: value for name, value in targets.items() if name in HIGHEST}


def _salts_named(question: Question) -> tuple[str, ...]:
    unnamed = question.substance in {None, TABLE_SALT, *MAKING, *UNSAID}
    if unnamed:
        return ()
    text = fold(question.text or "")
    others = [str(t.value) for t in cut(text, lexicon(), text) if t.kind == "substance"]
    return tuple(dict.fromkeys([question.substance or "", *others]))


def _facts(found: Recipe) -> dict[str, Any]:
    return {
        "volume_l": found.volume_l,
        "to": dict(found.targets),
        "salts": [{"substance": s.substance, "grams": s.grams} for s in found.salts],
        "ph_stood": list(found.ph_stood),
    }


async def sea_water_asked(turn: Turn, question: Question) -> Reply | None:
    """How much sea salt makes so much new water; None where that is not what is asked.

    `mix 40 l of salt water to sg 1.025`; without a salinity, and beside a tank of the sea, it is
    asked for.
    """
    if question.substance != TABLE_SALT or question.volume_l is None:
        return None
    stored = turn.tank_named(question.tank) if question.tank else turn.current_tank
    made = _MAKING.search(question.text or "") is not None
    target = question.target if question.analyte == "salinity" else None
    if target is not None:
        made = made or (question.start_value is None and target > limits.SALT_WATER)
    if target is not None and made:
        return await _sea_water(turn, target, question.volume_l)
    in_sea = stored is not None and stored.tank.is_sea
    if question.analyte is None and question.target is None and (made or in_sea):
        return await turn.reply(words.which_salinity(question.volume_l))
    return None


async def _sea_water(turn: Turn, salinity: float, volume: float) -> Reply:
    salt = sea_water(salinity, volume)
    if isinstance(salt, Refusal):
        return await dose_reply.refuse(turn, salt, None)
    facts = {
        "volume_l": volume,
        "to": {"salinity": salinity},
        "salts": [{"substance": salt.substance, "grams": salt.grams}],
    }
    return await turn.reply(words.sea_water(volume, salinity, salt.grams), facts=facts)
