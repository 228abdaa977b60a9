"""Schedules and spin plans as the staff set them, and who wants a word on the last rest day."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0025"
down_revision = "0024"
branch_labels = None
depends_on = None


def _line_row(table: str, *columns: sa.Column[object], refers: dict[str, str]) -> None:
    keys = {"workspace_id": "workspace", "line_id": "line", **refers}
    op.create_table(
        table,
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        *columns,
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("set_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        *(
            sa.ForeignKeyConstraint([own], [f"{to}.id"], name=op.f(f"fk_{table}_{own}_{to}"))
            for own, to in keys.items()
        ),
        sa.PrimaryKeyConstraint("id", name=op.f(f"pk_{table}")),
    )
    for column in keys.keys() - {"set_by"}:
        op.create_index(op.f(f"ix_{table}_{column}"), table, [column])


def upgrade() -> None:
    op.add_column("teamschedule", sa.Column("before_practice", sa.Integer(), nullable=True))
    op.execute("UPDATE teamschedule SET before_practice = 30 WHERE kind = 'spin reminder'")
    _line_row(
        "schedulesetting",
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("weekday", sa.Integer(), nullable=True),
        sa.Column("at", sa.Time(), nullable=True),
        sa.Column("is_on", sa.Boolean(), nullable=True),
        sa.Column("before_practice", sa.Integer(), nullable=True),
        sa.Column("cue", sa.String(), nullable=True),
        sa.Column("drops_cue", sa.Boolean(), nullable=False),
        sa.Column("is_default", sa.Boolean(), nullable=False),
        sa.Column("set_by", sa.Integer(), nullable=False),
        refers={"team_id": "team", "set_by": "person"},
    )
    _line_row(
        "spinplan",
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=True),
        sa.Column("sessions", sa.Integer(), nullable=True),
        sa.Column("reps", sa.Integer(), nullable=True),
        sa.Column("is_default", sa.Boolean(), nullable=False),
        sa.Column("set_by", sa.Integer(), nullable=False),
        refers={"team_id": "team", "pitcher_id": "pitcher", "set_by": "person"},
    )
    _line_row(
        "lastdaywish",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("wants", sa.Boolean(), nullable=False),
        refers={"person_id": "person"},
    )


def downgrade() -> None:
    op.drop_table("lastdaywish")
    op.drop_table("spinplan")
    op.drop_table("schedulesetting")
    op.drop_column("teamschedule", "before_practice")
