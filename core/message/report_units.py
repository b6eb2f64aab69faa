"""How a water report writes its units and numbers; all patterns are for folded text."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

NUMBER: Final = r"\d{1,5}(?:[.,]\d{1,4})?"
"""With a decimal point or comma."""

UNIT: Final = re.compile(
    r"(?P<dH>°\s?d(?:h|gh|kh)?\b|\bd[gk]?h\b|\bgrad (?:dh|deutscher harte)|°\s?n\b)"
    r"|(?P<fH>°\s?(?:fh?|th|hf)\b|\bfh\b|\b(?:degres? francais|french degrees?|gradi francesi)\b)"
    r"|(?P<e>°\s?(?:e|clark)\b|\bclark\b|\benglish degrees?\b)"
    r"|(?P<mScm>\bms\s?/\s?cm\b)|(?P<mSm>\bms\s?/\s?m\b)"
    r"|(?P<uScm>(?:µ|u|micro)\s?s(?:iemens)?\s?/\s?cm(?:-1)?\b|\bµs\s?cm-[¹1])"
    r"|(?P<mmol>\bmmol(?:e)?\s?(?:/\s?(?:l|dm3|dm³)|\s?l-[¹1]))"
    r"|(?P<meq>\b(?:mval|meq|milliequivalent\w*)\s?/?\s?(?:l|dm3|dm³)?)"
    r"|(?P<ug>(?:µg|ug)\s?(?:[a-z0-9]{1,5}\s?)?/\s?(?:l|dm3|dm³)|\bppb\b)"
    r"|(?P<mg>\bmg\s?(?:[a-z0-9]{1,6}\s?)?/\s?(?:l|dm3|dm³|litre|liter)|\bmg\s?l-[¹1]|\bg\s?/\s?m[3³]|\bppm\b)"
    r"|(?P<C>°\s?c\b)|(?P<F>°\s?f\b)"
)
SPELT: Final[Mapping[str, str]] = {
    "dH": "°dH", "fH": "°fH", "e": "°e", "mScm": "mS/cm", "mSm": "mS/m", "uScm": "µS/cm",
    "mmol": "mmol/L", "meq": "meq/L", "ug": "µg/L", "mg": "mg/L", "C": "°C", "F": "°F",
}  # fmt: skip
AT_DEGREES: Final = re.compile(
    r"\(?\b(?:at|bei|a|bij|w|vid|@)?\s{0,2}(?P<degrees>20|25)(?:[.,]0)?\s{0,2}°\s{0,2}c\)?"
)
RANGE: Final = re.compile(
    rf"(?<![\w.,])({NUMBER})\s{{0,2}}(?:-|\bto\b|\bbis\b|…|\.\.)\s{{0,2}}({NUMBER})(?![\w.,]*\d)"
)
FIGURE: Final = re.compile(rf"([<>≤≥]?)\s{{0,2}}(?<![\w.,])({NUMBER})(?![\w]*\d)")
CARBONATE: Final = re.compile(r"caco\s?3|calciumcarbonat|calcium carbonate|carbonate? de calcium")
CALCIUM: Final = re.compile(r"\b(?:as|als) ca\b|/l ca\b|mg ca\s?/")
BICARBONATE: Final = re.compile(r"hco\s?3|bicarbonat|hydrogencarbonat")
NITROGEN: Final = re.compile(r"\b(?:as|als|en|como|come) n\b|-n\b|\(n\)|mg n/")
