"""A short message in, what it means out; see `core.message.model` for the values."""

from core.message.model import Context, Parsed
from core.message.parser import parse

__all__ = ["Context", "Parsed", "parse"]
