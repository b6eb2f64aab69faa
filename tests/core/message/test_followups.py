"""What is said right after a plan, in nine languages; the words are ours, no source."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from core.message.followups import Followup, read
from core.message.model import Context

CONTEXT = Context(now=datetime(2026, 3, 1, 12, tzinfo=UTC), tanks=("Fern", "Quarry"))
POTASSIUM = Followup(substance="potassium bicarbonate")


@pytest.mark.parametrize(
    ("text", "meant"),
    [
        ("and with potassium bicarbonate instead?", POTASSIUM),
        ("i only have potassium bicarbonate", POTASSIUM),
        ("und mit kaliumhydrogencarbonat?", POTASSIUM),
        ("ich habe nur kaliumhydrogencarbonat", POTASSIUM),
        ("et avec du bicarbonate de potassium ?", POTASSIUM),
        ("je n'ai que du bicarbonate de potassium", POTASSIUM),
        ("¿y con bicarbonato de potasio?", POTASSIUM),
        ("solo tengo bicarbonato de potasio", POTASSIUM),
        ("só tenho bicarbonato de potássio", POTASSIUM),
        ("ho solo bicarbonato di potassio", POTASSIUM),
        ("en met kaliumbicarbonaat?", POTASSIUM),
        ("mam tylko wodorowęglan potasu", POTASSIUM),
        ("och med kaliumbikarbonat?", POTASSIUM),
        ("make it 3 parts", Followup(parts=3)),
        ("in two days", Followup(parts=2)),
        ("in drei teilen", Followup(parts=3)),
        ("en trois jours", Followup(parts=3)),
        ("en 4 días", Followup(parts=4)),
        ("em três dias", Followup(parts=3)),
        ("in tre giorni", Followup(parts=3)),
        ("doe het in drie delen", Followup(parts=3)),
        ("w trzech częściach", Followup(parts=3)),
        ("i tre delar", Followup(parts=3)),
        ("half of that", Followup(factor=0.5)),
        ("die hälfte", Followup(factor=0.5)),
        ("la moitié", Followup(factor=0.5)),
        ("la mitad de eso", Followup(factor=0.5)),
        ("metade disso", Followup(factor=0.5)),
        ("la metà", Followup(factor=0.5)),
        ("de helft", Followup(factor=0.5)),
        ("połowę tego", Followup(factor=0.5)),
        ("hälften", Followup(factor=0.5)),
        ("twice that?", Followup(factor=2.0)),
        ("slower please", Followup(slower=True)),
        ("langsamer bitte", Followup(slower=True)),
        ("for quarry too", Followup(tank="Quarry")),
        ("and quarry?", Followup(tank="Quarry")),
        ("auch für quarry", Followup(tank="Quarry")),
        ("and for 120 l?", Followup(volume_l=120.0)),
        ("et pour 120 litres ?", Followup(volume_l=120.0)),
        ("what about kh 5?", Followup(analyte="kh", target=5.0)),
        ("only to kh 5", Followup(analyte="kh", target=5.0)),
        ("and 20%?", Followup(percent=20.0)),
        ("and 5 g?", Followup(grams=5.0)),
    ],
)
def test_a_follow_up_is_read(text: str, meant: Followup) -> None:
    assert read(text, CONTEXT) == meant


@pytest.mark.parametrize(
    "text",
    [
        "kh 5",
        "and kh 7",
        "kh 5?",
        "120 l",
        "potassium bicarbonate",
        "i have no potassium bicarbonate",
        "and the fish are fine",
        "quarry",
        "with love",
        "in 2.5 days",
        "in 400 parts",
        "and then i had half a mind to sell it all and go somewhere with potassium bicarbonate",
        "?",
        "",
    ],
)
def test_what_says_less_or_more_is_none(text: str) -> None:
    assert read(text, CONTEXT) is None
