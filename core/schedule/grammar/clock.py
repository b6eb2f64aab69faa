"""Times of day: 19:00, 7pm, half past eight, noon."""

from __future__ import annotations

from core.schedule.pieces import Clock, DayPart, Flaw
from core.schedule.tokens import Line, Parsed, first_of
from core.schedule.words.tasks import MEASURES, TO, VERBS

ClockLike = Clock | DayPart | Flaw

MORNING = 6
"""Fewer hours behind a day are a span in English: `tomorrow 2 h after feeding`."""

ABOUT = 2
"""The value of a word for at that may also stand before a count: `about 3 pellets`."""

GLUED_HALVES = {"a": 0, "p": 12}
"""Letters for am and pm that touch their hour: `7p`."""


def clock(line: Line, i: int) -> Parsed[ClockLike]:
    """clock := (with_minutes | with_half | spaced AM_PM | spoken | with_oclock | part) [ISH]."""
    found = first_of(
        line,
        i,
        with_minutes,
        with_half_of_day,
        _spaced_half,
        _worded_half,
        spoken,
        half_of_hour,
        _worded_to,
        with_oclock,
        part,
    )
    return None if found is None else (found[0], line.skip(found[1], "ish"))


def clock_after_at(line: Line, i: int) -> Parsed[ClockLike]:
    """clock_after_at := AT [THE] (clock | minutes_to | dotted | military | ... | bare_hour) [ISH].

    A number alone behind a word like about is an hour only where no word of the task follows.
    """
    at = line.word(i, "at")
    if at is None:
        return None
    i = line.skip(at[1], "the")
    found = first_of(line, i, clock, minutes_to, dotted, worded)
    if found is None:
        found = first_of(line, i, military, glued_minutes, spaced, bare_hour)
        if found is not None and at[0] == ABOUT and not _stands_alone(line, found[1]):
            return None
    return None if found is None else (found[0], line.skip(found[1], "ish"))


def _stands_alone(line: Line, i: int) -> bool:
    """Tell whether no word of a task follows: the end, a sign, or words of time."""
    after = line.skip(i, "ish")
    return line.at_end(after) or not line.tokens[after].text.isalpha() or line.may_begin(after)


def with_minutes(line: Line, i: int) -> Parsed[ClockLike]:
    """with_minutes := hour ":" minute [":" second] [AM_PM] | hour "." minute AM_PM."""
    hour = line.integer(i)
    if hour is None:
        return None
    colon = line.sign(hour[1], ":", glued=True)
    dot = line.sign(hour[1], ".", glued=True)
    minute = line.digits((colon or dot or hour)[1])
    if (colon or dot) is None or minute is None or len(minute[0]) != 2:
        return None
    half = line.word(minute[1], "am_pm")
    if colon is None and half is None:
        return None
    return _twelve_hours(hour[0], int(minute[0]), half, _after_seconds(line, minute[1]))


def _after_seconds(line: Line, i: int) -> int:
    """The index after ":00" where a time of day was written with its seconds."""
    colon = line.sign(i, ":", glued=True)
    second = None if colon is None else line.digits(colon[1])
    return i if second is None else second[1]


def with_half_of_day(line: Line, i: int) -> Parsed[ClockLike]:
    """with_half_of_day := (hour | NUMBER) AM_PM | hour minute AM_PM, glued: 730pm."""
    digits = line.digits(i)
    if digits is not None and line.word(digits[1], "am_pm") is not None and len(digits[0]) > 2:
        return first_of(line, i, military, glued_minutes)
    hour = line.integer(i) or line.word(i, "number")
    half = None if hour is None else _half_of_day(line, hour[1])
    if hour is None or half is None:
        return None
    return _twelve_hours(hour[0], 0, half, half[1])


def _half_of_day(line: Line, i: int) -> Parsed[int]:
    """AM_PM, or its first letter where it touches the hour."""
    found = line.word(i, "am_pm")
    if found is not None or not line.is_glued(i) or line.digits(i - 1) is None:
        return found
    letter = GLUED_HALVES.get(line.tokens[i].folded)
    alone = letter is not None and not line.is_glued(i + 1)
    return (letter, i + 1) if letter is not None and alone else None


