"""What "remind me to ..." means. It is Wednesday, 4 March 2026, 15:00 in Berlin.

The meanings are the contract's and everyday English; the calendar is the source of the dates.
"""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.schedule import KINDS, NaiveTime, Problem, Request, parse_request, to_text
from core.schedule.words.english import ENGLISH

BERLIN = ZoneInfo("Europe/Berlin")
NOW = datetime(2026, 3, 4, 15, tzinfo=BERLIN)


def asked(text):
    return parse_request(text, NOW, BERLIN)


# text | task | rule | first time
UNDERSTOOD = """
# intervals count from now, by local days or by elapsed hours
test fern every 7 days at 19:00 | test fern | every 7 days at 19:00 | 2026-03-11 19:00
test fern every 10 days | test fern | every 10 days | 2026-03-14 15:00
dose every 2 weeks | dose | every 2 weeks | 2026-03-18 15:00
clean sponge every fortnight | clean sponge | every 2 weeks | 2026-03-18 15:00
feed every other day | feed | every 2 days | 2026-03-06 15:00
top up fern every 3rd day at 18:00 | top up fern | every 3 days at 18:00 | 2026-03-07 18:00
test kh tomorrow after work | test kh | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
feed tomorrow before bed | feed | once 2026-03-05T21:00+01:00 | 2026-03-05 21:00
feed tonight before bed | feed | once 2026-03-04T21:00+01:00 | 2026-03-04 21:00
test kh friday after lunch | test kh | once 2026-03-06T15:00+01:00 | 2026-03-06 15:00
test ph when i get home | test ph | once 2026-03-04T19:00+01:00 | 2026-03-04 19:00
look at 6 after work | look | once 2026-03-04T18:00+01:00 | 2026-03-04 18:00
poke every day after work | poke | every day at 19:00 | 2026-03-04 19:00
test friday at lunch | test | once 2026-03-06T12:00+01:00 | 2026-03-06 12:00
kh morgen nach der arbeit | kh | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
kh demain après le travail | kh | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
kh jutro po pracy | kh | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
both saturday and sunday at 8 to test | test | every saturday, sunday at 08:00 | 2026-03-07 08:00
feed on both tuesday and friday | feed | every tuesday, friday at 09:00 | 2026-03-06 09:00
test both tomorrow | test both | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
test quarterly | test | every 3 months | 2026-06-04 15:00
test weekly | test | every 1 week | 2026-03-11 15:00
test every week at 10:00 | test | every 1 week at 10:00 | 2026-03-11 10:00
test once a week | test | every 1 week | 2026-03-11 15:00
test once every ten days | test | every 10 days | 2026-03-14 15:00
test, every three days at six pm | test | every 3 days at 18:00 | 2026-03-07 18:00
replace the kit every year | replace the kit | every 12 months | 2027-03-04 15:00
replace the kit every 2 years | replace the kit | every 24 months | 2028-03-04 15:00
feed every 12 hours | feed | every 12 hours | 2026-03-05 03:00
feed every 4h | feed | every 4 hours | 2026-03-04 19:00
clean sponge every 1.5 days | clean sponge | every 36 hours | 2026-03-06 03:00
test kh every 8 hours from 6:00 | test kh | every 8 hours | 2026-03-05 06:00
# every day keeps to the clock, today included
feed daily at 9 | feed | every day at 09:00 | 2026-03-05 09:00
feed every day at 18:00 | feed | every day at 18:00 | 2026-03-04 18:00
to feed the fish every morning | feed the fish | every day at 09:00 | 2026-03-05 09:00
feed every evening at 8 | feed | every day at 20:00 | 2026-03-04 20:00
dose 5 ml at 7:30 am every day | dose 5 ml | every day at 07:30 | 2026-03-05 07:30
feed nightly | feed | every day at 21:00 | 2026-03-04 21:00
# an hour and its minutes apart; a number with a unit is of the task
every evening at 19 30 to test | test | every day at 19:30 | 2026-03-04 19:30
daily 19 30 to test | test | every day at 19:30 | 2026-03-04 19:30
water change every sunday 7 30 pm | water change | every sunday at 19:30 | 2026-03-08 19:30
every sunday at 18 30% change | 30% change | every sunday at 18:00 | 2026-03-08 18:00
every sunday at 18 20 l change | 20 l change | every sunday at 18:00 | 2026-03-08 18:00
sunday 10 to change 20 l | change 20 l | once 2026-03-08T10:00+01:00 | 2026-03-08 10:00
sat 7 to test | test | once 2026-03-07T07:00+01:00 | 2026-03-07 07:00
sat 7 test kh | test kh | once 2026-03-07T07:00+01:00 | 2026-03-07 07:00
every sunday 10 to change 20 l | change 20 l | every sunday at 10:00 | 2026-03-08 10:00
every day 10 to feed | feed | every day at 10:00 | 2026-03-05 10:00
söndag 10 att byta vatten | byta vatten | once 2026-03-08T10:00+01:00 | 2026-03-08 10:00
dimanche 10 de changer l'eau | changer l'eau | once 2026-03-08T10:00+01:00 | 2026-03-08 10:00
sunday 10 l change | 10 l change | once 2026-03-08T09:00+01:00 | 2026-03-08 09:00
sunday 10 fish arrive | 10 fish arrive | once 2026-03-08T09:00+01:00 | 2026-03-08 09:00
friday 2 changes | 2 changes | once 2026-03-06T09:00+01:00 | 2026-03-06 09:00
monday 5 to 10 ml ferts | 5 to 10 ml ferts | once 2026-03-09T09:00+01:00 | 2026-03-09 09:00
every monday 10 20 ml iron | 10 20 ml iron | every monday at 09:00 | 2026-03-09 09:00
# days of the week
change quarry every sunday 10:00 | change quarry | every sunday at 10:00 | 2026-03-08 10:00
every sunday 10:00 change quarry | change quarry | every sunday at 10:00 | 2026-03-08 10:00
change quarry every Sunday 10 | change quarry | every sunday at 10:00 | 2026-03-08 10:00
change 30% of quarry every sunday at 10am | change 30% of quarry | every sunday at 10:00 | 2026-03-08 10:00
feed weekdays at 18:30 | feed | every monday, tuesday, wednesday, thursday, friday at 18:30 | 2026-03-04 18:30
feed mon-fri 8:00 | feed | every monday, tuesday, wednesday, thursday, friday at 08:00 | 2026-03-05 08:00
feed on weekends | feed | every saturday, sunday at 09:00 | 2026-03-07 09:00
check it each mon, wed & fri 7pm | check it | every monday, wednesday, friday at 19:00 | 2026-03-04 19:00
test kh, gh and no3 every monday and thursday at 7.30pm | test kh, gh and no3 | every monday, thursday at 19:30 | 2026-03-05 19:30
change lagoon mondays | change lagoon | every monday at 09:00 | 2026-03-09 09:00
test weekly on sundays at 10 | test | every sunday at 10:00 | 2026-03-08 10:00
check it every friday night at 9 | check it | every friday at 21:00 | 2026-03-06 21:00
dose every day except sunday at 9 | dose | every monday, tuesday, wednesday, thursday, friday, saturday at 09:00 | 2026-03-05 09:00
change water every other saturday | change water | every 2 weeks on saturday at 09:00 | 2026-03-07 09:00
change it every 2 weeks on saturday at 10:00 | change it | every 2 weeks on saturday at 10:00 | 2026-03-07 10:00
rinse it every 6 weeks on a saturday | rinse it | every 6 weeks on saturday at 09:00 | 2026-03-07 09:00
# as many days as were said are the rhythm; do is a verb where English reads the rest
do ferts twice a week tues and fri | do ferts | every tuesday, friday at 09:00 | 2026-03-06 09:00
ferts 3 times a week mon wed fri 8pm | ferts | every monday, wednesday, friday at 20:00 | 2026-03-04 20:00
wc twice a week: sat and wed at 19:00 | wc | every wednesday, saturday at 19:00 | 2026-03-04 19:00
düngen zweimal pro woche di und fr | düngen | every tuesday, friday at 09:00 | 2026-03-06 09:00
do wc tomorrow at 19:00 | do wc | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
do 18 uhr wasserwechsel | wasserwechsel | once 2026-03-05T18:00+01:00 | 2026-03-05 18:00
# days of the month; the last day where a month is shorter
clean the filter on the 1st of the month | clean the filter | day 1 of every month at 09:00 | 2026-04-01 09:00
clean filter 1st of month | clean filter | day 1 of every month at 09:00 | 2026-04-01 09:00
buy salt every month on the 31st | buy salt | day 31 of every month at 09:00 | 2026-03-31 09:00
test every 31st | test | day 31 of every month at 09:00 | 2026-03-31 09:00
test on the last day of the month | test | day 31 of every month at 09:00 | 2026-03-31 09:00
test on the 1st and 15th of every month | test | day 1, 15 of every month at 09:00 | 2026-03-15 09:00
clean it every 3 months on the 1st at 8:00 | clean it | day 1 of every 3 months at 08:00 | 2026-04-01 08:00
test monthly on the 1st at 10 | test | day 1 of every month at 10:00 | 2026-04-01 10:00
vacuum every first sunday of the month at 11 | vacuum | first sunday of every month at 11:00 | 2026-04-05 11:00
vacuum last friday of every month | vacuum | last friday of every month at 09:00 | 2026-03-27 09:00
clean it every 3 months on the last day | clean it | day 31 of every 3 months at 09:00 | 2026-03-31 09:00
vacuum every month on the first monday | vacuum | first monday of every month at 09:00 | 2026-04-06 09:00
# once a year
replace kit every year on 1 march | replace kit | every year on 1 march at 09:00 | 2027-03-01 09:00
replace kit every 4 may at noon | replace kit | every year on 4 may at 12:00 | 2026-05-04 12:00
# a start
test every 7 days from now | test | every 7 days | 2026-03-11 15:00
test every 7 days starting today | test | every 7 days | 2026-03-11 15:00
test every 7 days starting today at 20:00 | test | every 7 days at 20:00 | 2026-03-04 20:00
change it every 7 days starting tomorrow at 10:00 | change it | every 7 days at 10:00 | 2026-03-05 10:00
every 3 days at 9pm starting monday feed | feed | every 3 days at 21:00 | 2026-03-09 21:00
change it every month starting 31 march | change it | day 31 of every month at 09:00 | 2026-03-31 09:00
# so long from now
retest kh in 24h | retest kh | once 2026-03-05T15:00+01:00 | 2026-03-05 15:00
check heater in 90 min | check heater | once 2026-03-04T16:30+01:00 | 2026-03-04 16:30
in 2h: check heater | check heater | once 2026-03-04T17:00+01:00 | 2026-03-04 17:00
test in an hour and a half | test | once 2026-03-04T16:30+01:00 | 2026-03-04 16:30
test in 1h30 | test | once 2026-03-04T16:30+01:00 | 2026-03-04 16:30
test in 1.5 hours | test | once 2026-03-04T16:30+01:00 | 2026-03-04 16:30
test in half an hour | test | once 2026-03-04T15:30+01:00 | 2026-03-04 15:30
test 3 days from now | test | once 2026-03-07T15:00+01:00 | 2026-03-07 15:00
test in 4 weeks | test | once 2026-04-01T15:00+02:00 | 2026-04-01 15:00
test in a month | test | once 2026-04-04T15:00+02:00 | 2026-04-04 15:00
change the 2nd tank's water in 3 days | change the 2nd tank's water | once 2026-03-07T15:00+01:00 | 2026-03-07 15:00
remind me in 10 minutes to turn off the pump | turn off the pump | once 2026-03-04T15:10+01:00 | 2026-03-04 15:10
# a day, a date, a time of day
dose tomorrow 20:00 | dose | once 2026-03-05T20:00+01:00 | 2026-03-05 20:00
dose tomorrow 8 in the morning | dose | once 2026-03-05T08:00+01:00 | 2026-03-05 08:00
tomorrow: feed fern | feed fern | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
test the day after tomorrow at 19 | test | once 2026-03-06T19:00+01:00 | 2026-03-06 19:00
test ph on monday at 8 | test ph | once 2026-03-09T08:00+01:00 | 2026-03-09 08:00
test on wednesday at 18:00 | test | once 2026-03-04T18:00+01:00 | 2026-03-04 18:00
test on wednesday at 14:00 | test | once 2026-03-11T14:00+01:00 | 2026-03-11 14:00
test next wednesday at 18:00 | test | once 2026-03-11T18:00+01:00 | 2026-03-11 18:00
test by friday | test | once 2026-03-06T09:00+01:00 | 2026-03-06 09:00
test this friday at noon | test | once 2026-03-06T12:00+01:00 | 2026-03-06 12:00
test monday next week | test | once 2026-03-09T09:00+01:00 | 2026-03-09 09:00
feed on the weekend | feed | once 2026-03-07T09:00+01:00 | 2026-03-07 09:00
test on the 15th at 6pm | test | once 2026-03-15T18:00+01:00 | 2026-03-15 18:00
test on the 1st of next month | test | once 2026-04-01T09:00+02:00 | 2026-04-01 09:00
test at the end of the month | test | once 2026-03-31T09:00+02:00 | 2026-03-31 09:00
calibrate probe on 4 May at 10 | calibrate probe | once 2026-05-04T10:00+02:00 | 2026-05-04 10:00
clean sponge May 4th 2027 10:00 | clean sponge | once 2027-05-04T10:00+02:00 | 2027-05-04 10:00
clean sponge 4.5. 10:00 | clean sponge | once 2026-05-04T10:00+02:00 | 2026-05-04 10:00
clean sponge 4.5.2026 | clean sponge | once 2026-05-04T09:00+02:00 | 2026-05-04 09:00
clean sponge on 29 feb | clean sponge | once 2028-02-29T09:00+01:00 | 2028-02-29 09:00
buy salt 25/12 | buy salt | once 2026-12-25T09:00+01:00 | 2026-12-25 09:00
buy salt 12/25/2026 at 9am | buy salt | once 2026-12-25T09:00+01:00 | 2026-12-25 09:00
buy salt on 3 march | buy salt | once 2027-03-03T09:00+01:00 | 2027-03-03 09:00
calibrate 2026-5-4 | calibrate | once 2026-05-04T09:00+02:00 | 2026-05-04 09:00
calibrate 2026-05-04 | calibrate | once 2026-05-04T09:00+02:00 | 2026-05-04 09:00
calibrate 2026-05-04 19:30 | calibrate | once 2026-05-04T19:30+02:00 | 2026-05-04 19:30
calibrate 2026-05-04T19:30Z | calibrate | once 2026-05-04T21:30+02:00 | 2026-05-04 21:30
feed on sunday 8 march at 10 | feed | once 2026-03-08T10:00+01:00 | 2026-03-08 10:00
check heater at 19:00 | check heater | once 2026-03-04T19:00+01:00 | 2026-03-04 19:00
check heater at 14:00 | check heater | once 2026-03-05T14:00+01:00 | 2026-03-05 14:00
feed at 7pm | feed | once 2026-03-04T19:00+01:00 | 2026-03-04 19:00
feed at 19h30 | feed | once 2026-03-04T19:30+01:00 | 2026-03-04 19:30
feed at quarter to 8 pm | feed | once 2026-03-04T19:45+01:00 | 2026-03-04 19:45
feed at 8 o'clock pm | feed | once 2026-03-04T20:00+01:00 | 2026-03-04 20:00
feed at 8 in the evening | feed | once 2026-03-04T20:00+01:00 | 2026-03-04 20:00
feed at 12:30 am | feed | once 2026-03-05T00:30+01:00 | 2026-03-05 00:30
feed at 12 pm tomorrow | feed | once 2026-03-05T12:00+01:00 | 2026-03-05 12:00
feed tonight | feed | once 2026-03-04T19:00+01:00 | 2026-03-04 19:00
feed this evening at 8 | feed | once 2026-03-04T20:00+01:00 | 2026-03-04 20:00
feed in the morning | feed | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
feed half 7pm | feed | once 2026-03-04T19:30+01:00 | 2026-03-04 19:30
feed every other day at half 7 pm | feed | every 2 days at 19:30 | 2026-03-06 19:30
feed at half seven in the evening | feed | once 2026-03-04T19:30+01:00 | 2026-03-04 19:30
feed every evening at half-seven | feed | every day at 19:30 | 2026-03-04 19:30
feed tomorrow morning round about half 8 | feed | once 2026-03-05T08:30+01:00 | 2026-03-05 08:30
feed at half-past 7 tomorrow | feed | once 2026-03-05T07:30+01:00 | 2026-03-05 07:30
feed tomorrow ten to 9 in the evening | feed | once 2026-03-05T20:50+01:00 | 2026-03-05 20:50
feed tomorrow at quarter after eight | feed | once 2026-03-05T08:15+01:00 | 2026-03-05 08:15
feed tomorrow at seven thirty pm | feed | once 2026-03-05T19:30+01:00 | 2026-03-05 19:30
feed tomorrow at twenty five to eight | feed | once 2026-03-05T07:35+01:00 | 2026-03-05 07:35
feed 730pm tomorrow | feed | once 2026-03-05T19:30+01:00 | 2026-03-05 19:30
feed at 1900hrs tomorrow | feed | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
feed tomorrow at 7p | feed | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
feed at 7:30ish tomorrow | feed | once 2026-03-05T07:30+01:00 | 2026-03-05 07:30
feed at around 7-ish tomorrow | feed | once 2026-03-05T07:00+01:00 | 2026-03-05 07:00
feed every day at 7pm sharp | feed | every day at 19:00 | 2026-03-04 19:00
feed tomorrow no later than 8pm | feed | once 2026-03-05T20:00+01:00 | 2026-03-05 20:00
feed every day 8 at night | feed | every day at 20:00 | 2026-03-04 20:00
feed tomorrow at lunch time | feed | once 2026-03-05T12:00+01:00 | 2026-03-05 12:00
feed at dinner time tomorrow | feed | once 2026-03-05T19:00+01:00 | 2026-03-05 19:00
feed first thing on monday | feed | once 2026-03-09T09:00+01:00 | 2026-03-09 09:00
feed early tomorrow morning | feed | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
feed last thing at night every day | feed | every day at 21:00 | 2026-03-04 21:00
feed tonight at midnight | feed | once 2026-03-05T00:00+01:00 | 2026-03-05 00:00
feed tonight at 12 | feed | once 2026-03-05T00:00+01:00 | 2026-03-05 00:00
feed at 12 tonight | feed | once 2026-03-05T00:00+01:00 | 2026-03-05 00:00
feed tonight at 00:30 | feed | once 2026-03-05T00:30+01:00 | 2026-03-05 00:30
feed tonight at 10 | feed | once 2026-03-04T22:00+01:00 | 2026-03-04 22:00
order food at the start of next month | order food | once 2026-04-01T09:00+02:00 | 2026-04-01 09:00
test in the middle of the month | test | once 2026-03-15T09:00+01:00 | 2026-03-15 09:00
clean it in 6 weeks, then every 6 weeks | clean it | every 6 weeks | 2026-04-15 15:00
# of the task, and no clock
change half every sunday | change half | every sunday at 09:00 | 2026-03-08 09:00
change half 5 days from now | change half | once 2026-03-09T15:00+01:00 | 2026-03-09 15:00
dose half 3 tanks tomorrow | dose half 3 tanks | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
feed half 7ml tomorrow | feed half 7ml | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
feed about 3 pellets every day | feed about 3 pellets | every 1 day | 2026-03-05 15:00
add roughly 3 spoons every sunday | add roughly 3 spoons | every sunday at 09:00 | 2026-03-08 09:00
tomorrow five to ten pellets | five to ten pellets | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
buy tea tomorrow | buy tea | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
order late afternoon food tomorrow | order late afternoon food | once 2026-03-05T09:00+01:00 | 2026-03-05 09:00
wake at midnight | wake | once 2026-03-05T00:00+01:00 | 2026-03-05 00:00
"""  # noqa: E501  # a row is a row


