"""When things are due: rules, their times through daylight saving, and the words for them."""

from core.schedule.bare_span import soon
from core.schedule.errors import BadRule, NaiveTime
from core.schedule.localtime import moment_at
from core.schedule.model import KINDS, Kind, Problem, Reason, Request
from core.schedule.moments import (
    parse_clock,
    parse_end,
    parse_moment,
    parse_quiet,
    parse_times,
    parse_until,
    tells_span,
)
from core.schedule.moving import (
    is_midnight,
    moved,
    names_weekday,
    names_weekdays,
    split_time,
    two_half_hours,
    two_hours,
    weekdays_of,
)
from core.schedule.notation import from_text, to_text
from core.schedule.quiet import Quiet
from core.schedule.recurrence import next_after
from core.schedule.request import is_to_come, parse_anew, parse_request, tells_rhythm
from core.schedule.rhythm import Plan
from core.schedule.rules import Every, Monthly, NthWeekday, Once, Rule, Weekly, Yearly
from core.schedule.several import bare_second, parse_several
from core.schedule.tasks import is_chore, kind_of, names_task, names_things_only
from core.schedule.zones import zone_guess

__all__ = [
    "KINDS",
    "BadRule",
    "Every",
    "Kind",
    "Monthly",
    "NaiveTime",
    "NthWeekday",
    "Once",
    "Plan",
    "Problem",
    "Quiet",
    "Reason",
    "Request",
    "Rule",
    "Weekly",
    "Yearly",
    "bare_second",
    "from_text",
    "is_chore",
    "is_midnight",
    "is_to_come",
    "kind_of",
    "moment_at",
    "moved",
    "names_task",
    "names_things_only",
    "names_weekday",
    "names_weekdays",
    "next_after",
    "parse_anew",
    "parse_clock",
    "parse_end",
    "parse_moment",
    "parse_quiet",
    "parse_request",
    "parse_several",
    "parse_times",
    "parse_until",
    "soon",
    "split_time",
    "tells_rhythm",
    "tells_span",
    "to_text",
    "two_half_hours",
    "two_hours",
    "weekdays_of",
    "zone_guess",
]
