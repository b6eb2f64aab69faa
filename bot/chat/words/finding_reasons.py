"""The reasoning behind a finding: what it means, its numbers, and where they come from."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from bot.chat.words.finding_parts import analyte, with_unit
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _, ngettext
from core.advice.findings import BY_ID, Finding
from core.advice.livestock import source_text
from core.analytes import ANALYTES

_MEANING: Final[Mapping[str, str]] = {
    "ammonia": N_(
        "Ammonia is in two forms: NH3 (un-ionised), which poisons through the gills, and"
        " ammonium, which counts at low pH. pH and warmth decide the share, so raising"
        " pH makes it worse."
    ),
    "ammonia_without_ph": N_(
        "How much of the total is poisonous depends on pH and temperature; neither is known."
    ),
    "nitrite": N_(
        "Nitrite enters through the gills in place of chloride and blocks oxygen in the blood."
    ),
    "nitrite_with_chloride": N_(
        "Ten parts of chloride to one of nitrite keep it out in channel catfish; not in"
        " every species (largemouth bass had no benefit)."
    ),
    "nitrite_in_salt_water": N_(
        "Salt water holds so much chloride that nitrite hardly gets in; it tells that"
        " the filter is not ready."
    ),
    "nitrate": N_(
        "In the long run nitrate over this harms sensitive animals; it is not an emergency."
    ),
    "low_kh": N_(
        "KH is what holds pH. The filter and the animals make acid all the time; once"
        " KH is used up, pH falls."
    ),
    "low_gh": N_(
        "Animals need calcium and magnesium from the water; soft is not the same as empty."
    ),
    "ph_fell": N_(
        "Ten times the acid or more: once KH is used up nothing holds pH; with KH left it takes"
        " much CO2. Fish bear neither a fast fall nor a fast way back."
    ),
    "ph_rose": N_(
        "A tenth of the acid or less: a base got in, or CO2 left. Ammonia that harmed nobody turns"
        " to poison."
    ),
    "ph_moved": N_(
        "pH follows KH and CO2. Correcting pH itself swings it; the cause is looked for."
    ),
    "ph_moved_other_hour": N_(
        "Plants use CO2 by day, so pH is higher in the evening than at dawn; a fall over the day is"
        " none of theirs."
    ),
    "contradiction": N_(
        "pH and KH together tell the CO2. No tank water holds as much as these would"
        " mean, so one of the two readings is wrong, or an acid other than CO2 is at"
        " work."
    ),
    "contradiction_low": N_(
        "Without plants in light nothing uses CO2 up, and air gives more than these leave."
    ),
    "much_co2": N_("CO2 over 30 mg/L hinders breathing, most of all at night and in warm water."),
    "co2_by_older_kh": N_(
        "pH, KH and CO2 hang together: a pH that is low for its KH has more CO2, or the KH is no"
        " longer what it was."
    ),
    "perhaps_much_co2": N_(
        "A colour chart is sure to 0.2 pH: that alone is a factor of 2.5 in CO2."
    ),
    "low_oxygen": N_("Warm water holds less; plants and filters use it up at night."),
    "not_retested": N_(
        "What was found then may be gone or worse by now; only a test tells. Old readings decide"
        " nothing here."
    ),
    "co2_against_ph": N_(
        "CO2 is told by pH and KH together, where no other acid is in the water. Drop checkers lag"
        " by hours; peat, wood and nitrification add acids of their own."
    ),
    "oxygen_by_day": N_(
        "Light makes oxygen by day and nothing does at night, so what is little by day runs short"
        " before dawn."
    ),
    "chlorine": N_("Chlorine burns gills and kills the filter's bacteria."),
    "copper": N_("Copper that a kit can just see kills shrimps, snails and corals."),
    "copper_unknown_stock": N_("Copper that a kit can just see kills shrimps, snails and corals."),
    "copper_unseen": N_("Copper that a kit can just see kills shrimps, snails and corals."),
    "copper_low_kh": N_("At alkalinity 20 mg/L a dose killed all fish that at 75 mg/L killed few."),
    "salt_in_fresh": N_(
        "Fresh water has less than 0.5 g/kg, and salt against disease adds up to 3. Such a number"
        " is of another tank, of a kit that is off, or of a tank that is no fresh one."
    ),
    "unlike_the_sea": N_(
        "Sea water has about 35 g/kg; most animals of warm seas bear 32 to 37 g/kg and 22 to"
        " 29 °C. Tell me who lives there, and I judge by them."
    ),
    "sea_ion_low": N_(
        "Corals and calcareous algae build with calcium, alkalinity and magnesium together: one"
        " that lacks holds up the others. A kit that is off is more common than such a water."
    ),
    "sea_ion_high": N_(
        "Too much of one makes lime fall out and takes alkalinity with it. A kit that is off is"
        " more common than such a water."
    ),
    "overdose": N_(
        "Animals follow KH by 1, GH by 2 °dH, salinity by 1 g/kg and pH by 0.3 a day; a faster"
        " move is a shock, whatever the end."
    ),
    "nutrient_overdose": N_(
        "Plants use little a day; what is too much stays until water is changed. Potassium harms"
        " mussels, shrimps and snails first, iron at once, phosphate feeds algae."
    ),
    "acid_dosed": N_(
        "An acid turns KH into CO2: 0.1 mmol/L frees 4.4 mg/L at once, and a spent KH holds no pH."
    ),
    "caustic_dosed": N_(
        "Carbonate and hydroxide take CO2 up: a degree of KH by carbonate can lift pH by two."
    ),
    "copper_before": N_("Copper binds to gravel and stones and comes back for weeks."),
    "medicine_dosed": N_(
        "At alkalinity 20 mg/L a copper dose killed all fish that at 75 mg/L killed few; what a"
        " medicine does depends on the water and on who lives in it."
    ),
    "unknown_dosed": N_("Without composition and mass nobody can say what it does."),
    "condensate_in": N_(
        "Water from dehumidifiers and air conditioners runs over metal; there is no official word"
        " that it is safe."
    ),
    "softened_in": N_("A softener takes calcium and magnesium out and puts sodium in; KH stays."),
    "pure_in": N_("Pure water has no KH: what it replaces is gone, and KH is what holds pH."),
    "tap_in_sea": N_("The sea's salt, calcium and alkalinity thin out by the share that is new."),
    "tap_in": N_(
        "Tap water may hold up to 4 mg/L chlorine, and 0.02 mg/L is too much. A source on record"
        " with chlorine 0 ends this question."
    ),
    "salt_topped_up": N_(
        "What evaporates is pure water; each litre of salt water in its place adds its salt, some"
        " 35 g in sea water."
    ),
    "tap_topped_up": N_("Only water evaporates; what tap water brings along stays and piles up."),
    "large_change": N_(
        "New water is another water: pH, hardness and temperature move with the share, and"
        " ammonium turns to poison where pH rises."
    ),
    "potassium_sum": N_("Each °dH by potassium bicarbonate brings 13.9 mg/L potassium; it stays."),
    "potassium_high": N_(
        "Tap water holds a few mg/L; more comes from potassium salts and plant food. Snails and"
        " shrimps are the first to suffer; that limit is from memory."
    ),
    "potassium_with_mussels": N_(
        "Potassium is poisonous to mussels at little more than they live in."
    ),
    "too_warm": N_(
        "Warm water holds little oxygen, and animals need more of it; the limit is common"
        " practice. Tell me who lives there, and I judge by them."
    ),
    "high_ph": N_(
        "Lime, fresh cement or algae in the sun raise it; most of any ammonia is poison then. The"
        " limit is common practice. Tell me who lives there, and I judge by them."
    ),
    "low_ph": N_(
        "With no KH left pH falls; peat and pure rain water bring it there too. The limit is common"
        " practice. Tell me who lives there, and I judge by them."
    ),
    "sea_kh_high": N_(
        "Seas have 7 to 11 °dH. Far over it calcium and buffer fall out together as lime; a unit"
        " that slipped is more common than such a water. The limit is common practice."
    ),
    "ph_extreme": N_(
        "Under about 5 and over about 9.5 gills fail; the limits are from memory. Lime, fresh"
        " cement or algae in the sun raise it; with no KH left it crashes."
    ),
    "neglected": N_(
        "Nitrate high and KH used up go together: making nitrate takes 0.45 °dH KH for"
        " each 10 mg/L. The animals got used to it slowly; a large change is a shock,"
        " and raises pH, which turns ammonium into ammonia."
    ),
    "does_not_suit": N_(
        "The range is what the table holds as suiting; just outside is no emergency,"
        " and a steady water is worth more than the middle of a range."
    ),
    "do_not_go_together": N_("The ranges, sizes and manners are those of the animals' table."),
    "cramped": N_(
        "Grown lengths differ; under a quarter litre for each square centimetre of its"
        " length a fish cannot swim and turn as it must. It is a lower bound, not a"
        " recommendation."
    ),
    "crowded": N_(
        "Half a litre a centimetre of small fish, more of large ones, twice in the sea: far less"
        " than is usual. What fish give off and their quarrels grow with their number."
    ),
    "rivals": N_("In a tank the weaker one cannot flee, and is hunted until it dies."),
    "wrong_water": N_(
        "Between the sea and fresh water animals die within hours, else they waste away; the kind"
        " of tank is the one on record."
    ),
    "few_of_a_shoal": N_("Fish of groups are frightened alone, eat less and fall ill more easily."),
    "unknown_animal": N_("Only animals of the table have ranges; nothing is guessed."),
    "softened": N_(
        "A softener swaps calcium for sodium: GH goes, KH stays. Animals lack minerals in it."
    ),
    "kh_above_gh": N_("KH is bicarbonate; where it exceeds GH, sodium or potassium goes with it."),
    "sudden_jump": N_(
        "Water hardly moves so far in so short a time by itself: a slip, a worn kit, or"
        " something that was done and not logged."
    ),
    "gh_against_ions": N_("GH (mg/L CaCO3) is 2.497 × calcium + 4.118 × magnesium."),
    "conductivity_too_low": N_("The ions of GH and KH conduct; less than theirs cannot be."),
    "other_salts": N_(
        "What GH and KH do not account for is sodium, chloride, nitrate, sulfate; more"
        " of it the longer water only evaporates and is topped up."
    ),
    "expired_kit": N_("Reagents age, and an aged kit misreads without showing it."),
    "ammonia_seen": N_(
        "Little of it is poisonous at this pH and warmth; a higher pH or warmer water makes more of"
        " it so, and a filter that keeps up leaves none."
    ),
    "nitrite_seen": N_(
        "A filter that keeps up leaves none; a trace may be the beginning of more, from too much"
        " food, new animals or a filter that was harmed."
    ),
    "cycling_ammonia": N_(
        "Bacteria that eat ammonia come first, those that eat nitrite weeks later;"
        " until then either can be at poisonous levels."
    ),
    "cycling_nitrite": N_(
        "Ammonia is being eaten; the bacteria that eat nitrite are still to come."
    ),
    "cycling_done": N_("Two tests in a row without ammonia and nitrite, after both were there."),
    "heading": N_(
        "The slope is the median of all pairs of readings since water was last disturbed."
    ),
    "drifting": N_(
        "The slope is the median of all pairs of readings of the season, changes and all."
    ),
    "kh_under_source": N_("The tank uses KH up faster than the changes bring it back."),
    "gh_over_source": N_("Water evaporates, hardness stays; topping up with tap water adds more."),
    "steady": N_("No trend, nothing off for the animals: what you do works."),
}

_FIGURES: Final[Mapping[str, tuple[str, int]]] = {
    "total_n": (N_("total ammonia {number} mg/L as N"), 3),
    "nh3_n": (N_("un-ionised {number} mg/L as N"), 4),
    "chronic_n": (N_("long-term limit of the total {number} mg/L as N"), 2),
    "acute_n": (N_("short-term limit of the total {number} mg/L as N"), 2),
    "ph": (N_("pH {number}"), 1),
    "was": (N_("before {number}"), 2),
    "temperature": (N_("at {number} °C"), 1),
    "temperature_assumed": (N_("temperature unknown, taken as {number} °C"), 0),
    "nitrite": (N_("nitrite {number} mg/L NO2"), 2),
    "chloride": (N_("chloride {number} mg/L"), 0),
    "nitrate": (N_("nitrate {number} mg/L NO3"), 0),
    "kh": (N_("KH {number} °dH"), 1),
    "gh": (N_("GH {number} °dH"), 1),
    "salinity": (N_("salinity {number} g/kg"), 1),
    "source": (N_("source {number} °dH"), 1),
    "source_kh": (N_("source KH {number} °dH"), 1),
    "co2_mg_l": (N_("CO2 {number} mg/L"), 4),
    "oxygen": (N_("oxygen {number} mg/L"), 1),
    "saturation": (N_("saturation {number} mg/L"), 1),
    "chlorine": (N_("chlorine {number} mg/L"), 2),
    "copper": (N_("copper {number} mg/L"), 2),
    "potassium": (N_("potassium {number} mg/L"), 0),
    "conductivity": (N_("conductivity {number} µS/cm"), 0),
    "expected": (N_("expected {number} µS/cm"), 0),
    "length": (N_("grown length {number} cm"), 0),
    "volume_l": (N_("tank {number} L"), 0),
    "least_l": (N_("least {number} L"), 0),
    "count": (N_("kept {number}"), 0),
    "added": (N_("added {number} mg/L"), 1),
    "total": (N_("in all about {number} mg/L"), 1),
    "calcium": (N_("calcium {number} mg/L"), 0),
    "magnesium": (N_("magnesium {number} mg/L"), 0),
    "dosed_days_ago": (N_("dosed {number} days ago"), 1),
    "weeks": (N_("followed for {number} weeks"), 0),
    "kh_to_nitrate_per_day": (N_("of which nitrate explains {number} °dH a day"), 3),
}
"""Numbers of a finding by their names, with their decimals; 4 are two figures instead."""


def why(finding: Finding) -> list[str]:
    """The reasoning of a finding in at most four lines: meaning, numbers, source."""
    lines = [_(_MEANING[finding.id])]
    if numbers := _numbers(finding):
        lines.append(_("Numbers: {numbers}.").format(numbers=numbers))
    return [*lines, _source(finding)]


def _numbers(finding: Finding) -> str:
    facts = finding.facts
    parts = []
    if "per_day" in facts and "analyte" in facts:
        parts.append(_slope(finding))
    elif "analyte" in facts and "value" in facts and "low" in facts:
        parts.append(_range(finding))
    elif "analyte" in facts and "value" in facts:
        parts.append(f"{analyte(facts)} {with_unit(facts, 'value')}")
    if "low_2" in facts:
        ends = {end: plain(float(facts[end]), 1) for end in ("low", "high", "low_2", "high_2")}
        parts.append(_("{low} to {high} and {low_2} to {high_2}").format(**ends))
    if "share" in facts:
        parts.append(_("{share} % at a time").format(share=f"{float(facts['share']) * 100.0:.0f}"))
    for name, (template, decimals) in _FIGURES.items():
        number = facts.get(name)
        if name == "count" and "per_day" in facts:
            continue  # of readings, which the slope has told
        if isinstance(number, int | float):
            shown = small(number) if decimals == 4 else plain(number, decimals)
            parts.append(_(template).format(number=shown))
    if "limit" in facts and "per_day" not in facts:
        parts.append(_("limit {limit}").format(limit=plain(float(facts["limit"]), 1)))
    return ", ".join(parts)


def _slope(finding: Finding) -> str:
    facts = finding.facts
    known = ANALYTES.get(str(facts["analyte"]))
    unit = known.unit if known else ""
    per_day, slow, fast = (small_signed(float(facts[n])) for n in ("per_day", "slowest", "fastest"))
    soonest = f"{float(facts['soonest']):.0f}"
    latest = f"{float(facts['latest']):.0f}" if "latest" in facts else _("many")
    told = {
        "slope": f"{per_day} {unit}",
        "slow": slow,
        "fast": fast,
        "count": f"{float(facts['count']):.0f}",
        "limit": plain(float(facts["limit"]), 1),
    }
    slope = (
        _("{slope} a day from {count} readings")
        if slow == fast
        else _("{slope} a day ({slow} to {fast}) from {count} readings")
    ).format(**told)
    days, last = soonest, round(float(facts.get("latest", MANY)))
    if soonest != latest:
        days = _("{soonest} to {latest}").format(soonest=soonest, latest=latest)
        last = max(last, 2)  # a span is many
    time = ngettext("{days} day to {limit}", "{days} days to {limit}", last)
    return f"{slope}; {time.format(days=days, **told)}"


MANY: Final = 1000
"""What a time without an end counts as, for its plural."""


def small_signed(number: float) -> str:
    """A small number with its sign, to two figures."""
    return f"{'−' if number < 0 else '+'}{small(abs(number))}"


def _range(finding: Finding) -> str:
    facts = finding.facts
    low, high = plain(float(facts["low"]), 1), plain(float(facts["high"]), 1)
    return _("{name} {amount}, suits {low} to {high}").format(
        name=analyte(facts), amount=with_unit(facts, "value"), low=low, high=high
    )


def _source(finding: Finding) -> str:
    rule = BY_ID[finding.id]
    own = finding.facts.get("source")
    if finding.id == "does_not_suit" and isinstance(own, str):
        return _("Source: {source}.").format(source=_(source_text(own)))
    return _("Source: {source}.").format(source=_(rule.source))