def rows(table):
    lines = (line for line in table.strip().splitlines() if not line.startswith("#"))
    return [tuple(cell.strip() for cell in line.split("|")) for line in lines]


@pytest.mark.parametrize(("text", "what", "rule", "first"), rows(UNDERSTOOD))
def test_understood(text, what, rule, first):
    request = asked(text)
    assert isinstance(request, Request), request
    assert request.what == what
    assert to_text(request.rule) == rule
    assert request.first.astimezone(BERLIN).strftime("%Y-%m-%d %H:%M") == first


@pytest.mark.parametrize(
    ("text", "reason", "fragment", "options"),
    [
        ("test fern", "no_time", "test fern", ["test fern every 7 days at 19:00"]),
        ("call mum on her birthday", "no_time", "call mum on her birthday", None),
        ("", "no_time", "", []),
        ("every 10 days", "no_what", "every 10 days", []),
        ("tomorrow 20:00 please", "no_what", "tomorrow 20:00 please", []),
        ("test yesterday", "past", "yesterday", []),
        (
            "feed today at 8",
            "past",
            "today at 8",
            ["feed today at 20:00", "feed tomorrow at 08:00"],
        ),
        ("feed today at 14:00", "past", "today at 14:00", ["feed tomorrow at 14:00"]),
        ("feed this morning", "past", "this morning", None),
        ("feed on 4 may 2025", "past", "on 4 may 2025", []),
        ("feed on 31 feb", "impossible", "on 31 feb", []),
        ("feed on 29 feb 2027", "impossible", "on 29 feb 2027", []),
        ("feed on the 32nd", "impossible", "on the 32nd", []),
        ("feed 2026-13-01", "impossible", "2026-13-01", []),
        ("feed at 25:00", "impossible", "at 25:00", []),
        ("feed at 19:60", "impossible", "at 19:60", []),
        ("feed at 7:5", "impossible", "at 7:5", []),
        ("feed every 7 days starting today at 9:00", "past", None, []),
        (
            "feed on the first monday",
            "ambiguous",
            None,
            ["feed first monday of every month at 09:00"],
        ),
        ("feed at 13am", "impossible", "at 13am", []),
        ("feed every 0 days", "impossible", "every 0 days", []),
        ("feed in 0 hours", "impossible", "in 0 hours", []),
        ("feed every 30 minutes", "too_often", "every 30 minutes", ["feed every hour"]),
        ("feed every 100000 days", "too_far", "every 100000 days", []),
        ("feed every 99999999999999999999 weeks", "too_far", None, []),
        ("feed in 20 years", "too_far", "in 20 years", []),
        ("feed in 9999999 hours", "too_far", "in 9999999 hours", []),
        ("feed on 4 may 2050", "too_far", "on 4 may 2050", []),
        ("feed on 4/5", "ambiguous", "on 4/5", ["feed on 4 May", "feed on 5 April"]),
        ("feed 7/11/2026", "ambiguous", "7/11/2026", None),
        (
            "feed tomorrow at 5",
            "ambiguous",
            "at 5",
            ["feed tomorrow at 05:00", "feed tomorrow at 17:00"],
        ),
        (
            "every sunday 5 to feed",
            "ambiguous",
            "5",
            ["every sunday at 05:00 to feed", "every sunday at 17:00 to feed"],
        ),
        (
            "feed every friday at half 7",
            "ambiguous",
            "at half 7",
            [f"feed every friday at {hour}:30" for hour in ("07", "19", "06", "18")],
        ),
        (
            "feed half 5 today",
            "ambiguous",
            "half 5",
            [f"feed at {each}:30 today" for each in (17, 16)],
        ),
        (
            "feed on friday at midnight",
            "ambiguous",
            "at midnight",
            ["feed on friday at 23:59", "feed on friday at 00:00"],
        ),
        ("feed at 730", "ambiguous", "at 730", ["feed at 07:30", "feed at 19:30"]),
        ("feed tomorrow at half past", "unclear", "at half past", []),
        ("feed at dawn every 3 days", "ambiguous", "at dawn", None),
        ("feed at 7", "ambiguous", "at 7", ["feed at 19:00", "feed tomorrow at 07:00"]),
        (
            "change quarry twice a week",
            "ambiguous",
            "twice a week",
            ["change quarry every monday and thursday", "change quarry every 3 days"],
        ),
        (
            "feed three times a week at 9:00",
            "ambiguous",
            "three times a week",
            ["feed every monday, wednesday and friday at 9:00", "feed every 2 days at 9:00"],
        ),
        ("feed 2x a day", "ambiguous", "2x a day", ["feed every 12 hours"]),
        ("feed every 2-3 days", "ambiguous", None, ["feed every 3 days", "feed every 2 days"]),
        ("vacuum every third sunday", "ambiguous", "every third sunday", None),
        ("test every 1.5 hours", "ambiguous", None, ["test every 1 hours", "test every 2 hours"]),
        ("feed every day at 9 until 4 May", "ends", "until 4 May", ["feed every day at 9"]),
        ("feed every day for 2 weeks", "ends", "for 2 weeks", ["feed every day"]),
        (
            "feed every day at 8:00 and at 20:00",
            "unclear",
            "every day at 8:00 and at 20:00",
            ["feed every day at 8:00", "feed every day at 20:00"],
        ),
        ("feed fern every day and quarry every 2 days", "unclear", None, []),
        ("feed fern every day and quarry too", "unclear", "every day and", []),
        ("test fern a week on friday", "unclear", "a week on friday", []),
        ("test fern 2 weeks after tomorrow", "unclear", "2 weeks after tomorrow", []),
        ("feed every 2 hours between 8 and 20", "unclear", "every 2 hours between", []),
        ("feed on monday 8 march", "unclear", "on monday 8 march", None),
    ],
)
def test_problem(text, reason, fragment, options):
    problem = asked(text)
    assert isinstance(problem, Problem), problem
    assert problem.reason == reason
    assert problem.text == text[problem.start : problem.end] or problem.start == problem.end
    if fragment is not None:
        assert problem.text == fragment
    if options is not None:
        assert list(problem.options)[: len(options)] == options
    assert problem.suggestion == next(iter(problem.options), None)


