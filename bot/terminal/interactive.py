"""The conversation for a person at a keyboard: history, names completed, a prompt kept whole."""

from __future__ import annotations

from collections.abc import AsyncIterator, Iterable
from pathlib import Path
from typing import TYPE_CHECKING

from prompt_toolkit import PromptSession
from prompt_toolkit.completion import CompleteEvent, Completer, Completion
from prompt_toolkit.document import Document
from prompt_toolkit.history import FileHistory, History, InMemoryHistory
from prompt_toolkit.patch_stdout import patch_stdout
from prompt_toolkit.styles import Style

from bot.terminal.lines import LineError

if TYPE_CHECKING:
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output as Screen

    from bot.app import App
    from bot.terminal.session import Session

PROMPT = "> "
HINT = " #1 presses a button · Tab completes · /help · Ctrl-D leaves"
COMMANDS = (
    "/help", "/tank", "/tank new", "/source", "/remind", "/zone", "/settings", "/privacy",
    "/export", "undo", "more", "done", "why", "quiet hours", "holiday until", "remind me to",
)  # fmt: skip
_STYLE = Style.from_dict({"bottom-toolbar": "noreverse"})


class Names(Completer):
    """Completes commands at the start of a line, and tanks and species anywhere in it."""

    def __init__(self) -> None:
        self.names: list[str] = []

    def get_completions(
        self,
        document: Document,
        complete_event: CompleteEvent,  # noqa: ARG002 - the signature is the library's
    ) -> Iterable[Completion]:
        """Offer what continues the text before the cursor, whatever its case."""
        before = document.text_before_cursor
        for start in _word_starts(before):
            part = before[start:]
            known = (*COMMANDS, *self.names) if start == 0 else self.names
            for name in known:
                if name.casefold().startswith(part.casefold()):
                    yield Completion(name, start_position=-len(part))


def _word_starts(text: str) -> list[int]:
    """Give where the last words of a text begin, the longest part first: names may have spaces."""
    starts = [0, *(at + 1 for at, sign in enumerate(text) if sign in " @,:")]
    return [start for start in starts if start < len(text)][-4:]


async def converse(
    session: Session,
    app: App,
    *,
    history: Path | None,
    keyboard: Input | None = None,
    screen: Screen | None = None,
) -> int:
    """Talk with a person until they leave with Ctrl-D, or with Ctrl-C on an empty line.

    Parameters
    ----------
    session : Session
        Who answers; its replies are written to standard output, above the prompt.
    app : App
        Knows the names to complete.
    history : Path or None
        The file of earlier lines; None keeps them for this sitting only.
    keyboard, screen : optional
        Other than the terminal's own, for tests.

    Returns
    -------
    int
        The exit status, 0.
    """
    names = Names()
    prompt: PromptSession[str] = PromptSession(
        PROMPT,
        history=_history(history),
        completer=names,
        complete_while_typing=False,
        bottom_toolbar=HINT,
        reserve_space_for_menu=4,
        style=_STYLE,
        input=keyboard,
        output=screen,
    )
    with patch_stdout(raw=True):
        await session.deliver_due()
        names.names = await app.names(session.address)
        async for line in session.until_over(_typed(prompt)):
            try:
                await session.take(line)
            except LineError as error:
                session.note(_sentence(str(error)))
            names.names = await app.names(session.address)
    return 0


async def _typed(prompt: PromptSession[str]) -> AsyncIterator[str]:
    while True:
        try:
            line = await prompt.prompt_async(handle_sigint=False)  # a signal ends the sitting
        except EOFError:
            return
        except KeyboardInterrupt:
            if not prompt.default_buffer.text:
                return
            continue  # the half-typed line is given up, not the conversation
        # a lone half of a surrogate pair can be typed, and can be stored nowhere
        yield line.encode("utf-8", errors="replace").decode("utf-8")


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}."


def _history(path: Path | None) -> History:
    if path is None:
        return InMemoryHistory()
    path.touch(mode=0o600)  # before the library makes it for everybody to read
    return FileHistory(path)
