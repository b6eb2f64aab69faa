"""Run by Alembic: migrations on the connection, and in the transaction, that we hand it."""

from alembic import context

from bot.store.models import Base

context.configure(
    connection=context.config.attributes["connection"],
    target_metadata=Base.metadata,
    render_as_batch=True,
    user_module_prefix="",
)
context.run_migrations()
