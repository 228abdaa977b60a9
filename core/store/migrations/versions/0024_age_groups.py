"""A team says which age group it is."""

import sqlalchemy as sa
from alembic import op

revision = "0024"
down_revision = "0023"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("team") as team:
        team.add_column(sa.Column("age_group", sa.String(), nullable=False, server_default=""))
    with op.batch_alter_table("team") as team:
        team.alter_column("age_group", server_default=None)


def downgrade() -> None:
    op.drop_column("team", "age_group")
