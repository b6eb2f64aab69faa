"""Bought products: what so much of one raises, by its label or by before and after."""

import sqlalchemy as sa
from alembic import op

from bot.store.types import UtcDateTime

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    op.create_table(
        "products",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("chat_id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("name_key", sa.Text(), nullable=False),
        sa.Column("amount", sa.Double(), nullable=False),
        sa.Column("unit", sa.Text(), nullable=False),
        sa.Column("litres", sa.Double(), nullable=False),
        sa.Column("analyte", sa.Text(), nullable=False),
        sa.Column("rise", sa.Double(), nullable=False),
        sa.Column("rise_low", sa.Double(), nullable=False),
        sa.Column("rise_high", sa.Double(), nullable=False),
        sa.Column("learned", sa.Boolean(), nullable=False),
        sa.Column("kept_at", UtcDateTime(), nullable=False),
        sa.ForeignKeyConstraint(["chat_id"], ["chats.id"], name=op.f("fk_products_chat_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_products")),
        sa.UniqueConstraint(
            "chat_id", "name_key", "analyte", name=op.f("uq_products_chat_id_name_key_analyte")
        ),
    )
