"""What readings mean: a table of rules, each a pure function of the state of a tank.

`find` runs the rules that what was just told wakes, worst first, and `stands` adds what was put
in and not tested since; `fresh_only` leaves out what
was told before; the chat words what it shows and keeps the rest under "more".
"""

from __future__ import annotations

from core.advice.findings._after_overdose import LOOKED_BACK, TESTED_BY, newest_test
from core.advice.findings._beside import would_poison
from core.advice.findings._buffer import is_kept_soft, low_kh, low_kh_limit, ph_moved
from core.advice.findings._deeds import MUCH, SAME_DAY
from core.advice.findings._lately import DEEDS, OVERDOSES, stands, unknown_in
from core.advice.findings._model import (
    CHANGE,
    DOSE,
    FIRST,
    RANK,
    STOCK,
    Finding,
    Rule,
    Severity,
    seen,
)
from core.advice.findings._patterns import NEW
from core.advice.findings._poisons import judge_ammonia, limit_of_nitrate
from core.advice.findings._repeats import REMEMBERED, Told, fresh_only, is_worse, key_of
from core.advice.findings._rules import BY_ID, RULES, STEADY, find

__all__ = [
    "BY_ID",
    "CHANGE",
    "DEEDS",
    "DOSE",
    "FIRST",
    "LOOKED_BACK",
    "MUCH",
    "NEW",
    "OVERDOSES",
    "RANK",
    "REMEMBERED",
    "RULES",
    "SAME_DAY",
    "STEADY",
    "STOCK",
    "TESTED_BY",
    "Finding",
    "Rule",
    "Severity",
    "Told",
    "find",
    "fresh_only",
    "is_kept_soft",
    "is_worse",
    "judge_ammonia",
    "key_of",
    "limit_of_nitrate",
    "low_kh",
    "low_kh_limit",
    "newest_test",
    "ph_moved",
    "seen",
    "stands",
    "unknown_in",
    "would_poison",
]