@pytest.mark.parametrize(
    "text",
    [
        "change quarry twice a week",
        "feed 3 times a week",
        "feed on 4/5",
        "feed at 7",
        "feed today at 8",
        "feed every 30 minutes",
        "vacuum every third sunday",
        "test fern",
        "feed every day at 9 until 4 May",
        "test every 1.5 hours",
        "test biweekly",
        "test every few days",
        "test soon",
    ],
)
def test_what_is_suggested_is_understood(text):
    problem = asked(text)
    assert problem.options
    for option in problem.options:
        request = asked(option)
        assert isinstance(request, Request), option
        assert request.what == text.split()[0] or request.what in text


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("test fern every 7 days", False),
        ("test fern in 24h", False),
        ("test fern tomorrow", False),
        ("test fern 2026-05-04T19:30+02:00", False),
        ("test fern 2026-05-04T19:30", True),
        ("test fern every 7 days at 19:00", True),
        ("test fern tonight", True),
        ("test fern every morning", True),
        ("test fern every 8 hours from 6:00", True),
    ],
)
def test_a_time_of_day_needs_a_zone(text, said):
    assert asked(text).clock_time_said is said


@pytest.mark.parametrize(
    ("text", "kind", "counts"),
    [
        ("test fern every 7 days", "test", True),
        ("retest kh in 24h", "test", False),
        ("check the nitrate every 7 days", "test", True),
        ("measure gh every sunday", "test", False),
        ("change quarry every 10 days", "change", True),
        ("change quarry every sunday", "change", False),
        ("change 30% every week", "change", True),
        ("water change fern every 2 weeks", "change", True),
        ("dose 5 ml every 2 days", "dose", False),
        ("add fertiliser every 2 days", "dose", False),
        ("clean the filter every 6 weeks", "filter", False),
        ("rinse the sponge every 6 weeks", "filter", False),
        ("change the carbon every month", "media", False),
        ("30% every sunday", "change", False),
        ("replace filter floss every month", "media", False),
        ("calibrate the ph probe every month", "calibrate", False),
        ("replace the kh test kit every year", "kit", False),
        ("check kit expiry every 6 months", "kit", False),
        ("feed every 2 days", "feed", False),
        ("top up lagoon every 2 days", "top_up", False),
        ("change the light bulb every year", "other", False),
        ("check heater every 7 days", "other", False),
        ("call the club every month", "other", False),
    ],
)
def test_sort_of_task(text, kind, counts):
    request = asked(text)
    assert request.kind == kind
    assert request.counts_from_done is counts


