"""Up to which day a team's Home tabs were brought; the audit is found by what it is about."""

import sqlalchemy as sa
from alembic import op

revision = "0027"
down_revision = "0026"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("team", sa.Column("homes_on", sa.Date(), nullable=True))
    op.create_index("ix_auditentry_workspace_id_subject", "auditentry", ["workspace_id", "subject"])


def downgrade() -> None:
    op.drop_index("ix_auditentry_workspace_id_subject", "auditentry")
    op.drop_column("team", "homes_on")
