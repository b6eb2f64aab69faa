"""The animals' table and what is asked of it."""

from __future__ import annotations

from collections import Counter
from importlib.resources import files

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.advice._livestock_compile import compiled
from core.advice.livestock import (
    RANGES,
    UNSOURCED,
    Species,
    could_live,
    fits,
    is_tender,
    kept_in,
    least_volume,
    likeliest,
    lookup,
    named_in,
    nitrate_limit,
    species,
    table,
    together,
)
from core.tank import Stock, Tank
from tests.core.advice.waters import by_kit, read, tank

ROWS = table().species
LANGUAGES = ("en", "de", "fr", "es", "pt", "it", "nl", "pl", "sv")
PLAUSIBLE = {
    "temperature": (0.0, 35.0),
    "ph": (3.5, 9.5),
    "gh": (0.0, 35.0),
    "kh": (0.0, 25.0),
    "salinity": (0.0, 40.0),
}


FLAGS = ("hunts", "fights", "shoals", "eats", "picks", "rivals")


def values_of(row: Species) -> list[str]:
    """Names of every value of a row that needs a source."""
    named = [*row.ranges, *row.sensitivity]
    named += ["length"] if row.length is not None else []
    named += ["nitrate_limit"] if row.nitrate_limit is not None else []
    return named + [flag for flag in FLAGS if getattr(row, flag)]


def test_what_is_read_at_work_is_what_people_edit() -> None:
    read = files("core.advice").joinpath("livestock.json").read_text(encoding="utf-8")
    assert read == compiled(), "run: python -m core.advice._livestock_compile (see its docstring)"


def test_there_are_enough_of_each_company() -> None:
    count = Counter(row.group for row in ROWS)
    assert len(ROWS) >= 120
    assert set(count) == {
        "soft water", "community", "livebearers", "goldfish and pond", "rift lakes", "brackish",
        "marine fish", "marine invertebrates", "corals", "shrimps and snails", "plants",
    }  # fmt: skip
    assert min(count.values()) >= 5


def test_every_value_names_its_source_and_the_shares_are_told(
    capsys: pytest.CaptureFixture[str],
) -> None:
    kinds: Counter[str] = Counter()
    for row in ROWS:
        for value in values_of(row):
            source = row.sources[value]
            assert source in table().sources, (row.scientific, value)
            kinds[source if source in UNSOURCED else "sourced"] += 1
    total = sum(kinds.values())
    with capsys.disabled():
        shares = ", ".join(f"{kind} {count / total:.0%}" for kind, count in sorted(kinds.items()))
        print(f"\nlivestock: {len(ROWS)} rows, {total} values: {shares}")
    assert kinds["sourced"] > 0


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.scientific)
def test_a_row_is_sound(row: Species) -> None:
    assert {"temperature", "ph", "salinity"} <= row.ranges.keys() <= set(RANGES)
    for of, span in row.ranges.items():
        low, high = PLAUSIBLE[of]
        assert low <= span.low < span.high <= high, of
    assert row.names["en"]
    assert row.names.keys() <= set(LANGUAGES)
    assert {s.level for s in row.sensitivity.values()} <= {"low", "normal", "high"}
    assert row.water == "marine" or "gh" in row.ranges
    if row.is_invertebrate:
        assert row.level("copper") == "high"
        assert row.level("ammonia") == "high"


def test_names_are_known_in_nine_languages() -> None:
    for language in LANGUAGES:
        share = sum(language in row.names for row in ROWS) / len(ROWS)
        assert share > 0.9, language


# FishBase as cited in the rows themselves ----------------------------------------------------


def test_at_most_sixty_species_are_cited() -> None:
    assert sum(bool(row.cited) for row in ROWS) <= 60


@pytest.mark.parametrize("row", [r for r in ROWS if r.cited], ids=lambda row: row.scientific)
def test_a_range_is_the_cited_one_or_says_why_not(row: Species) -> None:
    """Froese & Pauly (eds.), FishBase as cached on 14 February 2013 in rfishbase (grade A)."""
    for of in ("ph", "gh"):
        cited = (row.cited.get(f"{of}_low"), row.cited.get(f"{of}_high"))
        ours = (row.ranges[of].low, row.ranges[of].high)
        if ours == cited:
            assert row.ranges[of].source == "fishbase2013"
            assert of not in row.differs
        else:
            assert row.ranges[of].source != "fishbase2013"
            assert row.differs[of]


