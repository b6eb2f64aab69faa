"""When a pause of reminders begins that is set before it does."""

import sqlalchemy as sa
from alembic import op

from bot.store.types import UtcDateTime

revision = "0007"
down_revision = "0006"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    op.add_column("chats", sa.Column("paused_from", UtcDateTime(), nullable=True))