def with_oclock(line: Line, i: int) -> Parsed[ClockLike]:
    """with_oclock := hour "h" minute | hour OCLOCK [minute] | NUMBER OCLOCK, not after IN.

    A number that is an amount is no minute: 18 uhr 30%.
    """
    hour = line.integer(i) or line.word(i, "number")
    mark = None if hour is None else line.word(hour[1], "oclock")
    if hour is None or mark is None or military(line, i) is not None:
        return None
    minute = line.digits(mark[1])
    is_minute = minute is not None and len(minute[0]) == 2 and not is_amount(line, mark[1])
    if minute is not None and is_minute:
        return _checked(hour[0], int(minute[0])), minute[1]
    if line.word(hour[1], "unit") is not None and not _behind_at(line, i):
        return None
    half = line.word(mark[1], "am_pm")
    if half is not None:
        return _twelve_hours(hour[0], 0, half, half[1])
    return _checked(hour[0], 0, bare=True), mark[1]


def _behind_at(line: Line, i: int) -> bool:
    """Tell whether AT, of one word or two, ends before token `i`."""
    ends = [line.word(i - size, "at") for size in (1, 2)]
    return any(end is not None and end[1] == i for end in ends)


def oclock_after_day(line: Line, i: int) -> Parsed[ClockLike]:
    """oclock_after_day := hour OCLOCK, where a day stands before; it may be a word for hours.

    English says a span so, but for hours of the morning: tomorrow 8 hour.
    """
    hour = line.integer(i)
    mark = None if hour is None else line.word(hour[1], "oclock")
    if hour is None or mark is None or (line.vocabulary.language == "en" and hour[0] < MORNING):
        return None
    return _checked(hour[0], 0), mark[1]


def spoken(line: Line, i: int) -> Parsed[ClockLike]:
    """spoken := (HALF | QUARTER | minutes) (PAST | TO_HOUR) hour [AM_PM] | HALF_HOUR hour."""
    before = line.word(i, "half_hour")
    if before is not None:
        return _offset_hour(line, before[1], -30)
    quarter = line.word(i, "quarter")
    count = quarter or _thirty(line, i) or line.integer(i) or line.word(i, "number")
    if count is None:
        return None
    joint = _behind_dash(line, count[1])
    past = line.word(joint, "past") or (quarter and line.word(joint, "in"))
    to = line.word(joint, "to_hour")
    if past is not None:
        return _offset_hour(line, past[1], count[0]) or (Flaw("unclear"), past[1])
    return None if to is None or quarter is None else _offset_hour(line, to[1], -count[0])


def _behind_dash(line: Line, i: int) -> int:
    """The index after a dash that joins two words: half-past."""
    dash = line.sign(i, "-", glued=True)
    return i if dash is None else dash[1]


def half_of_hour(line: Line, i: int) -> Parsed[ClockLike]:
    """half_of_hour := HALF (hour | NUMBER) [AM_PM], in English: the hour and a half.

    It is doubtful where nothing tells the half of the day. A count is none: half 3 days.
    """
    half = line.word(i, "half")
    if half is None or line.vocabulary.language != "en":
        return None
    start = _behind_dash(line, half[1])
    hour = with_half_of_day(line, start)
    if hour is not None and isinstance(hour[0], Clock):
        return Clock(hour[0].hour, 30), hour[1]
    bare = bare_hour(line, start)
    if bare is None or not isinstance(bare[0], Clock) or not 1 <= bare[0].hour <= 12:
        return None
    counts = line.word(bare[1], "unit") or line.word(bare[1], "times")
    return None if counts else (Clock(bare[0].hour, 30, bare[0].bare, doubtful=True), bare[1])


def worded(line: Line, i: int) -> Parsed[ClockLike]:
    """worded := NUMBER NUMBER [AM_PM], both in words, where AT stands before: seven thirty."""
    hour = line.word(i, "number")
    minute = None if hour is None else line.word(hour[1], "number")
    if hour is None or minute is None or not 1 <= hour[0] <= 12 or not 10 <= minute[0] < 60:
        return None
    half = line.word(minute[1], "am_pm")
    if half is not None:
        return _twelve_hours(hour[0], minute[0], half, half[1])
    return _checked(hour[0], minute[0], bare=True), minute[1]


def _worded_half(line: Line, i: int) -> Parsed[ClockLike]:
    """worded_half := worded that ends with AM_PM, which stands anywhere."""
    found = worded(line, i)
    return found if found is not None and line.word(found[1] - 1, "am_pm") is not None else None