def test_nothing_claims_the_cited_copy_without_citing() -> None:
    for row in ROWS:
        claimed = {of for of, source in row.sources.items() if source == "fishbase2013"}
        assert not claimed or row.cited, row.scientific


# Looking up --------------------------------------------------------------------------------------


@pytest.mark.parametrize("row", ROWS, ids=lambda row: row.scientific)
def test_each_name_finds_its_row_or_asks(row: Species) -> None:
    for name in (row.scientific, *(n for names in row.names.values() for n in names)):
        found = lookup(name)
        assert found.species is row or (found.shared and row in found.candidates), name


@pytest.mark.parametrize(
    ("text", "scientific"),
    [
        ("Neon Tetras", "Paracheirodon innesi"),
        ("6 X", None),
        ("mollies", "Poecilia sphenops"),
        ("Guppys", "Poecilia reticulata"),
        ("GUPPIES", "Poecilia reticulata"),
        ("skalare", "Pterophyllum scalare"),
        ("néons bleus", "Paracheirodon innesi"),
        ("neon bleu", "Paracheirodon innesi"),
        ("poissons-clowns", "Amphiprion"),
        ("goldfishes", "Carassius auratus"),
        ("gold fish", "Carassius auratus"),
        ("bojowniki", "Betta splendens"),
        ("guldfiskar", "Carassius auratus"),
        ("Amanogarnelen", "Caridina multidentata"),
        ("Puntius tetrazona", "Puntigrus tetrazona"),
        ("paracheirodon  INNESI", "Paracheirodon innesi"),
    ],
)
def test_plurals_accents_and_old_names(text: str, scientific: str | None) -> None:
    found = lookup(text).species
    assert (found.scientific if found else None) == scientific


@pytest.mark.parametrize(
    ("text", "nearest"),
    [
        ("neon tetar", "neon tetra"),
        ("angelfihs", "freshwater angelfish"),
        ("gupply", "guppy"),
        ("Paracheirodon inesi", "neon tetra"),
        ("cherry shrmp", "cherry shrimp"),
    ],
)
def test_a_misspelt_name_is_offered_never_taken(text: str, nearest: str) -> None:
    found = lookup(text)
    assert found.species is None
    assert not found.shared
    assert nearest in [row.name for row in found.candidates]


@pytest.mark.parametrize("text", ["angelfish", "pez ángel", "Angel Fish"])
def test_two_species_of_one_name_are_asked(text: str) -> None:
    found = lookup(text)
    assert found.species is None
    assert found.shared
    assert {"Pterophyllum scalare", "Centropyge"} <= {row.scientific for row in found.candidates}


@pytest.mark.parametrize("text", ["tetra", "puffers", "gourami", "loach"])
def test_a_word_of_several_names_is_asked(text: str) -> None:
    found = lookup(text)
    assert found.species is None
    assert found.shared
    assert len(found.candidates) >= 2


@pytest.mark.parametrize("text", ["", "x", "unicorn", "9**9**9", "\u202e\u0000", "a" * 100_000])
def test_what_is_no_animal_finds_nothing(text: str) -> None:
    found = lookup(text)
    assert found.species is None
    assert found.candidates == ()


@given(st.text(max_size=80))
def test_any_text_is_answered(text: str) -> None:
    found = lookup(text)
    assert found.species is None or not found.candidates


def test_a_name_shared_by_several_is_no_species() -> None:
    with pytest.raises(KeyError):
        species("angelfish")


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("how do i add 6 cherry shrimps to my tank", ["cherry shrimp"]),
        ("guppies with a betta, please", ["guppy", "Siamese fighting fish"]),
        ("6 Neonsalmler und 2 Skalare", ["neon tetra", "freshwater angelfish"]),
        ("my water is hard", []),
        ("", []),
        ("x " * 5000, []),
    ],
)
def test_animals_named_in_a_sentence(text: str, names: list[str]) -> None:
    assert [f.species.name if f.species else None for _, f in named_in(text)] == names


