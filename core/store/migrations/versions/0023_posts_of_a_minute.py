"""How many messages were posted within the last minute is found without looking at all."""

from alembic import op

revision = "0023"
down_revision = "0022"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index("ix_outboxmessage_workspace_id_ts", "outboxmessage", ["workspace_id", "ts"])


def downgrade() -> None:
    op.drop_index("ix_outboxmessage_workspace_id_ts", "outboxmessage")
