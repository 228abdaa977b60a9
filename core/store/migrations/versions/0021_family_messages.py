"""What the staff wrote to families is kept as written."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0021"
down_revision = "0020"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "familymessage",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("origin", sa.String(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("written_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(
            ["line_id"], ["line.id"], name=op.f("fk_familymessage_line_id_line")
        ),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_familymessage_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_familymessage_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_familymessage_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_familymessage")),
        sa.UniqueConstraint(
            "workspace_id", "origin", name=op.f("uq_familymessage_workspace_id_origin")
        ),
    )
    for column in ("line_id", "person_id", "pitcher_id", "workspace_id"):
        op.create_index(op.f(f"ix_familymessage_{column}"), "familymessage", [column])


def downgrade() -> None:
    op.drop_table("familymessage")
