"""One row of the inbox: read, handled, answered; whatever happens, the next one gets its turn."""

from __future__ import annotations

import asyncio
import logging
from datetime import timedelta

from bot.chat.model import Address, Incoming, Reply
from bot.chat.words.text import speaking
from bot.delivery import ChatGone, DeliveryError, MaybeSent, Refused, Throttled
from bot.inbox.codec import dump_replies, load_replies
from bot.inbox.model import Conversation, Departure, Job, Messenger, Unreadable
from bot.inbox.rows import Inbox, NotMine, Shown
from bot.inbox.trouble import (
    describe,
    is_database_trouble,
    new_reference,
    report,
    wait_before,
)
from bot.inbox.words import failed, maybe_repeat, undeliverable
from bot.store.uow import UnitOfWork

log = logging.getLogger(__name__)

MOST_ATTEMPTS = 20
"""A message that was tried this often, at last alone, and never handled is what kills us."""

MOST_REPEATS = 12
"""An answer sent this often without an acknowledgement is taken to have arrived. Only such sends
count: an answer held up by throttling or an outage was not sent at all."""


class Worker:
    """Works on rows, one call of `work` each; calls may run side by side.

    Parameters
    ----------
    inbox : Inbox
        Where the rows come from.
    messenger : Messenger
        Reads updates and carries replies.
    conversation : Conversation
        Answers.
    """

    def __init__(self, inbox: Inbox, messenger: Messenger, conversation: Conversation) -> None:
        self._inbox = inbox
        self._messenger = messenger
        self._conversation = conversation

    async def work(self, job: Job) -> None:
        """Do what a row needs. Raises nothing but cancellation."""
        try:
            await self._work(job)
        except NotMine:
            log.warning("update %s is in other hands now", job.update_id)
        except Exception as error:  # noqa: BLE001 - one message never stops the others
            await self._give_back(job, error)

    async def _work(self, job: Job) -> None:
        try:
            came = self._messenger.read(job.raw, job.received_at)
        except Unreadable as problem:
            report(log, "update %s cannot be read: %s", job.update_id, problem)
            await self._inbox.park(job, str(problem))
            return
        if isinstance(came, Departure):
            await self._conversation.chat_gone(came.address, came.moved_to)
        if not isinstance(came, Incoming):
            await self._inbox.answered(job, 0)
            return
        if came.kind != "press" or job.replies is not None:
            await self._answer(job, came)
            return
        acknowledged = asyncio.create_task(self._acknowledge(job))
        try:
            await self._answer(job, came)
        finally:
            await acknowledged

    async def _acknowledge(self, job: Job) -> None:
        try:
            await self._messenger.acknowledge(job.raw)
        except Exception as error:  # noqa: BLE001 - the answer itself does not hang on it
            report(log, "press %s was not acknowledged: %s", job.update_id, describe(error))

    async def _answer(self, job: Job, incoming: Incoming) -> None:
        if job.replies is not None:
            try:
                replies = load_replies(job.replies)
            except Unreadable as problem:
                report(log, "the answer to update %s cannot be read: %s", job.update_id, problem)
                await self._inbox.park(job, str(problem), job.sent)
                return
            await _Delivery(self, job, incoming.address, job.error).run(replies)
            return
        reference = None
        try:
            replies = await self._handle(job, incoming)
        except NotMine:
            raise
        except Exception as error:
            if is_database_trouble(error):
                raise
            reference = new_reference()
            report(
                log, "update %s failed, reference %s: %s", job.update_id, reference, describe(error)
            )
            with speaking(await self._conversation.language(incoming.address)):
                replies = [failed(reference)] if incoming.addressed else []
            await self._inbox.note_failed(job, dump_replies(replies), reference)
        await _Delivery(self, job, incoming.address, reference).run(replies)

    async def _handle(self, job: Job, incoming: Incoming) -> list[Reply]:
        """Let the conversation answer; its replies are in the row before anybody sees them."""
        if job.attempts > MOST_ATTEMPTS:
            raise TooOften(job.attempts)
        pages: list[Reply] = []

        async def note(uow: UnitOfWork, replies: list[Reply]) -> None:
            pages.extend(page for reply in replies for page in self._messenger.pages(reply))
            await self._inbox.note_handled(uow, job, dump_replies(pages))

        await self._conversation.handle(incoming, before_commit=note)
        return pages

    async def _give_back(self, job: Job, error: Exception) -> None:
        """Put a row back after an error that is not its own; else its lease runs out."""
        report(log, "update %s is put back: %s", job.update_id, describe(error))
        try:
            if job.attempts > MOST_ATTEMPTS and not is_database_trouble(error):
                await self._inbox.park(job, type(error).__name__, job.sent)
                return
            await self._inbox.postpone(job, wait_before(job.attempts), in_doubt=True)
        except Exception as worse:  # noqa: BLE001 - the lease is the last resort
            report(log, "update %s waits for its lease to end: %s", job.update_id, describe(worse))


