"""Steps of first aid that go by what is known of the tank, and those that many dangers share."""

from __future__ import annotations

from bot.chat.words import names
from bot.chat.words.aid_change import change
from bot.chat.words.numbers import plain, small
from bot.chat.words.text import N_, _
from core.advice.emergencies import Help
from core.advice.limits import PH_DEADLY_LOW

VET = N_("Whom to ask: a vet who treats fish, or an experienced keeper near you.")
AIR = N_("Air now: air stone, outlet to the surface, pour water from a jug back in.")
UNPLUG = N_("Unplug before a hand goes into the water. Never run a heater out of the water.")


def measure(help_: Help) -> str | None:
    """What to measure, of that which nobody read just now."""
    if not help_.missing:
        return None
    asked = names.listed([names.label(each) for each in help_.missing])
    return _("Measure {what} now, and tell me.").format(what=asked)


def thiosulfate(help_: Help) -> str:
    """How to ask for the pure salt, of the tank's own litres."""
    litres = plain(help_.volume_l, 0) if help_.volume_l else "100"
    return _("With pure thiosulfate ask me: how much thiosulfate for {litres} l").format(
        litres=litres
    )


def later_change(help_: Help) -> str:
    """A change of water only where nothing else explains it."""
    if help_.poisoned:
        return change(help_)
    return _("Nothing explains it in 15 minutes? {step}").format(step=change(help_))


def no_air_yet(help_: Help) -> str | None:
    """While ammonia may be up at a low or unknown pH, air waits until somebody gasps."""
    return _("If they do not gasp, no extra air yet: ammonia may be up.") if help_.no_air else None


def co2_off(help_: Help) -> str:
    """Too much CO2: gas off, and air, unless ammonia waits for the pH to rise."""
    if help_.total_n and not help_.gasping:
        return _(
            "CO2 off now, at the cylinder's own valve. Air at once if they gasp or lie down; else"
            " let it leave slowly: ammonia {total} mg/L as N is there, and a quick rise of pH turns"
            " it to poison."
        ).format(total=small(help_.total_n))
    return _(
        "CO2 off now: close the cylinder's own valve, a regulator or solenoid may be stuck; no hose"
        " end in the water. Then air: air stone, outlet to the surface."
    )


def fed_and_aired(help_: Help) -> str:
    """Air against nitrite, unless it would turn the ammonia that is there to poison."""
    if help_.total_n and help_.no_air:
        return _(
            "Stop feeding. There is ammonia too: extra air would free it, so only if they gasp."
        )
    return _("Stop feeding, and aerate.")


def salt_or_none(help_: Help) -> str:
    """Salt against nitrite, but none on top of what went in."""
    if help_.nameless:
        return _("Put in nothing before you have told me what went in last, and how many grams.")
    if help_.salted is None:
        return _("Salt can protect some fish: ask me “how much salt for nitrite”.")
    if help_.salted.unweighed:
        return _(
            "Salt went in already: no more of it. Send its grams, for example: it was 30 g. Or"
            " measure chloride."
        )
    chloride = plain(help_.salted.chloride, 0)
    if help_.salted.is_over:
        return _(
            "Salt went in already, {chloride} mg/L chloride by its grams: more than goes in on a"
            " day. No more of it; watch them, measure chloride."
        ).format(chloride=chloride)
    return _(
        "Salt went in already, {chloride} mg/L chloride by its grams: no more before I have said"
        " so; measure chloride."
    ).format(chloride=chloride)


def no_buffer(help_: Help) -> str:
    """No buffer after a crash while ammonia is there, or while nobody knows."""
    if help_.total_n:
        return _(
            "Do not raise pH, no buffer and no extra air while nobody gasps: ammonia {total} mg/L"
            " as N is there, and a higher pH turns it to poison."
        ).format(total=small(help_.total_n))
    if help_.total_n == 0.0 and "ammonia" not in help_.missing:
        return _("Do not raise pH fast: measure KH, send it, then ask for a little: dose kh +1")
    return _(
        "Do not raise pH fast, and no buffer before ammonia is measured: it can poison in minutes."
    )