def test_seven_days_are_seven_days():
    """Contract: 'every 7 days at 19:00' is due for the first time in seven days."""
    for hour in (0, 18, 19, 20, 23):
        now = datetime(2026, 3, 4, hour, 30, tzinfo=BERLIN)
        request = parse_request("test fern every 7 days at 19:00", now, BERLIN)
        assert request.first == datetime(2026, 3, 11, 19, tzinfo=BERLIN)


def test_an_evening_that_has_begun_is_an_hour_from_now():
    now = datetime(2026, 3, 4, 20, 10, tzinfo=BERLIN)
    assert parse_request("feed tonight", now, BERLIN).first == now + timedelta(hours=1)


def test_a_gap_of_the_clocks_is_seen_when_asked():
    """europe, Rule EU (tz database 2025b): 02:30 on 29 March 2026 is 03:00."""
    request = asked("feed on 29 march at 2:30")
    assert to_text(request.rule) == "once 2026-03-29T03:00+02:00"


def test_words_keep_their_spelling():
    assert asked("Every Sunday at 10: rinse Fern's «big» SPONGE!").what == (
        "rinse Fern's «big» SPONGE"
    )


def test_now_must_be_aware():
    with pytest.raises(NaiveTime):
        parse_request("test fern in 2h", NOW.replace(tzinfo=None), BERLIN)


