"""What the coach allows on a rest day, as set in Slack."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0026"
down_revision = "0025"
branch_labels = None
depends_on = None

_KEYS = {"workspace_id": "workspace", "team_id": "team", "line_id": "line", "set_by": "person"}


def upgrade() -> None:
    op.create_table(
        "restdayword",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("activity", sa.String(), nullable=False),
        sa.Column("words", sa.String(), nullable=True),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("set_by", sa.Integer(), nullable=False),
        sa.Column("set_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        *(
            sa.ForeignKeyConstraint([own], [f"{to}.id"], name=op.f(f"fk_restdayword_{own}_{to}"))
            for own, to in _KEYS.items()
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_restdayword")),
    )
    for column in ("line_id", "team_id", "workspace_id"):
        op.create_index(op.f(f"ix_restdayword_{column}"), "restdayword", [column])


def downgrade() -> None:
    op.drop_table("restdayword")
