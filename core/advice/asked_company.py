"""Questions about animals in the words of keepers: `would neons be ok with discus`, in 20 l.

Read only where the parser found nothing: a sentence that asks (by its first word or its mark), that
names kinds of the table, and holds no word but those of keeping animals. Nine languages.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.advice._livestock_words import plain_name
from core.advice.inhabitants import LONGEST, NUMBER_TIMES, is_animal, leads, number_in
from core.advice.livestock import lookup, name_at
from core.message import herd, quantities
from core.message.amounts import litres
from core.message.fold import fold
from core.message.lexicon import lexicon
from core.message.model import Question
from core.message.tokens import cut

ASKING: Final = frozenset(
    "can could may might would will do does are is should shall kann konnen darf durfen passen"  # noqa: SIM905
    " passt gehen vertragen sind ist puis peut peux peuvent est puedo puede pueden posso pode podem"
    " possono puo kan kunnen mag czy moge moga mogen far gar passar"
    " sont son sono zijn ar estan estao esta".split()
)
"""First words of such a question, without accents."""

WHAT: Final = frozenset(
    "what which was welche welcher welches welchen que quoi quel quels quelle quelles cual cuales"  # noqa: SIM905
    " quais qual cosa che quali quale wat welke co jakie ktore vad vilka vilken".split()
)
"""Words that ask for a kind, without accents."""

KEEPING: Final = frozenset(
    "keep get juntar house stock add put have live grow halten einsetzen setzen dazusetzen"  # noqa: SIM905
    " reinsetzen leben zusammenhalten vergesellschaften mettre garder ajouter vivre cohabiter tener"
    " poner meter anadir vivir convivir ter colocar adicionar por viver conviver tenere mettere"
    " aggiungere inserire vivere convivere houden zetten toevoegen doen leven trzymac dodac"
    " wpuscic zyc ha halla tillsatta satta leva".split()
)
"""Words that ask for it by themselves."""

SAFE: Final = frozenset(
    "safe unsafe secure harmless dangerous danger risky harmful sicher unbedenklich ungefahrlich"  # noqa: SIM905
    " gefahrlich riskant schadlich surs sur sures sure securite risque danger dangereux dangereuse"
    " risquee nocif seguro segura seguros seguras peligroso peligrosa peligro riesgo perigoso"
    " perigosa perigo risco sicuro sicura sicuri sicure pericoloso pericolosa pericolo rischio"
    " rischioso veilig veiliger gevaarlijk riskant schadelijk bezpieczne bezpieczna bezpiecznie"
    " niebezpieczne grozne ryzykowne sakra sakert saker farligt farlig farliga riskabelt".split()
)
"""Words of safety and danger, without accents."""

BESIDE: Final = frozenset(
    "i you we they be been ok okay fine good safe kept living lives together with alongside"  # noqa: SIM905
    " other each eat eats attack kill fight my a an the some any more another also well go along"
    " compatible mates tankmates bowl fit into of how many please in and one ich man wir zusammen"
    " mit zu bei im den die das der dem ein eine einen einem noch meinem meiner becken sich auch"
    " und gut wie viele fressen"
    " je on nous ensemble avec dans des les un une vont du de le la mes mon ce que bac et combien"
    " manger"
    " yo juntos juntas con en una unos los las mi mis el y se cuantos cuantas comer bien com em um"
    " uma no na meu meus minha os as e quantos quantas o insieme dei gli uno il mio miei nel quanti"
    " quante ik samen met een het mijn bak en hoeveel bij er razem z ze w do moje moich ile"
    " zbiorniku jag ihop tillsammans med ett mina mitt till och hur"
    " manga per pour fur para voor for"
    " byc mangent comen comem mangiano eten jedza ater".split()
)
"""Words that may stand beside, without weight."""

PLACES: Final = frozenset(
    "here there inside now still that it this these those water wasser eau agua acqua woda wodzie"  # noqa: SIM905
    " vattnet hier da drin darin jetzt noch ici dedans maintenant encore aca ahi alli dentro ahora"
    " todavia aqui ali agora ai ainda qui ora ancora daar erin nu nog tam tutaj tu teraz jeszcze"
    " dar fortfarande en al gli ce se sa".split()
)
"""Words for where and when they are safe, without accents."""

HOW_MANY: Final = (
    "how many", "wie viele", "wieviele", "combien", "cuantos", "cuantas", "quantos", "quantas",
    "quanti", "quante", "hoeveel", "ile", "hur manga",
)  # fmt: skip
"""What asks for a number, without accents."""


WITH: Final = frozenset(
    "with mit zu bei avec con com met bij z ze med ihop till para for tankmates companions mates"  # noqa: SIM905
    " compagnons companeros companheiros compagni".split()
)
"""Words before the kind that company is sought for, without accents."""

GOES: Final = frozenset(
    "goes go pairs match matches suits va vont vai vao vanno van bien bem bene gaat gaan pasuje"  # noqa: SIM905
    " pasuja zusammen tankmates companions compagnons companeros companheiros compagni".split()
)
"""Words for being well together, without accents."""


def asks_companions(text: str) -> bool:
    """Whether it is asked who may live with a kind: what goes with a betta.

    Examples
    --------
    >>> asks_companions("What goes with a betta"), asks_companions("can i keep neons with a betta")
    (True, False)
    """
    words = plain_name(text).split()
    seeks = not WHAT.isdisjoint(words[:2]) or not {"tankmates", "companions"}.isdisjoint(words)
    return seeks and not WITH.isdisjoint(words)


def asks_how_many(text: str) -> bool:
    """Whether a question begins by asking for a number.

    Examples
    --------
    >>> asks_how_many("How many neons in 60 l?"), asks_how_many("can i keep neons")
    (True, False)
    """
    plain = plain_name(text) + " "
    return any(plain.startswith(f"{words} ") for words in HOW_MANY)


def asks_safety(text: str) -> bool:
    """Whether a question is of safety or danger: are shrimps safe in there.

    Examples
    --------
    >>> asks_safety("sind Garnelen da drin sicher?"), asks_safety("can i keep shrimps")
    (True, False)
    """
    return not SAFE.isdisjoint(plain_name(text).split())


def asks_enough(text: str) -> bool:
    """Whether a question is of the tank's size: is 60 l enough, too small for."""
    return any("enough" in herd.asking(word) for word in plain_name(text).split())


