"""Words for what is asked right behind a deed: was it too much, was it enough, how much was it."""

from __future__ import annotations

from bot.chat.words.changes import percent
from bot.chat.words.numbers import plain
from bot.chat.words.text import _


def within(tank: str, share: float) -> str:
    """A change that kept to every limit."""
    told = _("{tank}: no, {share} kept to every limit of a day, as far as both waters are known.")
    return told.format(tank=tank, share=percent(share))


def unknown(tank: str, share: float | None) -> list[str]:
    """Too little is known of the tank or of the new water to judge a change."""
    told = (
        _("{tank}: I cannot tell whether that was too much: of how much, and of which water?")
        if share is None
        else _("{tank}: I cannot tell whether {share} was too much: too little is known of both.")
    )
    first = told.format(tank=tank, share="" if share is None else percent(share))
    return [
        first,
        _(
            "It was if pH moved more than 0.3, KH more than 1 °dH, GH more than 2 °dH or the water"
            " more than 2 °C: test these now, and the new water."
        ),
    ]


def nitrate_unmeasured(tank: str) -> str:
    """Nothing tells whether a change was enough."""
    told = _("{tank}: no nitrate is on record, so I cannot tell whether that was enough: test it.")
    return told.format(tank=tank)


def nitrate_by_sum(tank: str, before: float, now: float) -> str:
    """What nitrate should be by now."""
    told = _("{tank}: nitrate was {before} and should be about {now} mg/L now; only a test tells.")
    return told.format(tank=tank, before=plain(before, 1), now=plain(now, 1))


def nitrate_at_best(tank: str, before: float, least: float) -> str:
    """How low nitrate may be by now, where nobody knows the new water's."""
    told = _(
        "{tank}: nitrate was {before} mg/L before; now it is {least} at best, if the new water has"
        " none. Test it."
    )
    return told.format(tank=tank, before=plain(before, 1), least=plain(least, 1))


def nitrate_before(tank: str, before: float) -> str:
    """Only a value from before, and a change of which too little is known."""
    told = _("{tank}: nitrate was {before} mg/L before that. Test it: then I can tell.")
    return told.format(tank=tank, before=plain(before, 1))


def nitrate_now(tank: str, now: float) -> str:
    """A value from after the change."""
    told = _("{tank}: nitrate is {now} mg/L by the last test, made since.")
    return told.format(tank=tank, now=plain(now, 1))


def under_limit(limit: float) -> str:
    """No other change is needed for nitrate."""
    told = _("Under its limit of {limit} mg/L no other change is needed for nitrate.")
    return told.format(limit=plain(limit, 1))


def over_limit(limit: float) -> str:
    """Another change is needed, not at once."""
    told = _("That is over its limit of {limit} mg/L: change again, best tomorrow.")
    return told.format(limit=plain(limit, 1))


def changed(tank: str, day: str, week: str) -> str:
    """How much water was changed in a day and in a week."""
    told = _("{tank}: changed in the last 24 hours: {day}; in the last 7 days: {week}.")
    return told.format(tank=tank, day=day, week=week)


def nothing() -> str:
    """No change is on record in a span."""
    return _("nothing")


def untold() -> str:
    """A change of which nobody told how much."""
    return _("one of unknown size")


def medicine(share: float | None) -> str:
    """What a change does to a medicine, without an amount of it."""
    told = (
        _("New water thins a medicine. Whether some is put back, and how much, its label says.")
        if share is None
        else _(
            "{share} new water takes out {share} of a medicine that was in. Whether that is put"
            " back, and how much, its label or a fish vet says."
        )
    )
    return told.format(share="" if share is None else percent(share))


def topped_up() -> str:
    """When a top up is too much or enough."""
    return _(
        "A top up is right when it brings the water back to its old level: only water evaporates."
        " Anything more, or after water was taken out, is a change: tell me then how much."
    )


def cleaned() -> str:
    """When a filter is cleaned enough."""
    return _(
        "A filter is clean enough when water runs through it as before. Rinse it in tank water,"
        " never all of it at once: its bacteria eat the ammonia. Test ammonia and nitrite tomorrow."
    )
