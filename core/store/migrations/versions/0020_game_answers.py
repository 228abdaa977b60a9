"""Somebody's word that nobody else pitched on a game day."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0020"
down_revision = "0019"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "gameanswer",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("said_by", sa.Integer(), nullable=False),
        sa.Column("said_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(
            ["said_by"], ["person.id"], name=op.f("fk_gameanswer_said_by_person")
        ),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_gameanswer_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_gameanswer_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_gameanswer")),
        sa.UniqueConstraint("team_id", "on", name=op.f("uq_gameanswer_team_id_on")),
    )
    for column in ("team_id", "workspace_id"):
        op.create_index(op.f(f"ix_gameanswer_{column}"), "gameanswer", [column])


def downgrade() -> None:
    op.drop_table("gameanswer")
