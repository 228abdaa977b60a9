"""What waits for an answer is found without looking at every line of the season."""

from alembic import op

revision = "0014"
down_revision = "0013"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index("ix_line_team_id_state", "line", ["team_id", "state"], unique=False)


def downgrade() -> None:
    op.drop_index("ix_line_team_id_state", "line")
