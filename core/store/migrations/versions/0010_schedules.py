"""When a team hears of what, and which reminders were owed to whom."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0010"
down_revision = "0004"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "teamschedule",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("weekday", sa.Integer(), nullable=False),
        sa.Column("at", sa.Time(), nullable=False),
        sa.Column("is_on", sa.Boolean(), nullable=False),
        sa.Column("since", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("cues", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(
            ["team_id"], ["team.id"], name=op.f("fk_teamschedule_team_id_team")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_teamschedule_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_teamschedule")),
        sa.UniqueConstraint("team_id", "kind", name=op.f("uq_teamschedule_team_id_kind")),
    )
    op.create_index(op.f("ix_teamschedule_team_id"), "teamschedule", ["team_id"])
    op.create_index(op.f("ix_teamschedule_workspace_id"), "teamschedule", ["workspace_id"])
    op.create_table(
        "reminder",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("period", sa.String(), nullable=False),
        sa.Column("slot", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_reminder_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_reminder_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_reminder_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_reminder")),
        sa.UniqueConstraint(
            "kind",
            "person_id",
            "pitcher_id",
            "period",
            name=op.f("uq_reminder_kind_person_id_pitcher_id_period"),
        ),
    )
    for column in ("pitcher_id", "slot", "workspace_id"):
        op.create_index(op.f(f"ix_reminder_{column}"), "reminder", [column])


def downgrade() -> None:
    op.drop_table("reminder")
    op.drop_table("teamschedule")
