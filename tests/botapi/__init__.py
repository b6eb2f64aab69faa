"""A local Bot API server, strict like the real one, for tests from outside."""

from tests.botapi.model import Call, Fault
from tests.botapi.server import TOKEN, BotApi

__all__ = ["TOKEN", "BotApi", "Call", "Fault"]
