"""The first tables."""

import sqlalchemy as sa
from alembic import op

from bot.store.types import UtcDateTime

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Go one step on."""
    op.create_table(
        "chats",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("messenger", sa.Text(), nullable=False),
        sa.Column("external", sa.Text(), nullable=False),
        sa.Column("is_group", sa.Boolean(), nullable=False),
        sa.Column("zone", sa.Text(), nullable=False),
        sa.Column("zone_known", sa.Boolean(), nullable=False),
        sa.Column("fahrenheit", sa.Boolean(), nullable=False),
        sa.Column("us_gallons", sa.Boolean(), nullable=False),
        sa.Column("language", sa.Text(), nullable=False),
        sa.Column("quiet", sa.Text(), nullable=True),
        sa.Column("paused_until", UtcDateTime(), nullable=True),
        sa.Column("tank_id", sa.Integer(), nullable=True),
        sa.Column("created_at", UtcDateTime(), nullable=False),
        sa.Column("gone_at", UtcDateTime(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_chats")),
        sa.UniqueConstraint("messenger", "external", name=op.f("uq_chats_messenger_external")),
    )
    op.create_table(
        "inbox",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("messenger", sa.Text(), nullable=False),
        sa.Column("update_id", sa.Text(), nullable=False),
        sa.Column("chat", sa.Text(), nullable=False),
        sa.Column("raw", sa.Text(), nullable=False),
        sa.Column("received_at", UtcDateTime(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("owner", sa.Text(), nullable=True),
        sa.Column("lease_until", UtcDateTime(), nullable=True),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("replies", sa.Text(), nullable=True),
        sa.Column("sent", sa.Integer(), nullable=False),
        sa.Column("error", sa.Text(), nullable=True),
        sa.Column("answered_at", UtcDateTime(), nullable=True),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_inbox")),
        sa.UniqueConstraint("messenger", "update_id", name=op.f("uq_inbox_messenger_update_id")),
    )
    with op.batch_alter_table("inbox", schema=None) as batch_op:
        batch_op.create_index("ix_inbox_turn", ["state", "chat", "id"], unique=False)

    op.create_table(
        "entries",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("chat_id", sa.Integer(), nullable=False),
        sa.Column("update_id", sa.Text(), nullable=False),
        sa.Column("message_ref", sa.Text(), nullable=True),
        sa.Column("author_id", sa.Text(), nullable=False),
        sa.Column("author_name", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("at", UtcDateTime(), nullable=False),
        sa.Column("replaces", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["chat_id"], ["chats.id"], name=op.f("fk_entries_chat_id")),
        sa.ForeignKeyConstraint(["replaces"], ["entries.id"], name=op.f("fk_entries_replaces")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_entries")),
        sa.UniqueConstraint("chat_id", "update_id", name=op.f("uq_entries_chat_id_update_id")),
    )
    with op.batch_alter_table("entries", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_entries_message_ref"), ["message_ref"], unique=False)
        batch_op.create_index(batch_op.f("ix_entries_replaces"), ["replaces"], unique=False)

    op.create_table(
        "offers",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("chat_id", sa.Integer(), nullable=False),
        sa.Column("made_at", UtcDateTime(), nullable=False),
        sa.Column("message_ref", sa.Text(), nullable=True),
        sa.Column("entry_id", sa.Integer(), nullable=True),
        sa.Column("expects", sa.Text(), nullable=True),
        sa.Column("payload", sa.JSON(), nullable=False),
        sa.Column("used", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(["chat_id"], ["chats.id"], name=op.f("fk_offers_chat_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_offers")),
    )
    with op.batch_alter_table("offers", schema=None) as batch_op:
        batch_op.create_index("ix_offers_latest", ["chat_id", "id"], unique=False)

    op.create_table(
        "tanks",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("chat_id", sa.Integer(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("role", sa.Text(), nullable=False),
        sa.Column("name_key", sa.Text(), nullable=True),
        sa.Column("named", sa.Boolean(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("volume_l", sa.Double(), nullable=True),
        sa.Column("soft", sa.Boolean(), nullable=False),
        sa.Column("source_id", sa.Integer(), nullable=True),
        sa.Column("created_at", UtcDateTime(), nullable=False),
        sa.Column("deleted_at", UtcDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["chat_id"], ["chats.id"], name=op.f("fk_tanks_chat_id")),
        sa.ForeignKeyConstraint(["source_id"], ["tanks.id"], name=op.f("fk_tanks_source_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_tanks")),
        sa.UniqueConstraint(
            "chat_id", "role", "name_key", name=op.f("uq_tanks_chat_id_role_name_key")
        ),
    )
    op.create_table(
        "events",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.Column("tank_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("percent", sa.Double(), nullable=True),
        sa.Column("litres", sa.Double(), nullable=True),
        sa.Column("grams", sa.Double(), nullable=True),
        sa.Column("millilitres", sa.Double(), nullable=True),
        sa.Column("spoons", sa.Double(), nullable=True),
        sa.Column("count", sa.Integer(), nullable=True),
        sa.Column("substance", sa.Text(), nullable=True),
        sa.Column("species", sa.Text(), nullable=True),
        sa.Column("text", sa.Text(), nullable=True),
        sa.Column("happened_at", UtcDateTime(), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entries.id"], name=op.f("fk_events_entry_id")),
        sa.ForeignKeyConstraint(["tank_id"], ["tanks.id"], name=op.f("fk_events_tank_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_events")),
    )
    with op.batch_alter_table("events", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_events_entry_id"), ["entry_id"], unique=False)
        batch_op.create_index("ix_events_look_up", ["tank_id", "happened_at"], unique=False)

    op.create_table(
        "findings",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.Column("tank_id", sa.Integer(), nullable=False),
        sa.Column("rule", sa.Text(), nullable=False),
        sa.Column("severity", sa.Text(), nullable=False),
        sa.Column("facts", sa.JSON(), nullable=False),
        sa.Column("told_at", UtcDateTime(), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entries.id"], name=op.f("fk_findings_entry_id")),
        sa.ForeignKeyConstraint(["tank_id"], ["tanks.id"], name=op.f("fk_findings_tank_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_findings")),
    )
    with op.batch_alter_table("findings", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_findings_entry_id"), ["entry_id"], unique=False)
        batch_op.create_index("ix_findings_look_up", ["tank_id", "told_at"], unique=False)

    op.create_table(
        "kits",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("tank_id", sa.Integer(), nullable=False),
        sa.Column("analyte", sa.Text(), nullable=False),
        sa.Column("basis", sa.Text(), nullable=True),
        sa.Column("per_drop", sa.Double(), nullable=True),
        sa.ForeignKeyConstraint(["tank_id"], ["tanks.id"], name=op.f("fk_kits_tank_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_kits")),
        sa.UniqueConstraint("tank_id", "analyte", name=op.f("uq_kits_tank_id_analyte")),
    )
    op.create_table(
        "readings",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.Column("tank_id", sa.Integer(), nullable=False),
        sa.Column("analyte", sa.Text(), nullable=False),
        sa.Column("value", sa.Double(), nullable=True),
        sa.Column("low", sa.Double(), nullable=True),
        sa.Column("high", sa.Double(), nullable=True),
        sa.Column("qualifier", sa.Text(), nullable=False),
        sa.Column("unit", sa.Text(), nullable=True),
        sa.Column("canonical_low", sa.Double(), nullable=True),
        sa.Column("canonical_high", sa.Double(), nullable=True),
        sa.Column("canonical_unit", sa.Text(), nullable=True),
        sa.Column("basis", sa.Text(), nullable=True),
        sa.Column("measured_at", UtcDateTime(), nullable=False),
        sa.ForeignKeyConstraint(["entry_id"], ["entries.id"], name=op.f("fk_readings_entry_id")),
        sa.ForeignKeyConstraint(["tank_id"], ["tanks.id"], name=op.f("fk_readings_tank_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_readings")),
    )
    with op.batch_alter_table("readings", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_readings_entry_id"), ["entry_id"], unique=False)
        batch_op.create_index(
            "ix_readings_look_up", ["tank_id", "analyte", "measured_at"], unique=False
        )
        batch_op.create_index("ix_readings_newest", ["tank_id", "measured_at"], unique=False)

    op.create_table(
        "reminders",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("chat_id", sa.Integer(), nullable=False),
        sa.Column("thread", sa.Text(), nullable=True),
        sa.Column("tank_id", sa.Integer(), nullable=True),
        sa.Column("what", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("rule", sa.Text(), nullable=False),
        sa.Column("counts_from_done", sa.Boolean(), nullable=False),
        sa.Column("anchor", UtcDateTime(), nullable=False),
        sa.Column("next_due", UtcDateTime(), nullable=True),
        sa.Column("wake_at", UtcDateTime(), nullable=True),
        sa.Column("open_due", UtcDateTime(), nullable=True),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("owner", sa.Text(), nullable=True),
        sa.Column("lease_until", UtcDateTime(), nullable=True),
        sa.Column("not_before", UtcDateTime(), nullable=True),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("maybe_repeat", sa.Boolean(), nullable=False),
        sa.Column("message_ref", sa.Text(), nullable=True),
        sa.Column("created_at", UtcDateTime(), nullable=False),
        sa.Column("created_by", sa.Text(), nullable=False),
        sa.Column("ended_at", UtcDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["chat_id"], ["chats.id"], name=op.f("fk_reminders_chat_id")),
        sa.ForeignKeyConstraint(["tank_id"], ["tanks.id"], name=op.f("fk_reminders_tank_id")),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_reminders")),
    )
    with op.batch_alter_table("reminders", schema=None) as batch_op:
        batch_op.create_index("ix_reminders_chat", ["chat_id", "ended_at"], unique=False)
        batch_op.create_index("ix_reminders_wake", ["wake_at"], unique=False)