PHRASES = {" ".join(words) for phrases in ENGLISH.phrases.values() for words, _ in phrases}
NUMBERS = "0 1 2 7 10 19 31 99 2026 1.5 4/5 19:00 7pm 2026-05-04 31.12. ½"
SIGNS = "test fern : . / - , %"
words = st.sampled_from([*sorted(PHRASES), *NUMBERS.split(), *SIGNS.split()])


@given(st.lists(words, max_size=9).map(" ".join))
@settings(max_examples=250)
def test_any_words_of_time_give_a_request_to_come_or_a_problem(text):
    found = asked(text)
    if isinstance(found, Request):
        assert found.first > NOW
        assert found.what
        assert found.kind in KINDS
    else:
        assert 0 <= found.start <= found.end <= len(text)


@given(st.text(max_size=60))
@settings(max_examples=150)
def test_anything_may_be_said(text):
    assert isinstance(asked(text), Request | Problem)


@pytest.mark.parametrize(
    "text",
    [
        "every " * 20_000,
        "9" * 100_000,
        "every " + "9" * 5000 + " days feed",
        "at " * 30_000 + "10:00",
        "mon, " * 20_000,
        "1st and " * 20_000,
        "in 1h " * 20_000,
        "\u202e every 7 days \u202d feed",
        "\x00\x01 every 7 days",
        "every ٧ days feed",
        "every ² days feed",
    ],
)
def test_hostile_text_is_met_in_little_time(text):
    started = datetime.now(UTC)
    assert isinstance(asked(text), Request | Problem)
    assert datetime.now(UTC) - started < timedelta(seconds=2)


