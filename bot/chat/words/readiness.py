"""Whether animals may come: how the tank's filter stands."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from bot.chat.words import findings, names
from bot.chat.words.text import N_, _
from core.advice.readiness import Readiness, Verdict

FIRST: Final[Mapping[Verdict, str]] = {
    "cycling": N_("Not yet: the filter of {tank} is still growing."),
    "unmeasured": N_("I cannot tell for {tank}: test {missing} first."),
    "unproven": N_(
        "Not proved for {tank}: ammonia and nitrite read 0, but I never saw them come and go."
    ),
    "cycled": N_("Yes, a few at a time: ammonia and nitrite came and went in {tank}."),
    "settled": N_(
        "Yes, a few at a time: ammonia and nitrite read 0 in {tank} with its animals in it."
    ),
}
THEN: Final[Mapping[Verdict, tuple[str, ...]]] = {
    "unmeasured": (
        N_("Send for example: {tank}: ammonia 0 nitrite 0 nitrate 10"),
        N_(
            "A new filter needs weeks: first ammonia shows, then nitrite, and both must be 0"
            " twice after that."
        ),
    ),
    "unproven": (
        N_("A filter that has not begun reads 0 too. Prove it without animals:"),
        N_("dose ammonium chloride to 1. It is ready when both read 0 a day later."),
        N_("A filter that ran in a healthy tank may be ready: begin with few and test daily."),
    ),
    "cycled": (
        N_("Test both daily in the first week after, and feed little."),
        N_("Ask before you buy, for example: can i keep 6 neons"),
    ),
    "settled": (
        N_("Test both daily in the first week after, and feed little."),
        N_("Ask before you buy, for example: can i keep 6 neons"),
    ),
}


YOUNG: Final = N_("Not yet: {tank} is new and its filter is not proved. Test {missing} first.")
"""The first line for a tank that is known to be new, of which no test is young enough."""

CAME: Final = (
    N_(
        "Not proved yet for {tank}: {came} came and went, but both must come and then read 0 twice."
    ),
    N_("Test both again in two or three days. Or prove it at once, without animals:"),
    N_("dose ammonium chloride to 1. It is ready when both read 0 a day later."),
)
"""Where something was seen to come and go, but not all of it, or too short ago."""

FILTER: Final[Mapping[Verdict, str]] = {
    "cycling": N_("But not yet: its filter is still growing. Ask: can i add fish"),
    "unmeasured": N_("But test {missing} first: they tell whether its filter works."),
    "unproven": N_(
        "But its filter is not proved: ammonia and nitrite were never seen to come and go. Ask: can"
        " i add fish"
    ),
}


def beside(lines: Sequence[str], found: Readiness, tank: str, *, first: bool) -> list[str]:
    """An answer about newcomers with what the filter has against them, `first` or behind a yes."""
    if first:
        before = before_all(found, tank)
        return [*([] if before is None else [before]), *lines]
    behind = beside_a_yes(found)
    return [*lines[:1], *([] if behind is None else [behind]), *lines[1:]]


def before_all(found: Readiness, tank: str) -> str | None:
    """What stands against new animals by the filter, before anything that speaks for them."""
    if found.verdict not in FILTER:
        return None
    if found.finding is not None and (poison := _STAGES.get(found.finding.id)) is not None:
        return _("Not yet: there is {poison} in {tank}, its filter is still growing.").format(
            poison=names.label(poison), tank=tank
        )
    return told(found, tank)[0]


_STAGES: Final[Mapping[str, str]] = {"cycling_ammonia": "ammonia", "cycling_nitrite": "nitrite"}


def beside_a_yes(found: Readiness) -> str | None:
    """What the filter has against animals that the water itself would suit."""
    line = FILTER.get(found.verdict)
    missing = names.both([names.label(each) for each in found.missing]) if found.missing else ""
    return None if line is None else _(line).format(missing=missing)


def told(found: Readiness, tank: str) -> list[str]:
    """The answer first, then what to do; poison is worded by its own finding."""
    missing = names.both([names.label(each) for each in found.missing]) if found.missing else ""
    if found.came:
        came = names.both([names.label(each) for each in found.came])
        return [_(line).format(tank=tank, came=came) for line in CAME]
    young = found.verdict == "unmeasured" and found.young
    lines = [YOUNG if young else FIRST[found.verdict], *THEN.get(found.verdict, ())]
    lines = [_(line).format(tank=tank, missing=missing) for line in lines]
    return lines if found.finding is None else [*lines, findings.line(found.finding)]
