"""All rules, each with what wakes it, what it can say, what to do first, and its source."""

from __future__ import annotations

from typing import Final

from core.advice.findings import (
    _animals,
    _buffer,
    _checks,
    _deeds,
    _leaps,
    _nutrients,
    _patterns,
    _poisons,
    _sea,
)
from core.advice.findings._after_overdose import without_doses
from core.advice.findings._beside import ammonia_first, retest_first
from core.advice.findings._model import CHANGE, DOSE, RANK, STOCK, Finding, Judge, Rule
from core.advice.jumps import JUMPING
from core.advice.state import State
from core.analytes import ANALYTES

PRACTICE: Final = "common practice, no source"


def _rule(wakes: str, judge: Judge, ids: str, first: str, source: str = PRACTICE) -> Rule:
    return Rule(frozenset(wakes.split()), judge, tuple(ids.split()), first, source)


RULES: Final[tuple[Rule, ...]] = (
    _rule(
        "ammonia ph temperature salinity",
        _poisons.ammonia,
        "ammonia ammonia_without_ph ammonia_seen",
        "stop_feeding",
        "un-ionised share: Emerson et al. 1975, in salt water Clegg & Whitfield 1995; 0.05 mg/L:"
        " UF/IFAS FA16; total: US EPA 2013, 822-R-13-001; 0.02 mg/L: common practice",
    ),
    _rule(
        "chlorine total_chlorine",
        _poisons.chlorine,
        "chlorine",
        "dechlorinate",
        "0.02 mg/L: WEF MOP 8",
    ),
    _rule("oxygen temperature", _poisons.oxygen, "low_oxygen", "aerate"),
    _rule(" ".join((*ANALYTES, STOCK)), _poisons.not_retested, "not_retested", "measure"),
    _rule("oxygen temperature", _poisons.oxygen_by_day, "oxygen_by_day", "measure"),
    _rule(
        f"copper kh {STOCK}",
        _poisons.copper,
        "copper copper_unknown_stock copper_low_kh copper_unseen",
        "find_source",
        "invertebrates: common practice; low alkalinity: Wurts & Perschbacher 1994",
    ),
    _rule(
        "nitrite chloride",
        _poisons.nitrite,
        "nitrite nitrite_with_chloride nitrite_in_salt_water nitrite_seen",
        "change_water",
        "10 to 1 by mass: Durborow, Crosby & Brunson 1997, SRAC 462; not for every species:"
        " Tomasso 1986; levels: common practice",
    ),
    *(
        _rule(
            f"{analyte} {STOCK}",
            _animals.suits(analyte),
            "does_not_suit",
            "wait",
            "the animals' table, source by source",
        )
        for analyte in ("temperature", "salinity")
    ),
    *(
        _rule(
            analyte,
            _sea.water(analyte),
            "unlike_the_sea",
            "retest",
            "mean of the sea: Boyd; margins and warmth: common practice, no source",
        )
        for analyte in ("temperature", "salinity", "ph")
    ),
    _rule("salinity", _sea.salt_in_fresh, "salt_in_fresh", "retest"),
    _rule("ph", _buffer.ph_extreme, "ph_extreme", "retest", "from memory"),
    _rule(f"temperature {STOCK}", _animals.too_warm, "too_warm", "aerate"),
    _rule(f"ph {STOCK}", _buffer.high_ph, "high_ph", "retest"),
    _rule(f"ph {STOCK}", _buffer.low_ph, "low_ph", "look_at_kh"),
    _rule("kh", _sea.high_kh, "sea_kh_high", "retest"),
    _rule(DOSE, _deeds.overdose, "overdose", "stop_dosing"),
    _rule(
        DOSE,
        _deeds.wrong_thing,
        "acid_dosed caustic_dosed medicine_dosed unknown_dosed",
        "stop_dosing",
        "copper: Wurts & Perschbacher 1994; an acid's CO2: computed; the rest: common practice",
    ),
    _rule(
        DOSE,
        _nutrients.overdosed,
        "nutrient_overdose",
        "stop_dosing",
        "nitrate: Camargo et al. 2005; potassium: from memory; iron, phosphate: common practice",
    ),
    _rule(STOCK, _deeds.copper_before, "copper_before", "measure"),
    _rule(
        CHANGE,
        _deeds.wrong_water,
        "condensate_in softened_in pure_in tap_in tap_in_sea tap_topped_up salt_topped_up",
        "measure",
        "pure water: UF/IFAS VM 86; the rest: common practice",
    ),
    _rule(CHANGE, _deeds.large_change, "large_change", "measure"),
    _rule("kh ph", _checks.contradiction, "contradiction contradiction_low", "retest"),
    _rule(
        "nitrate kh ph",
        _patterns.neglected,
        "neglected",
        "change_water",
        "step limits and simulated mixing; common practice",
    ),
    _rule(" ".join(JUMPING), _checks.sudden_jump, "sudden_jump", "retest"),
    _rule(
        "kh",
        _buffer.low_kh,
        "low_kh",
        "raise_kh",
        "60 mg/L CaCO3: common practice; marine: Boyd, 100 to 130 mg/L in the sea",
    ),
    _rule("ph", _leaps.ph_leapt, "ph_fell ph_rose", "look_at_kh"),
    _rule("ph", _buffer.ph_moved, "ph_moved ph_moved_other_hour", "look_at_kh"),
    _rule(
        "nitrate",
        _poisons.nitrate,
        "nitrate",
        "change_water",
        "Camargo, Alonso & Salamanca 2005; corals: common practice",
    ),
    _rule("gh", _buffer.low_gh, "low_gh", "measure"),
    *(
        _rule(
            analyte,
            _sea.ion(analyte),
            "sea_ion_low sea_ion_high",
            "retest",
            "reference composition: Millero et al. 2008; shares: common practice",
        )
        for analyte in ("calcium", "magnesium")
    ),
    *(
        _rule(
            f"{analyte} {STOCK}",
            _animals.suits(analyte),
            "does_not_suit",
            "wait",
            "the animals' table, source by source",
        )
        for analyte in ("ph", "gh", "kh")
    ),
    _rule("co2 kh ph", _checks.carbon_dioxide, "much_co2 perhaps_much_co2", "aerate"),
    _rule("co2 kh ph", _checks.carbon_by_older_kh, "co2_by_older_kh", "look_at_kh"),
    _rule("co2 kh ph", _checks.carbon_against_ph, "co2_against_ph", "retest"),
    _rule(
        f"potassium {STOCK}",
        _poisons.potassium,
        "potassium_sum potassium_high potassium_with_mussels",
        "change_water",
        "from memory",
    ),
    _rule("gh kh", _checks.softened, "softened kh_above_gh", "find_source"),
    _rule(
        "gh calcium magnesium",
        _checks.hardness_of_ions,
        "gh_against_ions",
        "retest",
        "Standard Methods 2340 B",
    ),
    _rule(
        "conductivity gh kh",
        _checks.conductivity,
        "conductivity_too_low other_salts",
        "retest",
        "Standard Methods 2510 A; margins: our judgement",
    ),
    _rule(" ".join(ANALYTES), _checks.expired_kit, "expired_kit", "retest"),
    _rule(
        "ammonia nitrite", _patterns.cycling, "cycling_ammonia cycling_nitrite cycling_done", "wait"
    ),
    *(
        _rule(
            analyte,
            _patterns.heading(analyte),
            "heading drifting",
            "wait",
            "slopes of Theil and Sen; limits as for the analyte",
        )
        for analyte in ("kh", "nitrate", "ph", "gh", "salinity", "temperature")
    ),
    _rule("kh gh", _patterns.away_from_source, "kh_under_source gh_over_source", "change_water"),
    _rule(STOCK, _animals.other_water, "wrong_water", "move_animals"),
    _rule(
        STOCK,
        _animals.company,
        "do_not_go_together",
        "move_animals",
        "the animals' table, source by source",
    ),
    _rule(
        STOCK,
        _animals.room,
        "rivals crowded cramped few_of_a_shoal",
        "move_animals",
        "grown lengths: from memory; litres and numbers: common practice, no source",
    ),
    _rule(STOCK, _animals.unknown_stock, "unknown_animal", "measure"),
)
"""Each rule with what wakes it; among equals the earlier one is the worse."""