@pytest.mark.parametrize(
    ("text", "what", "first"),
    [
        ("turn off the co2 tonite", "turn off the co2", "2026-03-01 19:00"),
        ("test 2nite at 9", "test", "2026-03-01 21:00"),
        ("tomoro mornig to test kh", "test kh", "2026-03-02 09:00"),
        ("test kh thrusday", "test kh", "2026-03-05 09:00"),
        ("test kh this evning", "test kh", "2026-03-01 19:00"),
        ("mix the sundry salts at 20:00", "mix the sundry salts", "2026-03-01 20:00"),
    ],
)
def test_misspelt_words_of_time(text: str, what: str, first: str) -> None:
    now = datetime(2026, 3, 1, 12, tzinfo=UTC)
    request = parse_request(text, now, UTC)
    assert isinstance(request, Request)
    assert (request.what, f"{request.first:%Y-%m-%d %H:%M}") == (what, first)


@pytest.mark.parametrize(
    ("text", "what", "first"),
    [
        ("for 8 tonight to add 2g", "add 2g", "2026-03-01 20:00"),
        ("for 7 in the morning to check kh", "check kh", "2026-03-02 07:00"),
        ("for 8 tomorrow to test", "test", "2026-03-02 08:00"),
        ("for noon to feed", "feed", "2026-03-02 12:00"),
        ("for 9pm to turn off the co2", "turn off the co2", "2026-03-01 21:00"),
        ("for half past 6 tonight to test", "test", "2026-03-01 18:30"),
        ("for friday to test gh", "test gh", "2026-03-06 09:00"),
        ("for tonight to test", "test", "2026-03-01 19:00"),
        ("8 tonight to add 2g", "add 2g", "2026-03-01 20:00"),
        ("at 7.30 tonight test", "test", "2026-03-01 19:30"),
        ("dose for 8 fish tomorrow", "dose for 8 fish", "2026-03-02 09:00"),
        ("dose for 8 on friday", "dose for 8", "2026-03-06 09:00"),
        ("feed 8 tonight", "feed 8", "2026-03-01 19:00"),
    ],
)
def test_an_hour_behind_for_is_of_the_time_and_a_count_of_the_task(
    text: str, what: str, first: str
) -> None:
    request = parse_request(text, datetime(2026, 3, 1, 12, tzinfo=UTC), UTC)
    assert isinstance(request, Request)
    assert (request.what, f"{request.first:%Y-%m-%d %H:%M}") == (what, first)