def after_change(help_: Help) -> str | None:
    """A change of the last day: what it may have brought, first of all chlorine."""
    made = help_.changed
    if made is None:
        return None
    told = _("You changed water")
    if made.share is not None:
        told = _("You changed {percent} %").format(percent=plain(100.0 * made.share, 0))
    if made.chlorine is not None:
        return _(
            "{told} within a day, and chlorine {chlorine} mg/L is on record: no dechlorinator, or"
            " not sure? Into the tank now, for all of its water."
        ).format(told=told, chlorine=small(made.chlorine))
    if made.after_trouble:
        return None  # what came after is no cause
    if help_.total_n and not made.pure:
        return _(
            "{told} within a day, the likely cause: ammonia {total} mg/L as N was in the tank, and"
            " new water of a higher pH turns it to poison. No more of that water; was it"
            " dechlorinated? If not sure: treat all of it now."
        ).format(told=told, total=small(help_.total_n))
    if made.pure:
        return _(
            "{told} with pure water, the likely cause: GH and KH went out with the old water."
            " Minerals back slowly: GH by 2 °dH a day, as before; ask: dose gh +1"
        ).format(told=told)
    return _(
        "{told} within a day, the likely cause: was it dechlorinated (if not sure: treat all of it"
        " now), and as warm, with the tank's own pH, KH and GH?"
    ).format(told=told)


def told_today(said: str, *, asked: bool) -> str:
    """What went in by the keeper's own words; the likely cause where animals suffer since."""
    if asked:
        return _("As you told it: “{said}”.").format(said=said)
    return _("You told me today: “{said}”. That is the likely cause.").format(said=said)


def dosed_lately(substance: str, grams: float | None) -> str:
    """What went in within the day, and what to test for it, whatever was read before."""
    name = names.substance(substance)
    if grams is None:
        return _(
            "Within the last day {name} went in: add no more of it, it may be the cause. Test pH,"
            " KH, GH and ammonia now, whatever they read before it."
        ).format(name=name)
    return _(
        "Within the last day {grams} g of {name} went in: add no more of it, it may be the cause."
        " Test pH, KH, GH and ammonia now, whatever they read before it."
    ).format(grams=small(grams), name=name)


def ammonia_beside(total_n: float, raised_by: str | None) -> str:
    """Ammonia that stands beside what went in, and what a thing that raises pH makes of it."""
    if raised_by is None:
        return _(
            "Ammonia {amount} mg/L was read as well: no food, and nothing that raises pH."
        ).format(amount=small(total_n))
    return _(
        "Ammonia {amount} mg/L was read, and {name} raises pH, which makes it poison: no food,"
        " nothing more that raises pH; test both now."
    ).format(amount=small(total_n), name=names.substance(raised_by))


def told_unnamed(said: str) -> str:
    """Something went in of which nobody told what it was; animals suffer since."""
    told = _("You told me: “{said}”, and not of what. That may be the cause: tell me what it was.")
    return told.format(said=said)


def or_there(tank: str, cause: str) -> str:
    """Another tank, whose water is known to be bad."""
    return _("Or is it in {tank}? {cause}").format(tank=tank, cause=cause)


def of_lost(help_: Help) -> str | None:
    """What is done with the dead, where some died of late."""
    if not help_.lost:
        return None
    if help_.newcomers:
        return _(
            "Animals died, and new ones came lately: an illness may have come with them. A fish"
            " vet, with one that died just now, cooled, not frozen. Take the dead out."
        )
    return _("Animals died: take the dead out, look at all others.")


def copper_out(help_: Help) -> str:
    """Copper: the animals that it kills first come out of it."""
    if help_.copper:
        return _(
            "Copper {copper} mg/L: no dose more; shrimps, snails and corals out now into water"
            " without copper, as warm, if you have it."
        ).format(copper=small(help_.copper))
    return _(
        "No dose more; shrimps, snails and corals out now into water without copper, as warm, if"
        " you have it."
    )


def ph_high(help_: Help) -> str:
    """A pH that no fish bears for long: true, or the kit's fault."""
    if help_.ph is not None:
        return _(
            "pH {ph} kills within hours, if it is true: test a fresh sample now; if they gasp, air"
            " at once."
        ).format(ph=plain(help_.ph, 1))
    return _("So high a pH kills within hours: test pH now; if they gasp, air at once.")


def ph_low(help_: Help) -> str | None:
    """A pH that has fallen as far as fish hardly bear, with its figure; and the buffer gone."""
    if help_.crashed is not None and help_.ph is not None:
        return _(
            "pH {ph} with KH {kh}: the buffer is used up and pH has crashed, the likely cause; test"
            " a fresh sample."
        ).format(ph=plain(help_.ph, 1), kh=plain(help_.crashed, 1))
    if help_.ph is None or help_.ph >= PH_DEADLY_LOW:
        return None
    return _("pH {ph} kills most fish, if it is true: test a fresh sample now.").format(
        ph=plain(help_.ph, 1)
    )
