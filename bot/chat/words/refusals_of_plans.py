"""Refusals of what a plan would do, or of what is not known for it."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from bot.chat.words import names, off_record, poison_first
from bot.chat.words.numbers import plain
from bot.chat.words.refusal_parts import (
    EXAMPLES,
    Facts,
    analyte_of,
    lowered,
    number,
    past_animals,
    read_as,
    substance_of,
    with_unit,
)
from bot.chat.words.text import _

OF_PLANS: Mapping[str, Callable[[Facts], list[str]]] = {
    "volume_unknown": lambda _facts: [
        _("How many litres of water are in it? Send for example: 90 l"),
        _("Net: the water itself, not the tank's label."),
    ],
    "volume_implausible": lambda facts: [
        _(
            "No plan for {volume} L: that is no tank I can believe. Send the net volume"
            " again, for example: 90 l"
        ).format(volume=plain(float(facts["volume_l"]), 4))
    ],
    "kh_unknown": lambda _facts: [
        _("I need the KH first. Measure it and send for example: kh 4"),
    ],
    "poison_first": poison_first.no_dose,
    "told_first": lambda facts: off_record.first_told(str(facts["said"])),
    "kh_limit": lambda facts: [
        _("No plan: KH over {kh} °dH is off your kit's scale.").format(kh=number(facts, "kh")),
        _("Dilute the sample by half with distilled water, test again and send twice the number."),
    ],
    "target_reached": lambda facts: [
        _("No dose: {analyte} {start} is already at {target} or over.").format(
            analyte=analyte_of(facts), start=number(facts, "from"), target=with_unit(facts, "to")
        ),
        *lowered(facts),
    ],
    "target_implausible": lambda facts: [
        _(
            "No plan to {analyte} {target}: over {highest} suits no tank. If you meant another"
            " unit, send it with the number."
        ).format(
            analyte=analyte_of(facts),
            target=number(facts, "to"),
            highest=with_unit(facts, "highest"),
        ),
    ],
    "contradiction": lambda facts: [
        _("No dose yet: {ph} with {kh} does not add up.").format(
            ph=read_as(facts, "ph"), kh=read_as(facts, "kh")
        ),
        _("Retest both, with a fresh sample; check the kits' dates. If they gasp, air now."),
    ],
    "ammonia": lambda facts: [
        _(
            "No buffer now: with this much ammonia (total {ammonia} mg/L as N) a higher pH would"
            " poison the animals."
        ).format(ammonia=number(facts, "ammonia"))
        if "ammonia" in facts
        else _("No buffer now: with this much ammonia a higher pH would poison the animals."),
        _(
            "First: stop feeding, change a little often, with dechlorinated water of the tank's KH"
            " and temperature."
        ),
        _("If they gasp, add air. Then measure ammonia and pH again and ask me again."),
    ],
    "ammonia_old": lambda facts: [
        _("Measure ammonia first: the last was {ammonia} mg/L, {days} days ago.").format(
            ammonia=number(facts, "ammonia"), days=number(facts, "days")
        )
        if "ammonia" in facts
        else _("Measure ammonia first: the last was off the kit's scale."),
        _("With that much a higher pH would poison the animals. Send for example: ammonia 0"),
    ],
    "ammonia_stalls": lambda _facts: [
        _("No buffer now: over 4 mg/L ammonia as N the filter stalls, whatever the pH."),
        _("Change water until it reads 1 to 2, then ask me again."),
    ],
    "ammonia_already": lambda facts: [
        _(
            "No dose now: this much ammonia (total {ammonia} mg/L as N) is a danger already, and"
            " comes first."
        ).format(ammonia=number(facts, "ammonia"))
        if "ammonia" in facts
        else _("No dose now: this much ammonia is a danger already, and comes first."),
        _(
            "Stop feeding, change a little often, with dechlorinated water of the tank's KH and"
            " temperature; no food for plants, no salts until it is down."
        ),
        _("If they gasp, add air. Then measure ammonia and pH again and ask me again."),
    ],
    "ammonia_unmeasured": lambda facts: [
        _("No dose yet: with KH {kh} °dH I must know ammonia first.").format(
            kh=number(facts, "kh")
        ),
        _("Measure total ammonia and pH and send both, for example: ammonia 0 ph 6.4"),
    ],
    "temperature_unknown": lambda _facts: [
        _("No buffer now: with this much ammonia a higher pH may poison the animals."),
        _("How warm is the water? That decides whether any may go in later."),
        _("Send for example: temp 24"),
    ],
    "mass_implausible": lambda facts: [
        _(
            "No answer for that much in {volume} L: send mass and volume again, for"
            " example: what does 10 g baking soda do in 120 l"
        ).format(volume=number(facts, "volume_l"))
    ],
    "ph_step": lambda _facts: [
        _("No dose of this: even a small part would move pH by more than 0.3 at once."),
        _("Take bicarbonate instead, or prepare water apart, without animals."),
    ],
    "saturation": lambda facts: [
        _(
            "No dose now: the water is so full of lime (saturation {saturation}) that it"
            " would fall out as snow."
        ).format(saturation=number(facts, "saturation")),
        _("Retest calcium, KH and pH; let the animals use it up first."),
    ],
    "reading_unknown": lambda facts: [
        _("I need {analyte} first. Measure it and send it, for example: {wish} {number}").format(
            analyte=analyte_of(facts),
            wish=names.said(str(facts["analyte"])),
            number=EXAMPLES.get(str(facts["analyte"]), "4"),
        ),
    ],
    "dosed_since": lambda facts: [
        _("No second dose yet: {substance} went in after the {analyte} reading.").format(
            substance=substance_of(facts), analyte=analyte_of(facts)
        ),
        _("Retest {analyte}, pH and ammonia 24 h after it, send them, and ask again.").format(
            analyte=analyte_of(facts)
        ),
    ],
    "jumped": lambda facts: [
        _(
            "No dose yet: {analyte} went from {start} to {target} with nothing logged between."
        ).format(
            analyte=analyte_of(facts), start=number(facts, "from"), target=with_unit(facts, "to")
        ),
        _("Test it again with a fresh sample and send it. If it reads the same, ask again."),
        _("If something was put in or changed, tell me that first."),
    ],
    "unlike_dose": lambda facts: [
        _(
            "Retest first: by what went in, {analyte} should be about {expected}, not {target}."
        ).format(
            analyte=analyte_of(facts),
            expected=with_unit(facts, "expected"),
            target=with_unit(facts, "to"),
        ),
        _("The kit, the volume or the amount is wrong: test again, and put in nothing until then."),
    ],
    "diluted_since": lambda facts: [
        _("No dose yet: water was changed after the {analyte} reading.").format(
            analyte=analyte_of(facts)
        ),
        _("Retest {analyte}, pH and ammonia, send them, and ask again.").format(
            analyte=analyte_of(facts)
        ),
    ],
    "changed_today": lambda _facts: [
        _("Not today: water was changed after the last readings, and they tell another water."),
        _("Test KH, GH, pH and temperature, send them, and ask again tomorrow."),
    ],
    "moved_today": lambda facts: [
        _(
            "Not today: {analyte} was {was} before what went in within a day, and may move by"
            " {step} a day."
        ).format(
            analyte=analyte_of(facts),
            was=plain(float(facts["was"]), 1),
            step=plain(float(facts["step"]), 1),
        ),
        _("Retest and ask again in about {hours} h. Animals bear slow changes only.").format(
            hours=plain(max(1.0, float(facts["hours"])), 0)
        ),
    ],
    "one_at_a_time": lambda facts: [
        _(
            "No, not both at once: in the sea calcium and buffer in one place or at one"
            " time fall out as lime."
        ),
        _(
            "First {analyte} alone. For the other ask me again, and give it hours later and"
            " in another place."
        ).format(analyte=analyte_of(facts)),
    ],
    "analyte_unknown": lambda facts: [
        _(
            "No dose for {analyte}: I cannot work that out. I can for kh, gh, calcium,"
            " magnesium, nitrate, phosphate, potassium, iron and salinity."
        ).format(analyte=analyte_of(facts)),
    ],
    "kh_alone_first": lambda facts: [
        _("Not both at once: KH {kh} °dH is too low to plan on. KH first: dose kh 2").format(
            kh=number(facts, "kh")
        ),
    ],
    "kh_too_low": lambda facts: [
        _(
            "No recipe: KH {kh} °dH would not hold pH. Say a KH of 1 or more, for example: how"
            " much salt for 20 l ro to gh 6 kh 3"
        ).format(kh=number(facts, "kh")),
    ],
    "animals_on_record": lambda _facts: [
        _("No ammonia into a tank with animals: it would poison them."),
        _("It is for tanks without any, snails and shrimps too."),
    ],
    "ph_target": lambda _facts: [
        _("No dose to a pH: pH follows KH and carbon dioxide, and chasing it swings the water."),
        _(
            "Too low: raise KH a little (dose kh +1). Too high, in fresh water only: small changes"
            " with RO or rain water."
        ),
        _("Send ph and kh and I say what they mean together."),
    ],
    "ph_target_gated": lambda _facts: [
        _("No dose to a pH, and nothing that raises it now: ammonia would turn to poison."),
        _("Too high, in fresh water only: small changes with RO or rain water."),
        _("First get ammonia down: stop feeding, small changes with water of the tank's KH."),
    ],
    "past_animals": past_animals,
}
