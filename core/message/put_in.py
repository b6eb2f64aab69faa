"""How much it was that went in: `how much salt did i add if salinity went from 1 to 3`.

asked = question with a deed of the past, of one's own, in one of nine languages
"""

from __future__ import annotations

import re
from typing import Final

from core.message.fold import fold

_PAST: Final = re.compile(
    r"\b(?:(?:did|have|had|must|had to) (?:i|we|he|she|they|someone|somebody) (?:\w+ ){0,2}"
    r"(?:add|added|put|dose|dosed|pour|poured|tip|tipped|use|used|give|gave|given|throw|thrown)"
    r"|hab(?:e|en)? (?:ich|wir)\b.{0,60}"
    r"(?:gegeben|getan|gekippt|gegossen|gesetzt|gefugt|dosiert|geschuttet)"
    r"|(?:ai-je|avons-nous|a-t-on|j.ai|on a) (?:\w+ )?(?:mis|ajoute|verse|donne|dose)"
    r"|(?:anadi|eche|puse|agregue|anadimos|echamos|pusimos)"
    r"|(?:he|hemos) (?:anadido|echado|puesto|agregado)"
    r"|coloquei|pus|adicionei|deitei|botei|juntei"
    r"|(?:ho|abbiamo) (?:\w+ )?(?:messo|aggiunto|versato|dosato|dato)"
    r"|heb(?:ben)? (?:ik|we|wij)\b.{0,60}(?:toegevoegd|gedaan|gegeven|gestrooid|gegooid|gedoseerd)"
    r"|(?:dodal|wsypal|dal|wlal|nasypal)(?:em|am)"
    r"|(?:tillsatte|hallde|lade|gav) (?:jag|vi)|(?:jag|vi) (?:tillsatte|hallde|lade|gav)"
    r"|har (?:jag|vi) (?:\w+ )?(?:tillsatt|hallt|lagt|gett))\b"
)


def is_asked(text: str) -> bool:
    """Whether a question of an amount is about one that went in, not one to put in.

    Examples
    --------
    >>> is_asked("how much salt did I add if salinity went from 1 to 3")
    True
    >>> is_asked("hoeveel zout heb ik nodig van saliniteit 1 naar 3")
    False
    """
    return _PAST.search(fold(text)) is not None
