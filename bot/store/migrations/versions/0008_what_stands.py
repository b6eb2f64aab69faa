"""Which replies keep what every message is held against, found without reading all of them."""

import sqlalchemy as sa
from alembic import op

revision = "0008"
down_revision = "0007"
branch_labels = None
depends_on = None

KEYS = ("called", "eased", "nameless", "asked_of", "resized")


def upgrade() -> None:
    """Go one step on."""
    op.add_column(
        "offers", sa.Column("stands", sa.Boolean(), nullable=False, server_default=sa.false())
    )
    offers = sa.table("offers", sa.column("payload", sa.JSON), sa.column("stands", sa.Boolean))
    payload = sa.cast(offers.c.payload, sa.Text)
    keeps = sa.or_(*(payload.like(f'%"{key}"%') for key in KEYS))
    op.execute(offers.update().where(keeps).values(stands=sa.true()))
    op.create_index(
        "ix_offers_stands",
        "offers",
        ["chat_id", "id"],
        sqlite_where=sa.text("stands"),
        postgresql_where=sa.text("stands"),
    )
