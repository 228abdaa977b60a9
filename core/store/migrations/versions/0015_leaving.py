"""A workspace can be stopped and deleted on a day; a closed account is remembered."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0015"
down_revision = "0014"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("workspace", sa.Column("opened_at", sqlmodel.UTCDateTime(), nullable=True))
    op.add_column("workspace", sa.Column("stopped_at", sqlmodel.UTCDateTime(), nullable=True))
    op.add_column("workspace", sa.Column("delete_on", sa.Date(), nullable=True))
    op.add_column("person", sa.Column("former_slack_id", sa.String(), nullable=True))


def downgrade() -> None:
    op.drop_column("person", "former_slack_id")
    op.drop_column("workspace", "delete_on")
    op.drop_column("workspace", "stopped_at")
    op.drop_column("workspace", "opened_at")
