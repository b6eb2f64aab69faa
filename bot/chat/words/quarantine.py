"""Quarantine in words: what it is, its tank and its reminders."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words.text import N_, _, ngettext
from core.advice.quarantine import QUARANTINE_DAYS

QUARANTINE_FIRST: Final = N_("quarantine with reminders")


def quarantine(tank: str) -> list[str]:
    """What quarantine is."""
    return [
        _(
            "Quarantine: {weeks} weeks in a tank of their own before {tank}, with"
            " nets and hoses of its own."
        ).format(weeks=QUARANTINE_DAYS // 7, tank=tank),
        _(
            "Bare, heated, aerated, covered, a hiding place, and a filter that already runs"
            " (a sponge out of {tank}'s filter)."
        ).format(tank=tank),
        _(
            "Fill it with water of {tank}; look each day, test ammonia and nitrite every"
            " second day."
        ).format(tank=tank),
        _("No medicine by guess: ask a fish vet."),
    ]


def made(name: str, tank: str, tasks: Sequence[str]) -> list[str]:
    """A quarantine tank was made, with its reminders."""
    return [
        _("{name} is a tank of its own now. I remind you: {tasks}.").format(
            name=name, tasks="; ".join(tasks)
        ),
        _("Send its readings by name: {name}: ammonia 0 nitrite 0").format(name=name.lower()),
        _("What you send without a name is still about {tank}.").format(tank=tank),
    ]


def there_already(name: str) -> list[str]:
    """There is one in use."""
    return [
        _("{name} is in use. Send /tank delete {name} once it is empty, then ask again.").format(
            name=name
        )
    ]


NAME: Final = N_("Quarantine")


TASKS: Final[Mapping[str, str]] = {
    "look": N_("look at the new animals: breathing, spots, fins, appetite"),
    "test": N_("test ammonia and nitrite"),
    "change": N_("change a quarter of the water"),
}


def duty(task: str, days: int) -> str:
    """A task with its interval, as told when the tank is made."""
    told = ngettext("each day to {task}", "every {days} days to {task}", days)
    return told.format(days=days, task=task)


def move_task(tank: str, name: str) -> str:
    """The last task of a quarantine."""
    return _("move them to {tank} if all are well, then send /tank delete {name}").format(
        tank=tank, name=name
    )


def move_said(days: int) -> str:
    """The last task, as told when the tank is made."""
    told = ngettext(
        "after {days} day to move them, if all are well",
        "after {days} days to move them, if all are well",
        days,
    )
    return told.format(days=days)
