"""A team's own quiet hours, longer than the usual ones or the same."""

import sqlalchemy as sa
from alembic import op

revision = "0030"
down_revision = "0029"
branch_labels = None
depends_on = None


def upgrade() -> None:
    for name, usual in (("quiet_from", 20), ("quiet_to", 8)):
        op.add_column("team", sa.Column(name, sa.Integer(), nullable=True))
        op.execute(f"UPDATE team SET {name} = {usual}")
        with op.batch_alter_table("team") as table:
            table.alter_column(name, existing_type=sa.Integer(), nullable=False)


def downgrade() -> None:
    op.drop_column("team", "quiet_to")
    op.drop_column("team", "quiet_from")
