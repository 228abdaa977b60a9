"""A team's calendar: where it comes from, its games and practices, and what was called off."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0016"
down_revision = "0015"
branch_labels = None
depends_on = None


def _refers(table: str, column: str, to: str) -> sa.ForeignKeyConstraint:
    return sa.ForeignKeyConstraint([column], [f"{to}.id"], name=op.f(f"fk_{table}_{column}_{to}"))


def upgrade() -> None:
    op.create_table(
        "calendarsource",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("address", sa.String(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=True),
        sa.Column("next_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("lease_until", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("read_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("problem", sa.String(), nullable=True),
        sa.Column("games", sa.Integer(), nullable=False),
        sa.Column("practices", sa.Integer(), nullable=False),
        sa.Column("left_out", sa.Integer(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        _refers("calendarsource", "line_id", "line"),
        _refers("calendarsource", "team_id", "team"),
        _refers("calendarsource", "workspace_id", "workspace"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_calendarsource")),
    )
    op.create_table(
        "calendarentry",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("at", sa.Time(), nullable=True),
        sa.Column("until", sa.Time(), nullable=True),
        sa.Column("title", sa.String(), nullable=False),
        sa.Column("uid", sa.String(), nullable=False),
        sa.Column("recurrence", sa.String(), nullable=False),
        sa.Column("source_id", sa.Integer(), nullable=True),
        sa.Column("line_id", sa.Integer(), nullable=True),
        sa.Column("sequence", sa.Integer(), nullable=False),
        sa.Column("changed_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        _refers("calendarentry", "line_id", "line"),
        _refers("calendarentry", "source_id", "calendarsource"),
        _refers("calendarentry", "team_id", "team"),
        _refers("calendarentry", "workspace_id", "workspace"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_calendarentry")),
        sa.UniqueConstraint(
            "team_id", "uid", "recurrence", name=op.f("uq_calendarentry_team_id_uid_recurrence")
        ),
    )
    op.create_table(
        "calledoff",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("entry_id", sa.Integer(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        _refers("calledoff", "entry_id", "calendarentry"),
        _refers("calledoff", "line_id", "line"),
        _refers("calledoff", "workspace_id", "workspace"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_calledoff")),
    )
    for table, columns in _INDEXED.items():
        for column in columns:
            op.create_index(op.f(f"ix_{table}_{column}"), table, [column])


_INDEXED = {
    "calendarsource": ("line_id", "team_id", "workspace_id"),
    "calendarentry": ("line_id", "on", "source_id", "team_id", "workspace_id"),
    "calledoff": ("entry_id", "line_id", "workspace_id"),
}


def downgrade() -> None:
    op.drop_table("calledoff")
    op.drop_table("calendarentry")
    op.drop_table("calendarsource")
