"""Thresholds that the staff set, the alerts that they raise, and who has seen them."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0004"
down_revision = "0003"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "thresholdsetting",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=True),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("value", sa.Integer(), nullable=True),
        sa.Column("is_default", sa.Boolean(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("set_by", sa.Integer(), nullable=False),
        sa.Column("set_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        *_keys("thresholdsetting", "workspace", "team", "pitcher", "line"),
        sa.ForeignKeyConstraint(
            ["set_by"], ["person.id"], name=op.f("fk_thresholdsetting_set_by_person")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_thresholdsetting")),
    )
    op.create_table(
        "alert",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("key", sa.String(), nullable=False),
        sa.Column("episode", sa.String(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("figures", sa.JSON(), nullable=False),
        sa.Column("outings", sa.JSON(), nullable=False),
        sa.Column("raised_on", sa.Date(), nullable=False),
        sa.Column("raised_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("changed_at", sqlmodel.UTCDateTime(), nullable=False),
        *_keys("alert", "workspace", "team", "pitcher"),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_alert")),
        sa.UniqueConstraint(
            "team_id",
            "pitcher_id",
            "key",
            "episode",
            name=op.f("uq_alert_team_id_pitcher_id_key_episode"),
        ),
    )
    op.create_table(
        "alertseen",
        sa.Column("alert_id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("at", sqlmodel.UTCDateTime(), nullable=False),
        *_keys("alertseen", "alert", "person"),
        sa.PrimaryKeyConstraint("alert_id", "person_id", name=op.f("pk_alertseen")),
    )
    for table, columns in (
        ("thresholdsetting", ("line_id", "pitcher_id", "team_id", "workspace_id")),
        ("alert", ("pitcher_id", "team_id", "workspace_id")),
    ):
        with op.batch_alter_table(table) as batch_op:
            for column in columns:
                batch_op.create_index(op.f(f"ix_{table}_{column}"), [column])


def _keys(table: str, *parents: str) -> list[sa.ForeignKeyConstraint]:
    return [
        sa.ForeignKeyConstraint(
            [f"{parent}_id"], [f"{parent}.id"], name=op.f(f"fk_{table}_{parent}_id_{parent}")
        )
        for parent in parents
    ]


def downgrade() -> None:
    for table in ("alertseen", "alert", "thresholdsetting"):
        op.drop_table(table)