def minutes_to(line: Line, i: int) -> Parsed[ClockLike]:
    """minutes_to := (5 | 10 | 20 | 25) TO_HOUR hour, where AT stands before."""
    count = line.integer(i) or line.word(i, "number")
    to = None if count is None else line.word(count[1], "to_hour")
    if count is None or to is None or count[0] not in (5, 10, 20, 25):
        return None
    return _offset_hour(line, to[1], -count[0])


def _worded_to(line: Line, i: int) -> Parsed[ClockLike]:
    """worded_to := minutes_to whose minutes are a word, and no word of a task behind the hour."""
    found = minutes_to(line, i) if line.word(i, "number") is not None else None
    return found if found is not None and _stands_alone(line, found[1]) else None


def part(line: Line, i: int) -> Parsed[ClockLike]:
    """part := PART | PARTS."""
    several = line.word(i, "parts")
    if several is not None:
        return DayPart(several[0], repeats=True), several[1]
    found = line.word(i, "part")
    return None if found is None else (DayPart(found[0]), found[1])


def part_after_in(line: Line, i: int) -> Parsed[ClockLike]:
    """part_after_in := (IN | ON | AT) [THE] PART | a PART that begins so: after lunch."""
    start = line.skip(i, "in", "on", "at")
    if start == i:
        return None
    return part(line, i) or part(line, line.skip(start, "the"))


def hour_for(line: Line, i: int) -> Parsed[ClockLike]:
    """hour_for := LASTING [AT] (clock | noon | hour_of_day), in English.

    Any other number behind it is how long, or a count: for 8 hours, for 8 fish.
    """
    lasting = line.word(i, "lasting") if line.vocabulary.language == "en" else None
    if lasting is None:
        return None
    start = line.skip(lasting[1], "at")
    found = clock(line, start)
    if found is not None:
        alone = not isinstance(found[0], DayPart) or found[0].name in _HOURS
        return found if alone else None
    return _hour_of_day(line, start, begins=_begins(line, i))


def hour_in_front(line: Line, i: int) -> Parsed[ClockLike]:
    """hour_in_front := an hour before TONIGHT or IN THE PART, where a text begins in English."""
    english = line.vocabulary.language == "en" and _begins(line, i)
    return _hour_of_day(line, i, begins=False) if english else None


def _begins(line: Line, i: int) -> bool:
    return all(line.skip(k, "filler") != k for k in range(i))


def _hour_of_day(line: Line, i: int, *, begins: bool) -> Parsed[ClockLike]:
    """A bare hour right before the part of its day: 8 tonight; where a text begins, before a day.

    There it may stand before its task as well: for 8 to test.
    """
    hour = dotted(line, i) or spaced(line, i) or bare_hour(line, i)
    if hour is None or not isinstance(hour[0], Clock):
        return None
    at, end = hour[0], hour[1]
    of_part = line.word(end, "near_part") is not None or part_after_in(line, end) is not None
    day = line.word(end, "near") or line.word(end, "weekday")
    of_part = of_part or (day is not None and part(line, day[1]) is not None)
    task = end + 1 < len(line) and line.tokens[end].folded in TO
    task = task and line.tokens[end + 1].folded in VERBS
    if not of_part and not (begins and (day is not None or task)):
        return None
    return (Clock(at.hour, at.minute, bare=at.bare or (of_part and 1 <= at.hour <= 11)), end)


_HOURS = frozenset({"noon", "midnight"})
"""Parts of the day that are an hour."""


def dotted(line: Line, i: int) -> Parsed[ClockLike]:
    """dotted := hour "." minute, two digits, where AT stands before."""
    hour = line.integer(i)
    dot = None if hour is None else line.sign(hour[1], ".", glued=True)
    minute = None if dot is None else line.digits(dot[1])
    if hour is None or minute is None or len(minute[0]) != 2:
        return None
    return _checked(hour[0], int(minute[0])), minute[1]


def military(line: Line, i: int) -> Parsed[ClockLike]:
    """military := four digits, where AT stands before; "0730 am" too."""
    digits = line.digits(i)
    if digits is None or len(digits[0]) != 4 or is_amount(line, i):
        return None
    half = line.word(digits[1], "am_pm")
    end = line.skip(digits[1], "oclock") if line.is_glued(digits[1]) else digits[1]
    return _twelve_hours(int(digits[0][:2]), int(digits[0][2:]), half, end)


