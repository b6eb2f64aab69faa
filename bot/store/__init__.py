"""Memory: SQLAlchemy models, the unit of work, queries by purpose, Alembic migrations."""
