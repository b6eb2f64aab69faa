"""Words for animals of which nothing is known but their name: what to look up, and against what."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words.text import _


def not_judged(names: Sequence[str]) -> str:
    """That an answer holds for no animal of these names."""
    return _(
        "Not judged for {names}: my table has no range for it. Compare pH, GH, KH and temperature"
        " with a keeper's book first."
    ).format(names=", ".join(names))


def on_record(name: str, tank: str) -> str:
    """An animal on record that the table does not know."""
    return _("{tank}: I cannot judge it for {name}: on record, but my table has no range.").format(
        tank=tank, name=name
    )


def not_known(name: str) -> str:
    """A name that may be an animal's."""
    return _(
        "I know no animal or plant called “{name}”: my table has no range for it, so I say neither"
        " yes nor no. If it is one, its scientific name may stand there."
    ).format(name=name)


def company(names: str) -> str:
    """Who is to live beside it."""
    return _("Nor do I know whether it eats {names}, or they it.").format(names=names)


def compare(measured: Sequence[str]) -> list[str]:
    """Which readings to hold against a keeper's book: those on record, else which to take."""
    if not measured:
        return [_("Measure pH, GH, KH and temperature, and compare them with a keeper's book.")]
    return [_("Compare with a keeper's book:"), *measured]


def no_remedy() -> str:
    """A name may be that of a medicine, or of anything else out of a bottle."""
    return _(
        "If it is no animal but a powder, a liquid or a medicine: none of it on my word, nor by"
        " guess. For a medicine ask a vet who treats fish."
    )


def unknown_thing(name: str) -> list[str]:
    """What nobody knows is asked to be put in."""
    return [
        _("No, not on my word: I do not know what is in “{name}”, or how strong it is.").format(
            name=name
        ),
        _("Nothing goes in that nobody knows. What is it for? To raise KH, ask: dose kh +1"),
        _("What its label says I can read: my buffer: 5 g per 80 l raises kh 1"),
    ]


def nothing_planned() -> list[str]:
    """All of something is to go in, and no plan of ours stands."""
    return [
        _("Not on my word: no plan of mine stands here, so I do not know what, nor how much."),
        _("Ask how much first, for example: how much baking soda for 90 l from kh 3 to 5"),
        _("It goes in by parts, a day apart, never all at once."),
    ]
