"""Backwards: ``what does 10 g baking soda do in 120 l``, ``will crushed coral do anything``."""

from __future__ import annotations

from typing import Any

from bot.chat import dose_reply, product_doses, what_for
from bot.chat.model import Reply
from bot.chat.salts import THIOSULFATE
from bot.chat.state import state_of
from bot.chat.turn import WAITS, Turn
from bot.chat.wished import TABLE_SALT
from bot.chat.words import cautions
from bot.chat.words import effects as words
from bot.chat.words import lime as lime_words
from bot.chat.words.terms import explained
from bot.store.tanks import StoredTank
from core.advice.ammonia_gate import shown
from core.advice.effects import Effect, effects_of
from core.advice.media import ACID_MEDIA, LIME, Leaves, leaves_in, lime_in
from core.advice.outlook import with_premises
from core.advice.plan import Refusal
from core.advice.state import State
from core.message.model import Parsed, Question
from core.substances import ACIDS, MEDIA
from core.tank import Tank


async def effect(turn: Turn, question: Question, _parsed: Parsed) -> list[Reply]:
    """Answer what an amount, or a medium, does."""
    if (by_product := await product_doses.effect(turn, question)) is not None:
        return by_product
    if question.substance in MEDIA:
        return [await medium(turn, question, question.substance)]
    if question.substance in ACIDS and (question.millilitres or question.spoons):
        acid = Refusal("acid", {"substance": question.substance})
        return [await dose_reply.refuse(turn, acid, None)]
    weighed = question.grams is not None or question.a_litre is not None
    if not weighed and (question.millilitres or question.spoons):
        facts = {"refused": "substance_unknown"}
        return [await turn.reply(words.unknown_amount(question.substance), facts=facts)]
    if question.substance is None or not weighed:
        return [await _without_amount(turn, question)]
    stored, state = await _water(turn, question)
    volume = question.volume_l if question.volume_l is not None else state.tank.volume_l
    if volume is None:
        facts = dose_reply.refused_facts(Refusal("volume_unknown"))
        return [await turn.reply(words.incomplete(), facts=facts, context={WAITS: ["litres"]})]
    grams = question.grams if question.grams is not None else (question.a_litre or 0.0) * volume
    found = effects_of(question.substance, grams, volume, state)
    name = stored.name if stored is not None else None
    if isinstance(found, Refusal):
        return [await dose_reply.refuse(turn, found, name)]
    return [await _answer(turn, found, name)]


async def _without_amount(turn: Turn, question: Question) -> Reply:
    """May it go in at all? What the cautions say of it, else how much is asked."""
    if question.substance in ACIDS:
        refusal = Refusal("acid", {"substance": question.substance})
        return await dose_reply.refuse(turn, refusal, None)
    if question.substance == TABLE_SALT:
        return await turn.reply(cautions.caution("salt_in"), facts={"caution": "salt_in"})
    if question.substance in THIOSULFATE:
        return await turn.reply(explained("dechlorinator"))  # should i dechlorinate
    use = None if question.substance is None else await what_for.of(turn, question.substance)
    return await turn.reply(words.incomplete()) if use is None else use[0]


