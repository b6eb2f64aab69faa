"""Words of the keeper's tasks, all languages together: they hardly ever mean two things.

English first, then German, French, Spanish, Portuguese, Italian, Dutch, Polish and Swedish, as
`vocabulary.fold` writes them.
"""

from __future__ import annotations

from core.schedule.words.vocabulary import fold


def _set(*words: str) -> frozenset[str]:
    return frozenset(fold(word) for line in words for word in line.split())


def _phrases(*lines: str) -> tuple[str, ...]:
    """Phrases between commas, the longest first."""
    return tuple(
        sorted((each for line in lines for each in line.split(",")), key=len, reverse=True)
    )


ANALYTES = _set(
    "ph kh gh no2 no3 nh3 nh4 po4 ca mg k fe cu co2 o2 tds ec sg alk alkalinity ammonia ammonium",
    "nitrite nitrites nitrate nitrates phosphate phosphates calcium magnesium potassium iron",
    "copper chlorine chloride salinity conductivity hardness redox silicate silicates oxygen",
    "temperature water parameters params levels",
    "wasserwerte eau agua água acqua wody vatten nitrat nitrit nitrato nitrito azotany azotyny",
)
TEST = _set(
    "test tests testing retest measure",
    "testen messen tester mesurer probar medir testar testare misurare meten testuj testować",
    "zmierz zmierzyć mierzyć testa mät mäta misura teste mesure mide mede meet messe teste",
)
WATER = _set("water eau agua água acqua wody vatten")
LOOK = _set(
    "check recheck read",
    "prüfen prüfe kontrollieren vérifier vérifie contrôler revisar revisa verificar verifica",
    "checar controllare controlla controleren controleer sprawdź sprawdzić kolla kontrollera",
)
CHANGE = _set(
    "change changes changing exchange swap",
    "wechseln wasserwechsel tauschen changer changement cambiar cambio trocar troca cambiare",
    "verversen ververs waterwissel wymień wymienić wymiana podmiana podmień podmienić byta byt",
    "byte vattenbyte wechsel wechsle changez cambia troque trocar mudar mude",
)
WATER_CHANGE = _set("wc waterchange wasserwechsel waterwissel podmiana vattenbyte verversen")
RENEW = _set(
    "replace renew replacing",
    "ersetzen erneuern remplacer reemplazar substituir sostituire vervangen ersätt",
)
OBTAIN = _set(
    "buy order check recheck expiry expires",
    "kaufen acheter comprar comprare kopen kup köpa köp",
)
CLEAN = _set(
    "clean cleaning rinse wash service backwash scrub unclog squeeze",
    "reinigen putzen spülen nettoyer rincer limpiar enjuagar limpar pulire sciacquare",
    "schoonmaken spoelen czyść wyczyść wyczyścić czyścić czyszczenie rengör rengöra skölj skölja",
    "reinige säubern putze nettoie rince limpia limpe lave lavar lavare pulisci sciacqua maak",
    "vacuum vac wipe scrape absaugen aspirar siphonner prune trim",
)
DOSE = _set(
    "dose dosing doses redose add fertilise fertilize fertiliser fertilizer",
    "düngen dosieren doser dosificar abonar dosar dosare doseren bemesten nawóz dawkuj dosera",
    "gödsla adubar adube fertilizar fertiliza fertilizante engrais dünge dünger dosiere",
    "concimare concima fertilizzare fertilizzante abonar abona abono bemest nawozić nawieź",
)
FEED = _set(
    "feed feeding",
    "füttern füttere nourrir nourris alimentar alimenta alimentare voeren voer voederen karm",
    "karmić nakarm nakarmić mata",
)
CALIBRATE = _set(
    "calibrate recalibrate calibration",
    "kalibrieren eichen étalonner calibrer calibrar tarare calibrare ijken kalibreren kalibracja",
    "kalibruj skalibruj kalibrera",
)
KIT = _set("kit kits reagent reagents", "testkit testset reagenz réactif reactivo reagente")
FILTER = _set(
    "filter filters canister prefilter skimmer sponge sponges impeller",
    "filtre filtro filtr filtret schwamm filterschwamm mousse esponja spugna spons gąbka",
)
MEDIA = _set(
    "media medium carbon charcoal floss wool resin zeolite cartridge cartridges pads",
    "filtermedium aktivkohle kohle charbon carbón carvão carbone kool węgiel kol filterwatte",
)
THINGS = _set(
    "bulb bulbs lamp lamps light lights lighting battery batteries tube tubing hose airstone",
    "diffuser timer membrane cylinder bottle probe probes electrode heater pump substrate gravel",
    "sand decor",
    "lampe birne batterie flasche ampoule lámpara lâmpada lampada batteri flaska",
)
TOP_UP = (
    " top up ",
    " top off ",
    " topup ",
    " topping up ",
    " auffullen ",
    " nachfullen ",
    " rellenar ",
    " rabboccare ",
    " bijvullen ",
    " dolewka ",
    " fyll pa ",
)
"""Phrases, with a space on either side."""
VERBS = (
    TEST
    | LOOK
    | CHANGE
    | WATER_CHANGE
    | RENEW
    | OBTAIN
    | CLEAN
    | DOSE
    | FEED
    | CALIBRATE
    | _set("filterreinigung filterwechsel teilwasserwechsel tww")
)
"""What makes words a chore."""
OBJECTS = FILTER | MEDIA | KIT | THINGS | ANALYTES
"""What has a chore, though its verb is left out."""
ARTICLES = _set(
    "the a my and new der die das den und neue mein le la les et mon ma l el los las y mi",
    "o os as e meu minha il i lo gli het de en mijn moj moja i det och min mitt & , + '",
)
AGAIN = _set(
    "again once more nochmal noch mal wieder encore de nouveau otra vez de nuevo outra vez de novo",
    "di nuovo ancora opnieuw weer nog eens een keer znowu jeszcze raz igen same the same",
)
"""Words of which a task that is only the one before is made."""
LATER = _set(
    "later after afterwards thereafter später danach darauf après tard después tarde depois dopo",
    "tardi daarna erna później potem senare efteråt",
)
"""What makes a span count from the job before it."""
LEADS = _phrases(
    "remind me,remind us,rem me,please,pls,bitte,me,to,of,about,an,daran,dran,dass,de,di,que,om",
    "att,aan,eraan,o,and,also,then,und,auch,dann,et,aussi,puis,y,también,tambien,luego,e,também",
    "tambem,depois,anche,poi,en,ook,dan,i,też,tez,oraz,potem,och,också,ocksa,sedan,ich,je,yo,io",
    "eu,ik,jag,we,wir,erinnere mich,erinner mich,mich,erinnern,rappelle-moi,rappelle moi,rappeler",
    "recuérdame,recuerdame,recordar,lembra-me,lembrar,ricordami,ricordare,herinner me,herinner mij",
    "herinneren,przypomnij mi,przypomnij,przypomnieć,påminn mig,påminna",
)
"""What joins a task to words before it, who does it, and the request itself: no part of a task."""
TO = _set("to att zu zum ans that dass daran żeby zeby")
"""In front of what is to be done, and of nothing else behind a number."""
OF = _set("de d di a à para per om te an pour por o")
"""In front of what is to be done, and of much else."""
JOINT = "and"
JOINT_SIGNS = frozenset({";", ",", "+", "&"})
MEASURES = _set(
    "g gr gram grams gramm grammes gramos gramas grammi ml l liter liters litre litres litros",
    "litri litrów % percent prozent x times drops tropfen gouttes gotas gocce druppels kropli x",
    "droppar tsp tbsp kg mg ppm degrees grad c f ‰ ° dh cl gal gallon gallons drop pct gramme",
    "millilitres mililitros milliliter litern litro litry krople kropli gramy gramów procent",
    "procentów",
)
"""What makes a number before it an amount, and no hour."""
