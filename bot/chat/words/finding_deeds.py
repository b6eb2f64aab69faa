"""Findings about what was just done, in one short line each."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.finding_parts import Facts, label, number
from bot.chat.words.numbers import grams, plain, small
from bot.chat.words.text import N_, _, ngettext
from core.substances import STRONG_ACIDS


def overdose(facts: Facts) -> str:
    """A dose of more than a day's step."""
    moved = [
        template.format(amount=plain(number(facts, name), 1))
        for name, template in (
            ("kh", _("KH +{amount} °dH")),
            ("gh", _("GH +{amount} °dH")),
            ("calcium", _("calcium +{amount} mg/L, at most 20 a day")),
            ("magnesium", _("magnesium +{amount} mg/L, at most 50 a day")),
            ("salinity", _("salinity +{amount} g/kg")),
            ("ph_at_once", _("pH about {amount}")),
        )
        if name in facts
    ]
    if "grams" not in facts:
        return _(
            "Too much for one day: {substance} ({moved}). Add nothing more, watch the animals,"
            " test salinity now."
        ).format(substance=names.said(str(facts["substance"])), moved=", ".join(moved))
    amount = grams(number(facts, "grams"))
    if "spoons" in facts:
        amount = _("at least {grams}").format(grams=amount)
    if not moved:
        return _(
            "Too much for one day: {grams} of {substance}. Add nothing more, watch the animals, and"
            " test pH, KH and ammonia now."
        ).format(grams=amount, substance=names.said(str(facts["substance"])))
    template = _too_much(facts)
    return template.format(
        grams=amount,
        substance=names.said(str(facts["substance"])),
        moved=", ".join(moved),
    )


def _too_much(facts: Facts) -> str:
    """What it moved too far, or why it harms though it is a day's step."""
    if facts.get("reason") == "ammonia":
        return _(
            "Too much with the ammonia that is there: {grams} of {substance} ({moved}). Add nothing"
            " more, test pH, KH and ammonia now."
        )
    if facts.get("reason") == "little":
        return _(
            "A little over a day's step: {grams} of {substance} ({moved}). No more of it today,"
            " test pH, KH and ammonia before the next."
        )
    if facts.get("reason") == "animals":
        return _(
            "Too much for the animals: {grams} of {substance} ({moved}). Add nothing more, test pH,"
            " KH and ammonia now."
        )
    if {"calcium", "magnesium"} & facts.keys():
        return _(
            "Too much for one day: {grams} of {substance} ({moved}). Add nothing more, test"
            " calcium, magnesium and KH now."
        )
    return _(
        "Too much for one day: {grams} of {substance} ({moved}). Add nothing more, test pH, KH"
        " and ammonia now."
    )


def nutrient(facts: Facts) -> str:
    """More of what plants eat than its tank is to have."""
    told = {
        "name": label(facts),
        "added": small(number(facts, "added")),
        "total": small(number(facts, "total")),
        "substance": names.said(str(facts["substance"])),
    }
    if "limit" not in facts:
        return _(
            "Mussels bear no potassium salts, and this is {name} +{added} mg/L by {substance}: add"
            " no more of it. Ask: how much can i change"
        ).format(**told)
    limit = small(number(facts, "limit"))
    if number(facts, "total") <= number(facts, "added"):
        return _(
            "Too much at once: {name} +{added} mg/L by {substance} (caution over {limit}). Add"
            " no more of it, watch the animals. Ask: how much can i change"
        ).format(**told, limit=limit)
    return _(
        "Too much: {name} +{added} mg/L by {substance}, about {total} in all (caution over"
        " {limit}). Add no more of it. Ask: how much can i change"
    ).format(**told, limit=limit)


def large_change(facts: Facts) -> str:
    """Most of the water was changed."""
    return _(
        "A very large change ({share} %): test pH, temperature and ammonia now, watch the animals."
    ).format(share=plain(100.0 * number(facts, "share"), 0))


def medicine(facts: Facts) -> str:
    """A medicine was dosed: no judgement of it, but what harms at once."""
    if "species" in facts:
        return _(
            "Copper kills invertebrates ({species}): take them out now, into clean water like"
            " the tank's, and add no more."
        ).format(species=facts["species"])
    return _(_MEDICINES[str(facts["kind"])])