async def medium(turn: Turn, question: Question, substance: str) -> Reply:
    """Answer what lies in the filter: lime, leaves, or something that moves nothing."""
    if substance not in LIME and substance not in ACID_MEDIA:
        return await turn.reply(words.no_effect(substance))
    stored, state = await _water(turn, question)
    if state.last("kh") is None:
        return await turn.reply(words.need_tank(substance), facts={"refused": "kh_unknown"})
    name = stored.name if stored is not None else words.that_water()
    if substance in ACID_MEDIA:
        leaves = leaves_in(substance, state)
        if isinstance(leaves, Refusal):
            return await dose_reply.refuse(turn, leaves, name)
        return await turn.reply(words.leaves(leaves, name), facts=_leaves_facts(leaves))
    lime = lime_in(substance, state)
    if isinstance(lime, Refusal):
        return await dose_reply.refuse(turn, lime, name)
    facts = {
        "substance": substance,
        "acts": lime.acts,
        "saturation_index": lime.saturation_index,
        "before": {"kh": lime.outlook.water.kh, "gh": lime.outlook.water.gh}
        | ({} if lime.outlook.ph is None else {"ph": lime.outlook.ph}),
        "end": {"ph": lime.end.ph, "kh": lime.end.kh, "gh": lime.end.gh},
        "if_co2_leaves": {
            "ph": lime.end_leaves.ph,
            "kh": lime.end_leaves.kh,
            "gh": lime.end_leaves.gh,
        },
    }
    if not lime.is_for_it:
        end = {"before": facts["before"], "end": facts["end"]}
        past = {} if lime.bound is None else {"past_animals": dict(lime.bound.refusal.facts)}
        facts = {"refused": "lime_unsuited", "substance": substance, **end, **past}
        ammonia = shown(state)
        fresh = ammonia is not None and ammonia.is_fresh(state.now)
        lines = lime_words.unsuited(lime, name, ammonia if fresh else None)
        return await turn.reply(lines, facts=facts, context={"why": lines}, expects="followup")
    return await turn.reply(words.lime(lime, name), more=words.lime_more(lime), facts=facts)


async def _water(turn: Turn, question: Question) -> tuple[StoredTank | None, State]:
    """The water that is asked about: a tank on record, or any where a volume alone was said."""
    stored = turn.tank_named(question.tank) if question.tank else None
    if stored is None and question.volume_l is None:
        stored = turn.current_tank
    if stored is None:
        state = State(Tank(name=""), turn.local_now)
    else:
        state = await state_of(turn, stored, turn.now)
    premises = dict(question.premises)
    if question.start_value is not None and question.analyte is not None:
        premises[question.analyte] = question.start_value
    return stored, with_premises(state, premises)


async def _answer(turn: Turn, found: tuple[Effect, ...], name: str | None) -> Reply:
    lines = [words.head(each, in_tank=True) for each in found]
    if len(found) > 1:
        lines.append(words.two_forms())
    told = (words.ammonia(found[0]), words.caution(), words.ph(found[0]))
    lines += [line for line in told if line is not None]
    facts = facts_of(found)
    if name is not None:
        facts["tank"] = name
    return await turn.reply(lines[:6], facts=facts)


def facts_of(found: tuple[Effect, ...]) -> dict[str, Any]:
    """The numbers of an effect, or of both forms of a salt."""
    if len(found) > 1:
        return {"effects": [_effect_facts(each) for each in found]}
    return _effect_facts(found[0])


def _effect_facts(found: Effect) -> dict[str, Any]:
    facts: dict[str, Any] = {
        "substance": found.substance,
        "grams": found.grams,
        "volume_l": found.volume_l,
        "days": found.days,
        **{f"{ion}_mg_l": amount for ion, amount in found.added.items()},
    }
    if found.kh:
        facts["kh"] = found.kh
    if found.gh:
        facts["gh"] = found.gh
    if found.salinity:
        facts["salinity"] = found.salinity
    if found.bound is not None:
        facts["past_animals"] = dict(found.bound.refusal.facts)
    if found.outlook is not None and found.stage is not None:
        facts["from"] = found.outlook.water.kh
        facts["to"] = found.outlook.water.kh + found.kh
        facts["ph_stood"] = [found.stage.expected, found.stage.leaves]
        if found.outlook.co2_known:
            facts["ph_at_once"] = found.stage.at_once
    return facts


def _leaves_facts(found: Leaves) -> dict[str, Any]:
    return {
        "substance": found.substance,
        "kh": found.outlook.water.kh,
        "ph_before": found.ph_before,
        "ph_after": found.ph_after,
    }