@given(st.text(max_size=500))
def test_any_sentence_is_searched(text: str) -> None:
    assert all(found.species or found.candidates for _, found in named_in(text))


def test_a_shared_name_is_likeliest_of_the_tanks_water_and_kinds() -> None:
    found = lookup("angelfish")
    assert likeliest(found, tank(kind="marine"))[0].water == "marine"
    assert likeliest(found, tank())[0].water == "fresh"
    assert likeliest(lookup("tetra"), tank("rummynose tetra"))[0].name == "rummynose tetra"
    assert len(likeliest(lookup("tetra"), tank())) <= 4


@pytest.mark.parametrize(
    ("name", "litres"), [("oscar", 256.0), ("neon tetra", None), ("anubias", None)]
)
def test_the_least_water_of_a_grown_fish_common_practice(name: str, litres: float | None) -> None:
    assert least_volume(species(name)) == litres


# What suits ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "water", "off"),
    [
        ("neon tetra", {"gh": 20.0, "ph": 8.2}, {"gh", "ph"}),
        ("neon tetra", {"gh": 6.0, "ph": 6.8, "temperature": 24.0}, set()),
        ("neon tetra", {}, set()),
        ("goldfish", {"temperature": 28.0}, {"temperature"}),
        ("tropheus", {"ph": 7.0, "kh": 3.0}, {"ph", "kh"}),
        ("clownfish", {"salinity": 0.0}, {"salinity"}),
        ("nitrate eater", {}, None),
    ],
)
def test_fits(name: str, water: dict[str, float], off: set[str] | None) -> None:
    row = lookup(name).species
    assert ({m.analyte for m in fits(row, water)} if row else None) == off


@pytest.mark.parametrize(
    ("reading", "certain"),
    [
        (by_kit("gh", 12), True),
        (by_kit("gh", 11), False),
        (by_kit("ph", 7.6), False),
        (by_kit("ph", 8.0), True),
    ],
    ids=["11 to 12 of 10", "10 to 11 of 10", "7.4 to 7.8 of 7.5", "7.8 to 8.2 of 7.5"],
)
def test_the_kits_doubt_decides_whether_it_is_certain(reading: object, certain: bool) -> None:
    found = fits(species("neon tetra"), {reading.analyte: reading})  # type: ignore[attr-defined]
    assert [misfit.certain for misfit in found] == [certain]


@pytest.mark.parametrize(
    ("reading", "off"),
    [
        (read("gh", 3.0, low=0.0, qualifier="<"), False),
        (read("gh", 20.0, high=float("inf"), qualifier=">"), True),
        (read("gh", 8.0, high=float("inf"), qualifier=">"), False),
    ],
    ids=["under 3 may be 2", "over 20 is over 10", "over 8 may be 9"],
)
def test_an_end_of_the_scale_is_no_value(reading: object, off: bool) -> None:
    assert bool(fits(species("neon tetra"), {"gh": reading})) is off  # type: ignore[dict-item]


@given(st.sampled_from(ROWS), st.floats(0, 1), st.sampled_from(RANGES))
def test_inside_of_a_range_all_is_well(row: Species, place: float, of: str) -> None:
    span = row.ranges.get(of)
    if span is not None:
        value = min(span.low + place * (span.high - span.low), span.high)
        assert fits(row, {of: value}) == []


# Who suits whom ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("kinds", "reasons"),
    [
        (["neon tetra", "corydoras", "amano shrimp"], set()),
        (["neon tetra", "clownfish"], {"water"}),
        (["oscar", "neon tetra"], {"eats"}),
        (["betta", "guppy"], {"fights"}),
        (["pea puffer", "cherry shrimp"], {"preys"}),
        (["clown loach", "nerite snail"], {"preys"}),
        (["freshwater angelfish", "nerite snail"], set()),
        (["betta", "cherry shrimp"], {"picks"}),
        (["butterflyfish", "zoanthid"], {"picks"}),
        (["lionfish", "green chromis"], {"eats"}),
        (["assassin snail", "ramshorn snail"], {"preys"}),
        (["goldfish", "discus"], {"temperature"}),
        (["yellow lab", "rusty cichlid"], set()),
        (["clownfish", "cleaner shrimp"], set()),
        (["anubias", "neon tetra"], set()),
        (["oscar", "anubias"], set()),
        (["neon tetra", "neon tetra"], set()),
        ([], set()),
    ],
    ids=lambda value: ", ".join(value) if isinstance(value, list) else "",
)
def test_together(kinds: list[str], reasons: set[str]) -> None:
    assert {conflict.reason for conflict in together(map(species, kinds))} == reasons


