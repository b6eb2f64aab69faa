"""Words that belong to no topic: hints, refusals to guess, help, privacy."""

from __future__ import annotations

from collections.abc import Sequence

from bot.chat.words import names
from bot.chat.words.numbers import litres, plain
from bot.chat.words.text import N_, _

_NOT_YET = {
    "export": N_("Export is not built yet; your readings are all kept."),
    "forget": N_("Deleting a chat from here is not built yet: ask whoever runs this bot."),
}
_ANSWERS = (N_("yes"), N_("no"), N_("done"))
_OTHER = N_("That is not built yet, so nothing was stored.")


def only_text() -> list[str]:
    """For a photo, a sticker, a voice note and the like."""
    return [_("I can only read text. Type what the kit shows, for example: ph 7.2 kh 4 no3 20")]


def hint(tank: str | None) -> list[str]:
    """For a message that is no reading, no question and no command."""
    example = names.of_tank(tank.lower() if tank else None, _("kh 4 ph 7.2"))
    return [
        _("I did not find a reading or a question in that. Send for example: {example}").format(
            example=example
        ),
        _("or: how much baking soda for 120 l from kh 3 to 6. /help shows more."),
    ]


def not_yet(name: str) -> list[str]:
    """For a command that is known and not built."""
    return [_(_NOT_YET.get(name, _OTHER))]


def not_heard(part: str) -> list[str]:
    """What was asked behind a reading, and is nothing that we know."""
    return [_("I did not understand “{part}”: ask it in other words.").format(part=part)]


def question_not_yet() -> list[str]:
    """For a question that is understood and not answered yet."""
    return [
        _("I understand the question but cannot answer it yet."),
        _("I can work out how much bicarbonate raises KH: dose kh 6"),
    ]


def start() -> list[str]:
    """The first words to a new chat."""
    return [
        _(
            "I keep your tanks' water in mind: send readings as you type them, ask before"
            " you dose, and I remind you when something is due."
        ),
        _("Try: ph 7.2 kh 4 gh 8 no3 20"),
        _("Then: /tank new Fern 90 l fresh"),
        _("/help shows the rest on one screen. Not veterinary advice."),
    ]


def in_trouble() -> str:
    """For who asks what to do before anything was told."""
    return _("Is an animal in trouble? Send what you see, for example: fish gasping")


def help_(tank: str, others: Sequence[str]) -> list[str]:
    """One screen of examples from the keeper's own tanks."""
    other = others[0] if others else tank
    return [
        _("Readings: {tank}: ph 7.2 kh 4 no3 20 · yesterday 20:00 kh 4 · undo · no, kh 5").format(
            tank=tank.lower()
        ),
        _("Events: changed 30% · {tank}: dosed 5 g baking soda · cleaned filter").format(
            tank=other.lower()
        ),
        _("Buffer: dose kh 6 · kh +2 · how much baking soda for 120 l from kh 3 to 6"),
        _("Reminders: remind me to test {tank} every 7 days at 19:00 · /remind lists them").format(
            tank=tank.lower()
        ),
        _("Answers: done · done 2 · more · yes · no"),
        _("Trouble: fish gasping · help ammonia · help chlorine · ph crashed · heater stuck"),
        _(
            "Tanks: /tank new Fern 90 l fresh · /tank {tank} shows · /tank rename {tank} Moss"
        ).format(tank=tank),
        _("Chat: /zone Europe/Lisbon · quiet hours 22:00-07:00 · holiday until 4 May · /settings"),
    ]


def privacy() -> list[str]:
    """What is kept, and for how long."""
    return [
        _(
            "I keep the readings, events, tanks and reminders that you send, with your"
            " words and the name your messenger shows, to answer you; nothing is passed on."
        ),
        _("In groups, what people say to each other is not kept."),
        _("To have it all deleted, ask whoever runs this bot."),
    ]


def nothing_more() -> list[str]:
    """For a bare "more" with nothing behind it."""
    return [_("There is nothing more to show.")]


def nothing_to(word: str) -> list[str]:
    """For a bare yes, no or done with nothing that waits for it."""
    return [_("Nothing is waiting for a “{word}”.").format(word=_(word))]


def not_taken_as_done() -> list[str]:
    """Whether something was done is asked, and nobody told that it was."""
    return [
        _("Nothing was marked as done. Once it is, send: done"),
        _("/remind lists what is coming; when did i … asks for what is on record."),
    ]


def old_button() -> list[str]:
    """For a button that belongs to an older version or that nobody gave out."""
    return [_("That button is too old for me. Type what you want instead.")]


def foreign_button() -> list[str]:
    """For a button of another chat."""
    return [_("That button belongs to another chat.")]


def already() -> list[str]:
    """For a second press on what was settled."""
    return [_("That is settled already; nothing was changed.")]


def changed_so_much(share: float) -> str:
    """A change of water on a button."""
    return _("changed {share} %").format(share=plain(100 * share, 1))


def changed_litres(volume_l: float) -> str:
    """A change of water on a button, in litres as they were asked about. [L]"""
    return _("changed {amount}").format(amount=litres(volume_l))


def which_was_done(labels: Sequence[str]) -> str:
    """More than one share was spoken of."""
    return _("Which was done: {labels}?").format(labels=", ".join(labels))


def why_unknown() -> list[str]:
    """For a bare "why" with nothing behind it."""
    return [_("Ask why after a reading or a dose: I then show what my answer rested on.")]
