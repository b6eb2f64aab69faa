"""What a keeper tells of a tank for good: its first day, injected CO2, until when a kit is good."""

import sqlalchemy as sa
from alembic import op

from bot.store.types import UtcDateTime

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    op.add_column(
        "tanks", sa.Column("co2", sa.Boolean(), server_default=sa.false(), nullable=False)
    )
    op.add_column("tanks", sa.Column("set_up_at", UtcDateTime(), nullable=True))
    op.add_column("kits", sa.Column("good_until", sa.Date(), nullable=True))
