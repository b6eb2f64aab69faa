"""Whom to call, country by country.

The numbers are from memory, each with the body that runs it; none was looked up, so the answer
says the country that it took and names the general emergency number beside it.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final, NamedTuple

from bot.chat.words.text import N_, _


class Lines(NamedTuple):
    """Of one country: its name, the poison line (None where I know no single one), emergencies."""

    country: str
    poison: str | None
    emergency: str


LINES: Final[Mapping[str, Lines]] = {
    "AT": Lines(N_("Austria"), "Vergiftungsinformationszentrale 01 406 43 43", "144"),
    "AU": Lines(N_("Australia"), "Poisons Information Centre 13 11 26", "000"),
    "BE": Lines(N_("Belgium"), "Antigifcentrum / Centre Antipoisons 070 245 245", "112"),
    "CA": Lines(N_("Canada"), "Poison Centres 1-844-764-7669", "911"),
    "CH": Lines(N_("Switzerland"), "Tox Info Suisse 145", "144"),
    "DE": Lines(N_("Germany"), None, "112"),
    "DK": Lines(N_("Denmark"), "Giftlinjen 82 12 12 12", "112"),
    "ES": Lines(N_("Spain"), "Servicio de Información Toxicológica 91 562 04 20", "112"),
    "FI": Lines(N_("Finland"), "Myrkytystietokeskus 0800 147 111", "112"),
    "FR": Lines(N_("France"), None, N_("15 or 112")),
    "GB": Lines(N_("the United Kingdom"), "NHS 111", "999"),
    "IE": Lines(N_("Ireland"), "National Poisons Information Centre 01 809 2166", "112"),
    "IT": Lines(N_("Italy"), None, "112"),
    "NL": Lines(N_("the Netherlands"), None, "112"),
    "NO": Lines(N_("Norway"), "Giftinformasjonen 22 59 13 00", "113"),
    "NZ": Lines(N_("New Zealand"), "National Poisons Centre 0800 764 766", "111"),
    "PL": Lines(N_("Poland"), None, "112"),
    "PT": Lines(N_("Portugal"), "Centro de Informação Antivenenos 800 250 250", "112"),
    "SE": Lines(N_("Sweden"), "Giftinformationscentralen 010-456 67 00", "112"),
    "US": Lines(N_("the United States"), "Poison Help 1-800-222-1222", "911"),
}


def whom_to_call(country: str | None) -> str:
    """The line of the keeper's country, said as the guess that it is."""
    found = LINES.get(country or "")
    if found is None:
        return _(
            "Call the poison line of your country now; if somebody is unwell or"
            " unconscious, your local emergency number."
        )
    if found.poison is None:
        return _(
            "Call your regional poison line now; if somebody is unwell or unconscious,"
            " {emergency} (if you are in {country})."
        ).format(emergency=_(found.emergency), country=_(found.country))
    return _(
        "Call now, if you are in {country}: {poison}; if somebody is unwell or"
        " unconscious, {emergency}."
    ).format(country=_(found.country), poison=found.poison, emergency=_(found.emergency))


def emergency_number(country: str | None) -> str:
    """The emergency number of the keeper's country, said as the guess that it is."""
    found = LINES.get(country or "")
    if found is None:
        return _("Anyone hurt or unwell: your local emergency number, now.")
    return _("Anyone hurt or unwell: {emergency} now (if you are in {country}).").format(
        emergency=_(found.emergency), country=_(found.country)
    )
