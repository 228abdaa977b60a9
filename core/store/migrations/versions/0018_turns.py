"""Whose turn it is in a conversation is found without looking at every message."""

from alembic import op

revision = "0018"
down_revision = "0017"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_index("ix_outboxmessage_destination_state", "outboxmessage", ["destination", "state"])


def downgrade() -> None:
    op.drop_index("ix_outboxmessage_destination_state", "outboxmessage")