_MEDICINES = {
    "copper": N_(
        "I cannot judge that dose: keep to its label, ask a fish vet. Copper kills shrimps and"
        " snails, and at low KH fish: test copper and KH, no second dose by guess."
    ),
    "formalin": N_(
        "I cannot judge that dose: keep to its label, ask a fish vet. Formalin takes oxygen: strong"
        " air now; gloves, and air the room."
    ),
    "medicine": N_(
        "I cannot judge that dose: keep to its label, ask a fish vet. Give air, and test ammonia"
        " and nitrite daily: some harm the filter, shrimps and snails."
    ),
}


def acid(facts: Facts) -> str:
    """An acid takes the buffer and frees carbon dioxide."""
    if facts["substance"] in STRONG_ACIDS:
        return _(
            "Add no more: {substance} takes KH and frees CO2 at once. Give air now, test pH and"
            " KH now; no buffer to undo it."
        ).format(substance=names.said(str(facts["substance"])))
    return _(
        "No second dose today: {substance} takes KH, frees CO2 and feeds bacteria that take"
        " oxygen. Air on; test pH and KH in an hour."
    ).format(substance=names.said(str(facts["substance"])))


def caustic(facts: Facts) -> str:
    """What lifts pH in minutes."""
    return _(
        "Add no more: {substance} lifts pH fast, and turns ammonium to poison. Test pH and ammonia"
        " now; no acid to undo it."
    ).format(substance=names.said(str(facts["substance"])))


def tap_in_sea(facts: Facts) -> str:
    """Tap water changed into the sea."""
    if "salinity" not in facts:
        return _(
            "Test salinity now: tap water without salt thins the sea. It also brings nitrate,"
            " phosphate and metals; dechlorinated?"
        )
    return _(
        "Test salinity now: without salt in it, it falls to about {salinity} g/kg. Tap water also"
        " brings nitrate, phosphate and metals; dechlorinated?"
    ).format(salinity=plain(number(facts, "salinity"), 0))


def salt_topped_up(facts: Facts) -> str:
    """Salt water in the place of water that evaporated."""
    if "salinity" not in facts:
        return _(
            "Salinity rises: only water evaporates, its salt stays. Top up with RO or distilled"
            " water, and test salinity now."
        )
    return _(
        "Salinity rises, to about {salinity} g/kg: only water evaporates, its salt stays. Top up"
        " with RO or distilled water, and test salinity now."
    ).format(salinity=plain(number(facts, "salinity"), 1))


def pure_in(facts: Facts) -> str:
    """Pure water took the buffer along; while there is ammonia none is put back."""
    if "ammonia" in facts:
        with_ammonia = _(
            "Test pH, KH and ammonia now: KH is about {kh} °dH. No buffer before the ammonia is"
            " gone; watch that pH stays."
        )
        return with_ammonia.format(kh=plain(number(facts, "kh"), 1))
    return _(
        "Test KH and pH now: pure water without minerals leaves KH at about {kh} °dH, and pH can"
        " crash. Next time put GH and KH into it first."
    ).format(kh=plain(number(facts, "kh"), 1))


def unknown(facts: Facts) -> str:
    """Something of which nobody knows what is in it."""
    return _(
        "I do not know what is in {substance} and judge nothing: test pH and KH in an hour,"
        " no second dose today."
    ).format(substance=facts["substance"])


def copper_before(facts: Facts) -> str:
    """Invertebrates after a dose of copper."""
    days = round(number(facts, "dosed_days_ago"))
    if not days:
        return _(
            "Copper went in today and kills {species}: take them out now, into clean water like the"
            " tank's, and test copper with a fine kit."
        ).format(species=facts["species"])
    return ngettext(
        "Copper went in {days} day ago and kills {species}: take them out now, into clean water"
        " like the tank's, and test copper with a fine kit.",
        "Copper went in {days} days ago and kills {species}: take them out now, into clean water"
        " like the tank's, and test copper with a fine kit.",
        days,
    ).format(days=days, species=facts["species"])
