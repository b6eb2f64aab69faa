"""What went in of a plan, or shall: so much of it, half of what, a second one or the same."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.numbers import grams, plain
from bot.chat.words.text import _


def so_much(told: str, part: str) -> list[str]:
    """So much in the place of a part, which may be less."""
    return [
        _("{amount}, where the plan gives {part}: fine, less is never too much.").format(
            amount=told, part=part
        ),
        _("When it is in, send: done"),
    ]


def you_put_it_in(part: str | None = None) -> list[str]:
    """We are bidden to put it in, who can only tell what goes in; no part: one is in."""
    only = _("I put nothing in, I only tell how much: that is by your hand.")
    if part is None:
        return [only, _("A part is on record. What is next: what now")]
    told = _("The part: {part}. When it is in, send: done")
    return [only, told.format(part=part)]


def to_come(part: str) -> list[str]:
    """What is planned is not in yet."""
    return [
        _("Fine: {part}. Test again first if it is not today.").format(part=part),
        _("When it is in, send: done"),
    ]


def if_unsure(tested: str) -> list[str]:
    """A part that went in perhaps, and perhaps not."""
    return [
        _("Not logged, for it may not be in. Give none until you know: test {tested}.").format(
            tested=tested
        ),
        _("If you are sure that it went in, send: log it"),
    ]


def rest_of_part(rest: str) -> list[str]:
    """What is missing from the part that was begun."""
    return [
        _("{rest} of today's part is left, then nothing more until the test.").format(rest=rest),
        _("When it is in, send: done"),
    ]


def half_of_what(amounts: Sequence[str]) -> list[str]:
    """Half of a part, or of the whole plan."""
    told = _("Half of what? Send how much went in: {amounts}. Nothing is stored yet.")
    return [told.format(amounts=" · ".join(amounts))]


def grams_of_what(mass: float) -> list[str]:
    """So much went in, and something else than the plan was spoken of since. [g]"""
    told = _("{grams} of what? Send it with its name. Nothing is stored yet.")
    return [told.format(grams=grams(mass))]


def millilitres_of_what(amount: float) -> list[str]:
    """Likewise of a product. [mL]"""
    told = _("{ml} ml of what? Send it with its name. Nothing is stored yet.")
    return [told.format(ml=plain(amount, 1))]


def spoons_of_what(count: float) -> list[str]:
    """Likewise, measured by spoon. [teaspoons]"""
    told = _("{count} tsp of what? Send it with its name. Nothing is stored yet.")
    return [told.format(count=plain(count, 2))]


def told_twice(part: str, at: str) -> list[str]:
    """A part that is told may be the one that is on record."""
    told = _("{part} is on record already ({at}). Is it a second one, or the same?")
    return [
        told.format(part=part, at=at),
        _("Nothing is stored again. If no second one went in, give none before the next test."),
    ]


def too_early(minutes: str | None) -> list[str]:
    """A test right after a dose tells nothing yet, and no amount is told by it."""
    told = _("{minutes} min after a dose is too early: what went in is not mixed yet.")
    lines = [] if minutes is None else [told.format(minutes=minutes)]
    return [
        *lines,
        _("Add nothing more now. Test KH, pH and ammonia 24 h after it, then ask again."),
    ]


def second_one() -> str:
    """A button: it went in once more."""
    return _("a second one")


def same_one() -> str:
    """A button: it is the one on record."""
    return _("the same one")


def as_it_was() -> list[str]:
    """What was told is on record once."""
    return [_("All right: it is on record once.")]


def reached(name: str, value: str) -> list[str]:
    """The goal of a plan is measured: nothing more of it goes in."""
    told = _("Goal reached: {name} is {value} by your last test. Give nothing more.")
    return [told.format(name=name, value=value)]


def before_test(part: str, name: str, value: str) -> list[str]:
    """A part that was not told before a test that shows it."""
    told = _("{name} is {value} by your last test. Did {part} go in before that test, or after it?")
    return [told.format(part=part, name=name, value=value), _("Nothing is stored yet.")]


def before_it() -> str:
    """A button: it was in when the test was made."""
    return _("before the test")


def after_it() -> str:
    """A button: it went in after the test."""
    return _("after the test")


def of_plan_then(part: str, tank: str, at: str) -> list[str]:
    """A plan of some days ago, and a word that something was done."""
    told = _("Is it {part} for {tank}, planned {at}? Then press or send: yes")
    return [told.format(part=part, tank=tank, at=at), _("Nothing is stored yet.")]


def yes_log() -> str:
    """A button: it is what the plan gave."""
    return _("yes, log it")


def no_other() -> str:
    """A button: it is something else."""
    return _("no, something else")


def nothing_kept() -> list[str]:
    """What was done is something else."""
    return [_("Nothing is stored. Tell me what it was, for example: changed 20 %")]


def rest_of_what(amounts: Sequence[str], due: str | None = None) -> list[str]:
    """What the rest is that is told to be in; `due` is when the next part may go in."""
    told = _("The rest of what? Send how much went in: {amounts}. Nothing is stored yet.")
    lines = [told.format(amounts=" · ".join(amounts))]
    if due is not None:
        lines.append(_("The next part is due {at}: if it is not in yet, wait.").format(at=due))
    return lines


def none_of_it() -> str:
    """A button: nothing of it went in."""
    return _("nothing went in")


def grams_of_other(substance: str) -> list[str]:
    """Another salt than the plan's went in; nobody told how much."""
    shown = names.substance(substance)
    told = _("How many grams of {substance} went in? Send for example: dosed 5 g {substance}")
    return [told.format(substance=shown), _("Nothing is stored yet.")]


def nothing_untested(tested: str) -> str:
    """That a part went in without the test before it, so that the next one waits for it."""
    told = _("No test was made: the next part waits until you have tested {tested} and sent them.")
    return told.format(tested=tested)
