"""A workspace keeps the ids of its own rule books, so that a line may name one."""

import sqlalchemy as sa
from alembic import op

revision = "0012"
down_revision = "0011"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("workspace", sa.Column("own_books", sa.JSON(), nullable=True))


def downgrade() -> None:
    op.drop_column("workspace", "own_books")
