"""Animals that were put into water of another kind: out again, before anybody changes the water."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from bot.chat.told import Told
from bot.chat.words import keeping as words
from bot.chat.words import names
from bot.chat.words import newcomers as own_words
from core.advice.findings import Finding
from core.advice.keeping import Keeping, can_keep
from core.advice.livestock import lookup
from core.advice.state import State

FAR = 0.5
"""Outside of a range by so much of its width they must not stay; common practice."""


def unsuited(told: Told, state: State) -> list[Keeping]:
    """Kinds told of as added that the water of a tank with other animals surely does not suit."""
    added = {e.what.species for e in told.events if e.what.kind == "added" and e.what.species}
    found = []
    for said in sorted(added):
        kind = lookup(said).species
        others = tuple(s for s in state.tank.stock if s.count > 0 and not _same(s.species, said))
        if kind is None or not kind.is_animal or not others:
            continue
        without = replace(state, tank=replace(state.tank, stock=others))
        answer = can_keep(kind, without, said)
        far = any(misfit.certain and misfit.excess >= FAR for misfit in answer.misfits)
        if far or answer.foreign is not None:
            found.append(answer)
    return found


def _same(one: str, other: str) -> bool:
    kind = lookup(one).species
    same = kind is not None and kind == lookup(other).species
    return same or one.casefold() == other.casefold()


def lines(kinds: Sequence[Keeping], tank: str) -> list[str]:
    """What to do with them, and what stands against the water."""
    out = []
    for answer in kinds:
        out.append(own_words.out_again(answer.name_of(answer.asked), tank))
        if answer.foreign is not None:
            water, here = answer.foreign
            said = names.capital(answer.name_of(answer.asked))
            out.append(words.foreign(said, water, tank, here))
        elif answer.misfits:
            out.append(words.misfit(max(answer.misfits, key=lambda misfit: misfit.excess)))
    return out


def without_advice_for(kinds: Sequence[Keeping], found: Sequence[Finding]) -> list[Finding]:
    """Findings without those that would fit the water to newcomers which go out again."""
    if not kinds:
        return list(found)
    said = {"does_not_suit", "wrong_water", "do_not_go_together"}
    return [finding for finding in found if finding.id not in said]
