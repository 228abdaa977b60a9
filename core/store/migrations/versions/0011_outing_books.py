"""A rule book may be named for one outing."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0011"
down_revision = "0010"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "outingbook",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("rule_book", sa.String(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("set_by", sa.Integer(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["line_id"], ["line.id"], name=op.f("fk_outingbook_line_id_line")),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_outingbook_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["set_by"], ["person.id"], name=op.f("fk_outingbook_set_by_person")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_outingbook_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_outingbook")),
    )
    for column in ("line_id", "pitcher_id", "workspace_id"):
        op.create_index(op.f(f"ix_outingbook_{column}"), "outingbook", [column])


def downgrade() -> None:
    op.drop_table("outingbook")