STEADY: Final = _rule("ph kh", _patterns.steady, "steady", "nothing")
"""Asked only where no other rule has anything to say."""

BY_ID: Final = {id_: rule for rule in (*RULES, STEADY) for id_ in rule.ids}

SAID_BY_ANOTHER: Final = {
    "neglected": frozenset(
        "nitrate low_kh kh_under_source drifting heading perhaps_much_co2 cycling_ammonia"  # noqa: SIM905
        " cycling_nitrite cycling_done co2_by_older_kh".split()
    ),
    "low_kh": frozenset({"kh_under_source"}),
    "softened": frozenset({"conductivity_too_low"}),
    "contradiction": frozenset({"perhaps_much_co2"}),
    "sudden_jump": frozenset({"heading", "drifting"}),
}
"""What need not be said beside a finding that says it too."""


def find(state: State, told: frozenset[str]) -> list[Finding]:
    """Say what the state of a tank means, worst first.

    Parameters
    ----------
    state : State
        The tank and its newest readings.
    told : frozenset of str
        The analytes just told, with `STOCK` where animals came or went, `DOSE` where a dose and
        `CHANGE` where a water change was logged: a rule speaks when one that it needs is among
        them.

    Returns
    -------
    list of Finding
        The only one is ``steady`` where nothing is off and that is known.
    """
    found: list[Finding] = []
    for rule in RULES:
        if rule.wakes & told:
            said = rule.judge(state)
            found += said if isinstance(said, tuple) else [said] if said is not None else []
    found = without_doses(retest_first(ammonia_first(_without_echoes(found), state)), state)
    if not found and STEADY.wakes & told:
        good = _patterns.steady(state)
        if good is not None and not find(state, _EVERYTHING - STEADY.wakes - {STOCK}):
            return [good]
    return sorted(found, key=lambda finding: RANK[finding.severity])