def asked_company(
    text: str, tanks: Sequence[str] = (), *, us_gallons: bool = True
) -> Question | None:
    """What a sentence asks about keeping animals; None where it is anything else.

    Parameters
    ----------
    text : str
        A message.
    tanks : sequence of str
        The chat's tanks, whose names may stand in it.
    us_gallons : bool
        What a gallon is.

    Examples
    --------
    >>> asked = asked_company("would neons be ok with discus")
    >>> asked.kind, asked.species
    ('keep', 'neons with discus')
    >>> asked_company("is a goldfish ok in 20 l?").volume_l
    20.0
    >>> asked_company("kann ich einen axolotl mit guppys halten").species
    'axolotl with guppys'
    >>> asked_company("are my neons ok?"), asked_company("do neons need a heater")
    (None, None)
    """
    if len(text) > LONGEST:
        return None
    words = plain_name(NUMBER_TIMES.sub(r"\1 \2", text)).split()
    for_what = not WHAT.isdisjoint(words[:2]) or asks_companions(text)  # o que pode viver
    asks = bool(words) and (words[0] in ASKING or asks_how_many(text) or for_what)
    asks = asks or asks_enough(" ".join(words[:1])) or ("?" in text and asks_safety(text))
    if not words or not (asks or "?" in text):
        return None
    volume = _volume(text, us_gallons=us_gallons)
    named = {tank: plain_name(tank).split() for tank in tanks}
    kinds: list[str] = []
    tank: str | None = None
    any_animal: str | None = None
    keeping, place = asks_how_many(text), 0
    stranger = False
    while place < len(words):
        size, found = name_at(words, place)
        here = next((t for t, name in named.items() if words[place:][: len(name)] == name), None)
        if size and is_animal(found):
            kinds.append(" ".join(words[place : place + size]))
        elif here is not None:
            tank, size = here, len(named[here])
        elif herd.saying(words[place]) == "any":
            any_animal = words[place]
        elif words[place] in KEEPING | SAFE or "enough" in herd.asking(words[place]):
            keeping = True
        elif for_what and words[place] in WHAT:
            pass
        elif for_what and words[place] in WITH | GOES:
            keeping = True
        elif not _is_plain(words[place], measured=volume is not None):
            shared = lookup(words[place])
            if not (shared.shared and is_animal(shared)):
                if stranger or not (asks and _may_be_stranger(words, place)):
                    return None
                stranger = True  # an axolotl with guppies
            kinds.append(words[place])  # shrimp, tetras: whom is asked
        place += size or 1
    if any_animal and not kinds and asks_how_many(text):
        return Question("keep", tank=tank, species=any_animal, volume_l=volume, text=text)
    if for_what and keeping and not kinds:
        return Question("keep", tank=tank, volume_l=volume, text=text)
    if stranger and not (keeping and len(kinds) > 1):
        return None
    enough = len(kinds) > 1 or (kinds and volume is not None) or (kinds and asks and keeping)
    if not enough:
        return None
    return Question("keep", tank=tank, species=" with ".join(kinds), volume_l=volume, text=text)