@given(st.lists(st.sampled_from(ROWS), max_size=5))
def test_order_does_not_matter(rows: list[Species]) -> None:
    def seen(kinds: list[Species]) -> set[tuple[frozenset[str], str]]:
        return {
            (frozenset({c.one.scientific, c.other.scientific}), c.reason) for c in together(kinds)
        }

    assert seen(rows) == seen(rows[::-1])


# What could live in a water ----------------------------------------------------------------------


def test_soft_water_is_for_soft_water_fish() -> None:
    names = [suited.species.name for suited in could_live({"gh": 4.0, "kh": 2.0, "ph": 6.8})]
    assert {"neon tetra", "discus"} <= set(names)
    assert not {"guppy", "tropheus", "clownfish"} & set(names)


def test_hard_water_is_for_lakes_and_livebearers() -> None:
    names = [suited.species.name for suited in could_live({"gh": 16.0, "kh": 12.0, "ph": 7.8})]
    assert {"guppy", "yellow lab"} <= set(names)
    assert not {"neon tetra", "discus"} & set(names)


def test_the_sea_is_for_marine_kinds() -> None:
    rows = [suited.species for suited in could_live({"salinity": 34.0, "kh": 8.0, "ph": 8.2})]
    assert rows
    assert {row.water for row in rows} <= {"marine", "brackish"}


def test_without_hardness_nothing_is_promised() -> None:
    assert could_live({"ph": 7.0}) == []


def test_all_that_could_live_fits() -> None:
    water = {"gh": 8.0, "kh": 5.0, "ph": 7.2}
    for suited in could_live(water):
        assert not [m for m in fits(suited.species, water) if m.analyte in {"gh", "kh"}]


# What is on record --------------------------------------------------------------------------------


def test_stock_of_one_kind_by_two_names_is_summed() -> None:
    kept = kept_in(Tank("Fern", stock=(Stock("neon tetras", 6), Stock("Neonsalmler", 4))))
    assert [(row.scientific, count) for row, count in kept.known] == [("Paracheirodon innesi", 10)]


def test_what_is_not_known_is_kept_apart_and_lost_animals_do_not_count() -> None:
    kept = kept_in(
        Tank("Fern", stock=(Stock("gryphon", 1), Stock("guppy", 0), Stock("discus", 10_000)))
    )
    assert [stock.species for stock in kept.unknown] == ["gryphon"]
    assert [row.name for row in kept.kinds] == ["discus"]


@pytest.mark.parametrize(
    ("held", "tender"),
    [
        (tank("neon tetra"), False),
        (tank("neon tetra", "amano shrimp"), True),
        (tank("apple snail"), True),
        (tank("swan mussel"), True),
        (tank(kind="marine"), True),
        (tank(), False),
    ],
    ids=["fish", "shrimps", "snails", "mussels", "the sea", "nobody"],
)
def test_who_is_tender(held: Tank, tender: bool) -> None:
    assert is_tender(held) is tender


def test_nitrate_limits_by_camargo_2005_grade_a() -> None:
    """Camargo, Alonso & Salamanca 2005: 10 mg/L N in fresh water, 20 in the sea."""
    assert nitrate_limit(tank("neon tetra")) == (44.0, "camargo2005")
    limit, source = nitrate_limit(tank("clownfish", kind="marine")) or (0.0, "")
    assert source == "camargo2005"
    assert limit == pytest.approx(20.0 * 62.004 / 14.007, abs=0.1)
    assert nitrate_limit(tank("clownfish", "acropora", kind="marine")) == (20.0, "practice")
    assert nitrate_limit(tank()) is None
