"""${message}."""

import sqlalchemy as sa
from alembic import op

from bot.store.types import UtcDateTime

revision = ${repr(up_revision)}
down_revision = ${repr(down_revision)}
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    ${upgrades if upgrades else "pass"}