def glued_minutes(line: Line, i: int) -> Parsed[ClockLike]:
    """glued_minutes := three digits [AM_PM], where AT stands before; asked without am and pm."""
    digits = line.digits(i)
    if digits is None or len(digits[0]) != 3 or is_amount(line, i):
        return None
    hour, minute = int(digits[0][0]), int(digits[0][1:])
    half = line.word(digits[1], "am_pm")
    if half is not None:
        return _twelve_hours(hour, minute, half, digits[1])
    if not hour or minute > 59:
        return None
    return Flaw("ambiguous", tuple(f"at {each:02}:{minute:02}" for each in (hour, hour + 12))), (
        digits[1]
    )


def spaced(line: Line, i: int) -> Parsed[ClockLike]:
    """spaced := hour minute [AM_PM], two digits of minutes that are no amount, as in 19 30."""
    hour = line.integer(i)
    minute = None if hour is None else line.digits(hour[1])
    if hour is None or minute is None or len(minute[0]) != 2 or is_amount(line, hour[1]):
        return None
    if hour[0] > 23 or int(minute[0]) > 59 or len(line.tokens[i].text) > 2:
        return None
    half = line.word(minute[1], "am_pm")
    return _twelve_hours(hour[0], int(minute[0]), half, minute[1])


def _spaced_half(line: Line, i: int) -> Parsed[ClockLike]:
    """spaced_half := spaced that ends with AM_PM, which stands anywhere."""
    found = spaced(line, i) or glued_minutes(line, i)
    return found if found is not None and line.word(found[1] - 1, "am_pm") is not None else None


def is_amount(line: Line, i: int) -> bool:
    """Tell whether a number, or a span of numbers, has a unit: it is of the task (30%, 5-10 ml)."""
    number = line.digits(i)
    if number is None:
        return False
    end = number[1]
    point = line.sign(end, ".", ",", glued=True)
    fraction = None if point is None else line.digits(point[1])
    end = end if fraction is None else fraction[1]
    dash = line.sign(end, "-", "–")
    if dash is not None and line.digits(dash[1]) is not None:
        return is_amount(line, dash[1])
    return end < len(line) and line.tokens[end].folded in MEASURES


def bare_hour(line: Line, i: int) -> Parsed[ClockLike]:
    """bare_hour := hour, where AT or a day stands before; "8 h" too."""
    hour = line.integer(i) or line.word(i, "number")
    if hour is None or line.sign(hour[1], "/") is not None or is_amount(line, i):
        return None
    if line.sign(hour[1], ":", glued=True) is not None and line.digits(hour[1] + 1) is not None:
        return Flaw("impossible"), hour[1] + 2
    past = line.word(hour[1], "past")
    if past is not None and line.at_end(past[1]):
        return Flaw("unclear"), past[1]
    return _checked(hour[0], 0, bare=True), hour[1]


def _thirty(line: Line, i: int) -> Parsed[int]:
    half = line.word(i, "half")
    return None if half is None else (30, half[1])


def _offset_hour(line: Line, i: int, minutes: int) -> Parsed[ClockLike]:
    hour = with_half_of_day(line, i) or bare_hour(line, i)
    if hour is None or not isinstance(hour[0], Clock):
        return hour
    total = (hour[0].hour * 60 + minutes) % (24 * 60)
    return Clock(total // 60, total % 60, bare=hour[0].bare), hour[1]


def _twelve_hours(hour: int, minute: int, half: Parsed[int], end: int) -> tuple[ClockLike, int]:
    """A time of day with am or pm, where they were said; 13 pm is 13:00."""
    if half is None:
        return _checked(hour, minute), end
    if hour == 0 or hour > 12:
        plain = (half[0] == 12 and 12 < hour < 24) or hour == half[0] == 0
        return (_checked(hour, minute) if plain else Flaw("impossible")), half[1]
    return _checked(hour % 12 + half[0], minute), half[1]


def _checked(hour: int, minute: int, *, bare: bool = False) -> ClockLike:
    if (hour, minute) == (24, 0):
        return Flaw("ambiguous", ("at 23:59", "at 00:00"))
    if hour > 23 or minute > 59:
        return Flaw("impossible")
    return Clock(hour, minute, bare and 1 <= hour <= 11)