def _without_echoes(found: list[Finding]) -> list[Finding]:
    """Leave out what another finding says as well."""
    said = {finding.id for finding in found}
    echoes = frozenset[str]().union(*(SAID_BY_ANOTHER.get(id_, frozenset()) for id_ in said))
    if "ph_extreme" in said:
        found = [finding for finding in found if _direction(finding)[0] != "ph"]
    off = {_direction(finding) for finding in found if finding.id == "does_not_suit"}
    if "low_kh" in said or "neglected" in said:
        off.add(("kh", "low"))
        found = [finding for finding in found if _direction(finding) != ("kh", "low")]
    return [f for f in found if f.id not in echoes and not _follows(f, off)]


def _direction(finding: Finding) -> tuple[str, str]:
    """Which analyte does not suit, and whether it is high or low; empty for other findings."""
    if finding.id != "does_not_suit":
        return ("", "")
    facts = finding.facts
    side = "high" if float(facts["value"]) > float(facts["high"]) else "low"
    return (str(facts["analyte"]), side)


CAUSES: Final = {"kh": ("gh",), "ph": ("gh", "kh")}
"""Water too hard or too soft is so in GH, KH and pH together: one of them says it."""


def _follows(finding: Finding, off: set[tuple[str, str]]) -> bool:
    analyte, side = _direction(finding)
    return any((cause, side) in off for cause in CAUSES.get(analyte, ()))


_EVERYTHING: Final = frozenset(ANALYTES) | {STOCK, DOSE}
