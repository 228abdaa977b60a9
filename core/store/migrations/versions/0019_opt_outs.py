"""Who does not want to be written to."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0019"
down_revision = "0018"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "optout",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=True),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("since", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("ended_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("ended_by", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(["ended_by"], ["line.id"], name=op.f("fk_optout_ended_by_line")),
        sa.ForeignKeyConstraint(["line_id"], ["line.id"], name=op.f("fk_optout_line_id_line")),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_optout_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_optout_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_optout_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_optout")),
    )
    for column in ("line_id", "person_id", "pitcher_id", "workspace_id"):
        op.create_index(op.f(f"ix_optout_{column}"), "optout", [column])


def downgrade() -> None:
    op.drop_table("optout")