def _may_be_stranger(words: Sequence[str], place: int) -> bool:
    """Whether a word may name an animal that nobody knows: company, and it means nothing else."""
    word = words[place]
    company = {*words[max(0, place - 2) : place], *words[place + 1 : place + 2]}
    if WITH.isdisjoint(company) or len(word) < LEAST or not word.isalpha():
        return False
    return word not in lexicon().words and not herd.saying(word) and not herd.asking(word)


LEAST: Final = 4
"""Letters of a name that is taken for an animal's unknown."""


def _is_plain(word: str, *, measured: bool) -> bool:
    if herd.saying(word) in herd.SEXES or word in ASKING | BESIDE | SAFE | PLACES:
        return True
    if leads(word) or number_in(word) is not None or "big" in herd.asking(word):
        return True
    return measured and (word.isdigit() or _is_unit(word))


def _is_unit(word: str) -> bool:
    entry = lexicon().words.get(word)
    return entry is not None and entry[0] == "unit"


def _volume(text: str, *, us_gallons: bool) -> float | None:
    """The only volume of a text. [L]"""
    tokens = cut(fold(text), lexicon())
    read = (quantities.read(tokens, i) for i, t in enumerate(tokens) if quantities.is_number(t))
    found = [litres(quantity, us_gallons=us_gallons) for quantity in read if quantity is not None]
    told = [volume for volume in found if volume is not None]
    return told[0] if len(told) == 1 else None


AIRING: Final = frozenset(
    "more use run turn on install need needs extra stone pump tank better with without at night"  # noqa: SIM905
    " mehr brauche brauchen reinmachen reintun dazugeben anmachen einschalten zugeben dazu nachts"
    " plus besoin pompe allumer faut il poner encender necesito necesita bomba mas mais ligar"
    " preciso piu accendere serve pompa meer nodig aanzetten wiecej wlaczyc potrzebne potrzebuje"
    " mer behover sla pa acqua agua eau water wasser woda vatten".split()
)
"""Words that may stand in a question about air, without accents."""


def asks_for_air(text: str, tanks: Sequence[str] = ()) -> str | None:
    """Whether it is asked if air may go in: the tank named, "" where none is; else None.

    Examples
    --------
    >>> asks_for_air("can i add an air pump"), asks_for_air("is there air in the filter")
    ('', None)
    """
    if len(text) > LONGEST:
        return None
    words = plain_name(NUMBER_TIMES.sub(r"\1 \2", text)).split()  # de l'air
    asks = bool(words) and (words[0] in ASKING or "?" in text or words[0] in {"do", "czy"})
    if not asks or not any(herd.saying(word) == "air" for word in words):
        return None
    named = {word: tank for tank in tanks for word in plain_name(tank).split()}
    for word in words:
        known = herd.saying(word) in {"air", "further"} or word in named or word in KEEPING | AIRING
        if not known and word not in ASKING | BESIDE and not leads(word):
            return None
    return next((named[word] for word in words if word in named), "")
