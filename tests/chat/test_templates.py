"""What is said is marked for gettext: whole templates in plain strings, found by the extractor."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from string import Formatter

from babel.messages.extract import extract_from_file

from core.substances import SUBSTANCES

BOT = Path(__file__).parents[2] / "bot"
MARKS = {"_": 1, "N_": 1, "ngettext": 2}
"""The marks of `bot.chat.words.text`, and how many templates each takes."""

UNITS = frozenset({"g", "L", "ml", "mL", "°C", "NH3-N mg/L", "ppm CaCO3"})
"""Symbols, written alike in every language."""

DATA = frozenset({"poison_lines.py"})
"""Files whose plain strings are names and numbers to dial, beside their templates."""


@cache
def tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


@cache
def files() -> tuple[Path, ...]:
    """Every file that takes a mark from where the marks are."""
    sources = [
        path for path in sorted(BOT.rglob("*.py")) if "words.text" in path.read_text("utf-8")
    ]
    return tuple(path for path in sources if takes_marks(path))


def word_files() -> list[Path]:
    folder = BOT / "chat" / "words"
    return [path for path in sorted(folder.glob("*.py")) if path.name != "text.py"]


def takes_marks(path: Path) -> bool:
    return any(
        node.module == "bot.chat.words.text" and any(alias.name in MARKS for alias in node.names)
        for node in ast.walk(tree(path))
        if isinstance(node, ast.ImportFrom)
    )


def calls(path: Path) -> Iterator[tuple[str, ast.Call]]:
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
            name = node.func.id
            if name in MARKS:
                yield name, node


def place(path: Path, node: ast.AST) -> str:
    return f"{path.relative_to(BOT.parent)}:{getattr(node, 'lineno', 0)}"


def fields(template: str) -> set[str]:
    return {name for _, name, _, _ in Formatter().parse(template) if name is not None}


def constants(call: ast.Call) -> list[str]:
    return [
        each.value
        for each in call.args[:2]
        if isinstance(each, ast.Constant) and isinstance(each.value, str)
    ]


def test_marks_take_plain_strings() -> None:
    """A table's template is looked up by `_` under a name; else a template stands in the call."""
    wrong = [
        place(path, call)
        for path in files()
        for name, call in calls(path)
        if any(isinstance(each, ast.JoinedStr | ast.BinOp) for each in call.args[: MARKS[name]])
        or (name != "_" and len(constants(call)) != MARKS[name])
    ]
    assert not wrong


def test_a_template_names_its_fields() -> None:
    """A translator moves fields about: none goes by its place or reaches into an object."""
    wrong = [
        place(path, call)
        for path in files()
        for _name, call in calls(path)
        for template in constants(call)
        if not all(field.isidentifier() for field in fields(template))
    ]
    assert not wrong


def test_a_template_gets_the_fields_that_it_names() -> None:
    checked, wrong = 0, []
    for path in files():
        for node in ast.walk(tree(path)):
            match node:
                case ast.Call(
                    func=ast.Attribute(
                        value=ast.Call(func=ast.Name(id=name)) as call, attr="format"
                    ),
                    keywords=keywords,
                ) if name in MARKS and constants(call) and all(each.arg for each in keywords):
                    checked += 1
                    given = {each.arg for each in keywords}
                    named = set().union(*map(fields, constants(call)))
                    if given != named or node.args:
                        wrong.append((place(path, node), given ^ named))
    assert not wrong
    assert checked > 250


def test_no_mark_is_shadowed() -> None:
    """A loop over `_` in a function that says something would lose the words."""
    wrong = [
        place(path, node)
        for path in files()
        for node in ast.walk(tree(path))
        if (isinstance(node, ast.Name) and isinstance(node.ctx, ast.Store) and node.id in MARKS)
        or (isinstance(node, ast.arg) and node.arg in MARKS)
    ]
    assert not wrong


def test_the_extractor_finds_every_template() -> None:
    extracted = {
        text
        for path in files()
        for _line, message, _comments, _context in extract_from_file("python", path)
        for text in ((message,) if isinstance(message, str) else message)
    }
    marked = {text for path in files() for _name, call in calls(path) for text in constants(call)}
    assert extracted == marked
    assert len(marked) > 1200


def spoken_parts(path: Path) -> Iterator[tuple[ast.AST, str]]:
    """The English of a file that no mark takes: plain strings with a space, f-strings."""
    quiet: set[ast.AST] = set()
    for node in ast.walk(tree(path)):
        match node:
            case ast.Expr(value=ast.Constant() as text):  # a docstring
                quiet.add(text)
            case ast.Call(func=ast.Name(id=name)) if name in MARKS:
                quiet.update(node.args)
            case ast.JoinedStr():
                quiet.update(each for each in ast.walk(node) if isinstance(each, ast.Constant))
    for node in ast.walk(tree(path)):
        if isinstance(node, ast.JoinedStr):
            texts = [str(each.value) for each in node.values if isinstance(each, ast.Constant)]
            said = " ".join(" ".join(texts).split())
        elif isinstance(node, ast.Constant) and node not in quiet and " " in str(node.value):
            said = str(node.value)
        else:
            continue
        if any(letter.isalpha() for letter in said):
            yield node, said


def test_no_words_go_past_gettext() -> None:
    wrong = [
        (place(path, node), said)
        for path in word_files()
        if path.name not in DATA
        for node, said in spoken_parts(path)
        if said not in UNITS | SUBSTANCES and not is_format(path, node)
    ]
    assert not wrong


def is_format(path: Path, node: ast.AST) -> bool:
    """Tell whether it is what stands behind the colon of a field, as in `{share:.0f}`."""
    return any(
        isinstance(each, ast.FormattedValue) and each.format_spec is node
        for each in ast.walk(tree(path))
    )
