"""What a keeper says that a tank is made for: plants, a reef, fish only."""

import sqlalchemy as sa
from alembic import op

revision = "0005"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    op.add_column("tanks", sa.Column("setup", sa.Text(), nullable=True))