class TooOften(Exception):
    """A message was taken again and again and nobody came to its end."""


class _Delivery:
    """Sending what is left of the replies of one row."""

    def __init__(self, worker: Worker, job: Job, address: Address, error: str | None) -> None:
        self._inbox = worker._inbox
        self._messenger = worker._messenger
        self._conversation = worker._conversation
        self._job = job
        self._address = address
        self._error = error
        self._sent = job.sent
        self._unsure = job.unsure
        self._in_doubt = job.interrupted and job.replies is not None
        self._followed = False

    async def run(self, replies: list[Reply]) -> None:
        """Send, note each that was accepted, and settle the row."""
        if self._sent >= len(replies):
            await self._settle(len(replies))
        while self._sent < len(replies):
            reply = replies[self._sent]
            try:
                ref = await self._send(reply)
            except ChatGone as gone:
                if not await self._follow(gone):
                    await self._inbox.answered(self._job, self._sent, "chat gone")
                    return
                continue
            except DeliveryError as error:
                await self._later(error)
                return
            self._sent += 1
            self._in_doubt, self._unsure = False, 0
            shown = (reply.token, ref) if ref is not None and reply.token is not None else None
            await self._settle(len(replies), shown)  # until then a kill repeats it

    async def _settle(self, replies: int, shown: Shown | None = None) -> None:
        if self._sent < replies:
            await self._inbox.note_sent(self._job, self._sent, shown)
        elif self._error is None:
            await self._inbox.answered(self._job, self._sent, shown=shown)
        else:
            if shown is not None:
                await self._inbox.note_sent(self._job, self._sent, shown)
            await self._inbox.park(self._job, self._error, self._sent)

    async def _send(self, reply: Reply) -> str | None:
        shown = reply
        if self._in_doubt:
            with speaking(await self._conversation.language(self._address)):
                shown = maybe_repeat(reply)
        try:
            return await self._messenger.send(self._address, shown)
        except Refused as refusal:
            await self._refused(refusal)
        except MaybeSent:
            self._unsure += 1
            if self._unsure < MOST_REPEATS:
                raise
            log.warning("update %s: its answer is taken to have arrived", self._job.update_id)
        except DeliveryError:
            raise
        except Exception as error:  # noqa: BLE001 - tried again it would only fail again
            await self._refused(Refused(describe(error)))
        return None

    async def _refused(self, refusal: Refused) -> None:
        """Our own mistake: tell the keeper in a message as plain as can be, and the operator."""
        self._error = new_reference()
        report(
            log,
            "the answer to update %s was refused, reference %s: %s",
            self._job.update_id,
            self._error,
            refusal,
        )
        with speaking(await self._conversation.language(self._address)):
            apology = undeliverable(self._error)
        try:
            await self._messenger.send(self._address, apology)
        except Refused:
            report(log, "even the apology %s was refused", self._error)

    async def _follow(self, gone: ChatGone) -> bool:
        """Tell the conversation that a chat is gone; True where it goes on under a new id."""
        await self._conversation.chat_gone(self._address, gone.moved_to)
        if gone.moved_to is None or self._followed:
            return False
        self._followed = True
        self._address = Address(self._address.messenger, gone.moved_to, self._address.thread)
        return True

    async def _later(self, error: DeliveryError) -> None:
        wait = wait_before(self._job.attempts)
        if isinstance(error, Throttled):
            wait = timedelta(seconds=error.retry_after)
        log.info("update %s is answered later: %s", self._job.update_id, type(error).__name__)
        in_doubt = self._in_doubt or isinstance(error, MaybeSent)
        await self._inbox.postpone(
            self._job, wait, sent=self._sent, in_doubt=in_doubt, unsure=self._unsure
        )
