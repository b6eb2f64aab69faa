"""A language made up for tests: every template in ⟦brackets⟧ and wide letters, its fields kept.

So English that did not go through gettext is seen at once: plain letters within a reply, or any
letter outside of the brackets.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Collection, Iterator
from pathlib import Path
from string import Formatter

from babel.messages.catalog import Catalog
from babel.messages.pofile import write_po

LANGUAGE = "eo"
"""Any language that has no catalogue of ours, with one plural form beside the singular."""

BOT = Path(__file__).parents[2] / "bot"
WIDE = {
    ord(letter): ord(letter) + 0xFEE0 for letter in map(chr, range(65, 123)) if letter.isalpha()
}
SYMBOLS = """
mg g kg L ml mL l cm m h min dH fH e F C K N P S CaCO meq mmol ppm gpg gal uk mV SG NH NO PO CO UTC
"""
UNITS = frozenset(SYMBOLS.split())
"""Symbols that are the same in every language; digits part them, so NO3 is NO."""


def spoken(template: str) -> str:
    """A template in the language."""
    parts = []
    for words, name, spec, conversion in Formatter().parse(template):
        parts.append(words.replace("{", "{{").replace("}", "}}").translate(WIDE))
        if name is not None:
            how = f"!{conversion}" if conversion else ""
            parts.append(f"{{{name}{how}{f':{spec}' if spec else ''}}}")
    return f"⟦{''.join(parts)}⟧"


def templates() -> Iterator[str | tuple[str, str]]:
    """Every template of the bot, as it is marked in the source."""
    for path in sorted(BOT.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name)):
                continue
            texts = [each.value for each in node.args if isinstance(each, ast.Constant)]
            if node.func.id in {"_", "N_"} and texts:
                yield str(texts[0])
            elif node.func.id == "ngettext" and len(texts) == 2:
                yield str(texts[0]), str(texts[1])


def write_catalogue(folder: Path) -> None:
    """Write the language where `bot.chat.words.text` looks for catalogues."""
    catalog = Catalog(locale=LANGUAGE)
    for template in templates():
        if isinstance(template, str):
            catalog.add(template, spoken(template))
        else:
            catalog.add(template, tuple(spoken(form) for form in template))
    place = folder / LANGUAGE / "LC_MESSAGES"
    place.mkdir(parents=True)
    with (place / "meniscus.po").open("wb") as file:
        write_po(file, catalog, width=0)


def leaks(text: str, data: Collection[str] = ()) -> list[str]:
    """The words of a reply that are neither in the language nor symbols nor the keeper's own.

    Parameters
    ----------
    text : str
        A line or a label.
    data : collection of str
        Words that are the keeper's own: names of tanks, sources, products, tasks.
    """
    allowed = UNITS | {word for said in data for word in (said, said.casefold(), said.capitalize())}
    text = re.sub("“[^”]*”", "", text)  # what the keeper said, quoted
    plain = re.findall("[A-Za-z]+", text)
    depth, outside = 0, []
    for sign in text:
        depth += (sign == "⟦") - (sign == "⟧")
        outside.append(sign if depth == 0 and sign not in "⟦⟧" else " ")
    strays = re.findall(r"[^\W\d_]+", "".join(outside).replace("µ", ""))
    return [word for word in [*plain, *strays] if word not in allowed]
