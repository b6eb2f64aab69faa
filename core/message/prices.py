"""What something cost is no reading: `no3 test 12 €`, `kh kit 12.99`, `bought no3 kit 15`."""

from __future__ import annotations

from core.message.tokens import Token

_ENDINGS = frozenset({"49", "90", "95", "99"})
"""How prices like to end; common practice, no source."""
_FINE = frozenset({"ph", "salinity", "temperature", "conductivity", "redox"})
"""What pens and refractometers measure, which may show hundredths."""
_CENTS = 2
"""Decimals of a price."""
_SMALL = 1.0
"""Under this kits show hundredths too. [mg/L]"""


def costs(tokens: list[Token], index: int) -> int:
    """The index behind the price that begins at `index`; 0 where none begins there.

    The sign or the name of the money stands before its number or behind it.
    """
    pair = tokens[index : index + 2]
    numbers = [token.kind == "number" for token in pair]
    money = [token.value == "money" for token in pair]
    return index + 2 if [numbers, money[::-1]] in _PAIRS else 0


_PAIRS = ([[True, False], [True, False]], [[False, True], [False, True]])


def may_be_paid(number: Token, analyte: str, *, bought: bool) -> bool:
    """Whether a bare number behind a kit and the name of what it tests may be its price.

    Prices are written with two decimals, which a kit shows of nothing but small numbers; what
    pens measure is doubted only where it ends as prices do.
    """
    if bought:
        return True
    whole, _, decimals = number.text.replace(",", ".").partition(".")
    if len(decimals) != _CENTS or not (whole + decimals).isdigit():
        return False
    return (
        decimals in _ENDINGS if analyte in _FINE else float(number.text.replace(",", ".")) >= _SMALL
    )
