"""Whom to call, country by country.

The numbers are from memory, each with the body that runs it; none was looked up, so the answer
says the country that it took and names the general emergency number beside it.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, NamedTuple


class Lines(NamedTuple):
    """Of one country: its name, the poison line (None where I know no single one), emergencies."""

    country: str
    poison: str | None
    emergency: str


LINES: Final[Mapping[str, Lines]] = {
    "AT": Lines("Austria", "Vergiftungsinformationszentrale 01 406 43 43", "144"),
    "AU": Lines("Australia", "Poisons Information Centre 13 11 26", "000"),
    "BE": Lines("Belgium", "Antigifcentrum / Centre Antipoisons 070 245 245", "112"),
    "CA": Lines("Canada", "Poison Centres 1-844-764-7669", "911"),
    "CH": Lines("Switzerland", "Tox Info Suisse 145", "144"),
    "DE": Lines("Germany", None, "112"),
    "DK": Lines("Denmark", "Giftlinjen 82 12 12 12", "112"),
    "ES": Lines("Spain", "Servicio de Información Toxicológica 91 562 04 20", "112"),
    "FI": Lines("Finland", "Myrkytystietokeskus 0800 147 111", "112"),
    "FR": Lines("France", None, "15 or 112"),
    "GB": Lines("the United Kingdom", "NHS 111", "999"),
    "IE": Lines("Ireland", "National Poisons Information Centre 01 809 2166", "112"),
    "IT": Lines("Italy", None, "112"),
    "NL": Lines("the Netherlands", None, "112"),
    "NO": Lines("Norway", "Giftinformasjonen 22 59 13 00", "113"),
    "NZ": Lines("New Zealand", "National Poisons Centre 0800 764 766", "111"),
    "PL": Lines("Poland", None, "112"),
    "PT": Lines("Portugal", "Centro de Informação Antivenenos 800 250 250", "112"),
    "SE": Lines("Sweden", "Giftinformationscentralen 010-456 67 00", "112"),
    "US": Lines("the United States", "Poison Help 1-800-222-1222", "911"),
}


def whom_to_call(country: str | None) -> str:
    """The line of the keeper's country, said as the guess that it is."""
    found = LINES.get(country or "")
    if found is None:
        return (
            "Call the poison line of your country now; if somebody is unwell or unconscious, your"
            " local emergency number."
        )
    if found.poison is None:
        return (
            f"Call your regional poison line now; if somebody is unwell or unconscious,"
            f" {found.emergency} (if you are in {found.country})."
        )
    return (
        f"Call now, if you are in {found.country}: {found.poison}; if somebody is unwell or"
        f" unconscious, {found.emergency}."
    )
