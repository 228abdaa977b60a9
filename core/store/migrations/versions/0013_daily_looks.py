"""A team's record is looked at once a local day."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0013"
down_revision = "0012"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "dailylook",
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("at", sqlmodel.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_dailylook_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_dailylook_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("team_id", "on", name=op.f("pk_dailylook")),
    )
    op.create_index(op.f("ix_dailylook_workspace_id"), "dailylook", ["workspace_id"])


def downgrade() -> None:
    op.drop_table("dailylook")
