"""Sources that are mixed of others, and what is measured of one by season or once it has stood."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    op.add_column("tanks", sa.Column("facet_of", sa.Integer(), nullable=True))
    op.add_column("tanks", sa.Column("facet", sa.Text(), nullable=True))
    op.add_column("tanks", sa.Column("blend", sa.JSON(none_as_null=True), nullable=True))
