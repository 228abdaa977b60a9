"""Alembic's entry: the schema is the models' metadata, the connection is the caller's."""

from alembic import context
from sqlalchemy import Connection

import core.model

connection: Connection = context.config.attributes["connection"]
context.configure(
    connection=connection,
    target_metadata=core.model.Stored.metadata,
    render_as_batch=True,
    compare_type=True,
)
context.run_migrations()
