"""What sort of task a reminder is about, by its words."""

from __future__ import annotations

from core.schedule.model import Kind
from core.schedule.words.vocabulary import fold, split


def _set(words: str) -> frozenset[str]:
    return frozenset(words.split())


_ANALYTES = _set(
    "ph kh gh kh/gh no2 no3 nh3 nh4 po4 ca mg k fe cu co2 o2 tds ec sg alk alkalinity ammonia"
    " ammonium nitrite nitrates nitrate nitrites phosphate phosphates calcium magnesium potassium"
    " iron copper chlorine chloride salinity conductivity hardness redox orp silicate silicates"
    " oxygen temperature water parameters params levels"
)
_TEST = _set("test tests testing retest measure")
_LOOK = _set("check recheck read")
_CHANGE = _set("change changes changing exchange swap")
_RENEW = _set("replace renew replacing")
_OBTAIN = _set("buy order check recheck expiry expires")
_CLEAN = _set("clean cleaning rinse wash service backwash scrub unclog squeeze")
_DOSE = _set("dose dosing doses redose add fertilise fertilize fertiliser fertilizer")
_FEED = _set("feed feeding")
_CALIBRATE = _set("calibrate recalibrate calibration")
_KIT = _set("kit kits reagent reagents")
_FILTER = _set("filter filters canister prefilter skimmer sponge sponges impeller")
_MEDIA = _set("media medium carbon charcoal floss wool resin zeolite cartridge cartridges pads")
_THINGS = _set(
    "bulb bulbs lamp lamps light lights lighting battery batteries tube tubing hose airstone"
    " air-stone diffuser timer membrane cylinder bottle probe probes electrode heater pump"
    " substrate gravel sand decor password"
)


def kind_of(what: str) -> Kind:
    """Tell the sort of a task from its words; other where no sort is sure.

    Parameters
    ----------
    what : str
        The task in the keeper's words.

    Examples
    --------
    >>> kind_of("change quarry"), kind_of("change the carbon"), kind_of("call the club")
    ('change', 'media', 'other')
    """
    words = {fold(word) for word, _, _ in split(what)}
    text = f" {' '.join(fold(word) for word, _, _ in split(what))} "
    if words & _CALIBRATE:
        return "calibrate"
    if words & _KIT and words & (_RENEW | _CHANGE | _OBTAIN):
        return "kit"
    if words & _TEST:
        return "test"
    if "top up" in text or "top off" in text or "topup" in words or "topping up" in text:
        return "top_up"
    return _by_thing(words, text)


def _by_thing(words: set[str], text: str) -> Kind:
    """The sort of a task whose verb alone does not tell it."""
    if words & _MEDIA and words & (_CHANGE | _RENEW | _CLEAN):
        return "media"
    if "water change" in text or "wc" in words or "waterchange" in words:
        return "change"
    if words & _FILTER and words & (_CLEAN | _CHANGE | _RENEW):
        return "filter"
    if words & _CHANGE:
        return "other" if words & _THINGS else "change"
    if words & _FEED:
        return "feed"
    if words & _DOSE:
        return "dose"
    if words & _LOOK and words & _ANALYTES:
        return "test"
    return "other"
