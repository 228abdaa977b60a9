"""An arm may be on hold until an adult records a clinician's clearance."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "hold",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("reason", sa.String(), nullable=False),
        sa.Column("raised_at", sqlmodel.UTCDateTime(), nullable=False),
        *_keys("hold", "line", "pitcher", "workspace"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_hold")),
        sa.UniqueConstraint("line_id", "pitcher_id", name=op.f("uq_hold_line_id_pitcher_id")),
    )
    op.create_table(
        "clearance",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("clinician", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("limits", sa.JSON(), nullable=False),
        sa.Column("recorded_by", sa.Integer(), nullable=False),
        sa.Column("said_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        *_keys("clearance", "line", "pitcher", "workspace"),
        sa.ForeignKeyConstraint(
            ["recorded_by"], ["person.id"], name=op.f("fk_clearance_recorded_by_person")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_clearance")),
    )
    for table in ("hold", "clearance"):
        with op.batch_alter_table(table) as batch_op:
            for column in ("line_id", "pitcher_id", "workspace_id"):
                batch_op.create_index(op.f(f"ix_{table}_{column}"), [column])


def _keys(table: str, *parents: str) -> list[sa.ForeignKeyConstraint]:
    return [
        sa.ForeignKeyConstraint(
            [f"{parent}_id"], [f"{parent}.id"], name=op.f(f"fk_{table}_{parent}_id_{parent}")
        )
        for parent in parents
    ]


def downgrade() -> None:
    op.drop_table("clearance")
    op.drop_table("hold")
