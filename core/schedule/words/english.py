"""English words of time."""

from __future__ import annotations

from core.schedule.words.vocabulary import build

ENGLISH = build(
    "en",
    {
        "weekday": {
            "monday|mon": 0,
            "tuesday|tue|tues": 1,
            "wednesday|wed|weds": 2,
            "thursday|thu|thur|thurs": 3,
            "friday|fri": 4,
            "saturday|sat": 5,
            "sunday|sun": 6,
        },
        "weekdays": {
            "mondays|mons": (0,),
            "tuesdays": (1,),
            "wednesdays": (2,),
            "thursdays": (3,),
            "fridays|fris": (4,),
            "saturdays|sats": (5,),
            "sundays|suns": (6,),
            "weekday|weekdays|working day|working days|workday|workdays|week day|week days": (
                0,
                1,
                2,
                3,
                4,
            ),
            "weekends": (5, 6),
        },
        "month": {
            "january|jan": 1,
            "february|feb": 2,
            "march|mar": 3,
            "april|apr": 4,
            "may": 5,
            "june|jun": 6,
            "july|jul": 7,
            "august|aug": 8,
            "september|sept|sep": 9,
            "october|oct": 10,
            "november|nov": 11,
            "december|dec": 12,
        },
        "unit": {
            "minute|minutes|min|mins|m": "minutes",
            "hour|hours|h|hr|hrs": "hours",
            "day|days|d": "days",
            "week|weeks|wk|wks|w": "weeks",
            "fortnight|fortnights": "fortnights",
            "month|months|mo|mos|mth|mths": "months",
            "year|years|yr|yrs|y": "years",
        },
        "number": {
            "one": 1,
            "two|a couple of|couple of|a couple": 2,
            "three": 3,
            "four": 4,
            "five": 5,
            "six": 6,
            "seven": 7,
            "eight": 8,
            "nine": 9,
            "ten": 10,
            "eleven": 11,
            "twelve": 12,
            "fourteen": 14,
            "fifteen": 15,
            "twenty": 20,
            "twenty four|twenty-four": 24,
            "twenty five|twenty-five": 25,
            "thirty": 30,
            "thirty five|thirty-five": 35,
            "forty": 40,
            "forty five|forty-five": 45,
            "forty eight|forty-eight": 48,
            "fifty": 50,
            "fifty five|fifty-five": 55,
            "ninety": 90,
        },
        "article": {"a|an": 1},
        "half": {"half": 1},
        "ordinal": {
            "first": 1,
            "second": 2,
            "third": 3,
            "fourth": 4,
            "fifth": 5,
            "sixth": 6,
            "seventh": 7,
            "eighth": 8,
            "ninth": 9,
            "tenth": 10,
            "fifteenth": 15,
            "twentieth": 20,
            "last": -1,
        },
        "ordinal_ending": {"st|nd|rd|th": 1},
        "other": {"other|alternate": 2},
        "often": {
            "hourly": (1, "hours"),
            "daily|once daily": (1, "days"),
            "weekly|once weekly": (1, "weeks"),
            "fortnightly": (2, "weeks"),
            "monthly|once monthly": (1, "months"),
            "quarterly|every quarter|each quarter": (3, "months"),
            "half-yearly|twice a year|twice yearly|every half year": (6, "months"),
            "yearly|annually|once yearly": (12, "months"),
        },
        "vague": {
            "both days|both of the days|both those days|both of those days|"
            "both nights|both mornings|both evenings": (),
            "twice a week|twice weekly|twice per week|two times a week": (
                "every monday and thursday",
                "every 3 days",
            ),
            "biweekly|bi-weekly": ("every 2 weeks", "every monday and thursday"),
            "twice a month|twice monthly|semi-monthly": (
                "on the 1st and 15th of every month",
                "every 2 weeks",
            ),
            "bimonthly|bi-monthly": ("every 2 months", "on the 1st and 15th of every month"),
            "twice a day|twice daily|two times a day": ("every 12 hours",),
            "now and then|sometimes|from time to time|regularly|often": ("every 7 days",),
            "soon|later|some time|sometime": ("in 1 hour", "this evening", "tomorrow"),
            "at dawn|at sunrise|at daybreak|at first light": ("at 06:00", "at 08:00"),
            "at dusk|at sunset|at nightfall": ("at 18:00", "at 20:00"),
            "at lights on|when the lights come on|when the lights go on": ("at 08:00", "at 10:00"),
            "at lights off|at lights out|when the lights go out|when the lights go off": (
                "at 20:00",
                "at 22:00",
            ),
            "every few days|every couple of days": ("every 2 days", "every 3 days"),
            "every few weeks": ("every 2 weeks", "every 3 weeks"),
        },
        "times": {"times|time|x": 1},
        "once": {"once": 1},
        "part": {
            "after breakfast|before breakfast|before work|before school|"
            "when i get up|when i wake up|at breakfast|at breakfast time|with breakfast|"
            "breakfast time|breakfasttime|after brekkie|at brekkie|first thing|"
            "first thing in the morning|early morning|early in the morning|mid morning|"
            "mid-morning|midmorning|late morning": "morning",
            "after lunch|early afternoon|mid afternoon|mid-afternoon|midafternoon|"
            "late afternoon|late in the afternoon": "afternoon",
            "after work|after school|after college|after dinner|after tea|"
            "at dinner|at dinner time|at dinnertime|dinner time|dinnertime|with dinner|"
            "at tea|at tea time|at teatime|tea time|teatime|at supper|at suppertime|suppertime|"
            "at supper time|early evening|early in the evening|end of the day|end of day|"
            "the end of the day|after supper|when i get home|when i get back home|"
            "when i get in|once i get home|when i am home|when i'm home|"
            "when im home|when i get back from work|when i get home from work": "evening",
            "before bed|before bedtime|before i go to bed|before going to bed|"
            "before sleep|when i go to bed|last thing at night|last thing|late evening|"
            "late in the evening|late at night": "night",
            "morning": "morning",
            "noon|midday|lunchtime|lunch|noonish|lunch time|lunch-time|lunchtimeish|"
            "the middle of the day|middle of the day|12 noon|12 midday|twelve noon": "noon",
            "afternoon": "afternoon",
            "evening": "evening",
            "night|bedtime": "night",
            "midnight|12 midnight|twelve midnight|midnightish": "midnight",
        },
        "parts": {
            "mornings": "morning",
            "afternoons": "afternoon",
            "evenings": "evening",
            "nights": "night",
        },
        "near": {
            "today": 0,
            "yesterday": -1,
            "tomorrow|2morrow|2moro|tmrw|tmr|tomorow|tommorow|tommorrow": 1,
            "tomoro|tomorro|tomoz|tmw|tmrrw|tmro|2mrw|2mro|2moz|2morro": 1,
            "day after tomorrow|the day after tomorrow": 2,
        },
        "near_part": {
            "tonight|this evening|this night": (0, "evening"),
            "tonite|2nite|2night|tnite|tonyt": (0, "evening"),
            "this morning": (0, "morning"),
            "first thing tomorrow|first thing tomorrow morning|early tomorrow|"
            "early tomorrow morning|tomorrow first thing": (1, "morning"),
            "this afternoon": (0, "afternoon"),
            "nightly|every night|each night": (None, "night"),
        },
        "am_pm": {"am|a.m.|a.m": 0, "pm|p.m.|p.m": 12},
        "oclock": {"o'clock|oclock|hours|hour|h|hrs|hr|ish": 1},
        "ish": {"ish|-ish|- ish|sharp|on the dot|on the nose|or so|or thereabouts|prompt": 1},
        "past": {"past": 1},
        "to_hour": {"to": 1},
        "quarter": {"quarter|a quarter": 15},
        "every": {"every|each|evry|evrey|ever": 1},
        "at": {
            "at|@|at exactly|exactly at|at precisely": 1,
            "by|around|about|before|after|at around|at about|at roughly|around about|round about|"
            "roundabout|roughly|approx|approximately|at approx|at approximately|circa|~|"
            "sometime around|sometime about|sometime after|sometime before|some time around|"
            "some time about|some time after|some time before|no later than|not later than|"
            "no earlier than|not earlier than|not before|just before|just after|shortly after|"
            "shortly before": 2,
        },
        "on": {"on": 1},
        "both": {"both|both on|both of": 1},
        "in": {"in|after": 1},
        "the": {"the": 1},
        "of": {"of|of the|in the|in|of each|of every|each|every|per|a": 1},
        "and": {"and|&|,|+|, and": 1},
        "through": {"to|through|thru|-|until|till": 1},
        "except": {"except|except on|except for|but not|but not on": 1},
        "loose": {"between|except|but|and|or|unless|if|when": 1},
        "next": {"next|nxt|the next|coming|the coming": 1},
        "this": {"this": 1},
        "from_now": {"from now|from today|later|time|' time|'s time": 1},
        "until": {"until|till|til|up to": 1},
        "lasting": {"for|for the next": 1},
        "start": {"starting|starting on|starting from|beginning|from|as of|first on": 1},
        "month_end": {"end of": 1},
        "month_start": {"start of|beginning of": 1, "middle of|mid": 15},
        "last_day": {"last day": 1},
        "weekend": {"weekend": (5, 6)},
        "day_word": {"day": 1},
        "filler": {"please|or so|to|me|that|i should|i need to|i must": 1},
    },
    day_first=False,
)
