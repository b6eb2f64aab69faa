"""How often the next reply of an inbox row was sent without an acknowledgement."""

import sqlalchemy as sa
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    op.add_column("inbox", sa.Column("unsure", sa.Integer(), server_default="0", nullable=False))
