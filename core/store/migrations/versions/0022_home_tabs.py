"""Who has opened the Home tab, and which page of it stands there."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0022"
down_revision = "0021"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "hometab",
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("slack_id", sa.String(), nullable=False),
        sa.Column("page", sa.Integer(), nullable=False),
        sa.Column("opened_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_hometab_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("workspace_id", "slack_id", name=op.f("pk_hometab")),
    )


def downgrade() -> None:
    op.drop_table("hometab")
