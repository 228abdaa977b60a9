"""Events of consent, matters that wait for somebody's word, and work that is put off."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0017"
down_revision = "0016"
branch_labels = None
depends_on = None

#: Consent that is on file already came with a team file.
_FROM_FILES = """
INSERT INTO consentevent (workspace_id, pitcher_id, act, way, "on", at, said_by)
SELECT workspace_id, id, 'agreed', 'file', consent_on, CURRENT_TIMESTAMP, ''
FROM pitcher WHERE consent_on IS NOT NULL
"""


def upgrade() -> None:
    op.create_table(
        "errand",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("data", sa.JSON(), nullable=False),
        sa.Column("not_before", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("done_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("error", sa.String(), nullable=True),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_errand_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_errand")),
    )
    op.create_index(op.f("ix_errand_done_at"), "errand", ["done_at"])
    op.create_index(op.f("ix_errand_workspace_id"), "errand", ["workspace_id"])
    op.create_table(
        "consentevent",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("act", sa.String(), nullable=False),
        sa.Column("way", sa.String(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=True),
        sa.Column("said_by", sa.String(), nullable=False),
        sa.Column("recorded_by", sa.Integer(), nullable=True),
        sa.Column("line_id", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["line_id"], ["line.id"], name=op.f("fk_consentevent_line_id_line")
        ),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_consentevent_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_consentevent_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["recorded_by"], ["person.id"], name=op.f("fk_consentevent_recorded_by_person")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_consentevent_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_consentevent")),
    )
    op.create_index(op.f("ix_consentevent_line_id"), "consentevent", ["line_id"])
    op.create_index(op.f("ix_consentevent_pitcher_id"), "consentevent", ["pitcher_id"])
    op.create_index(op.f("ix_consentevent_workspace_id"), "consentevent", ["workspace_id"])
    op.create_table(
        "matter",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=True),
        sa.Column("pitcher_id", sa.Integer(), nullable=True),
        sa.Column("data", sa.JSON(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("opened_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("settled_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("settled_by", sa.Integer(), nullable=True),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_matter_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_matter_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["settled_by"], ["person.id"], name=op.f("fk_matter_settled_by_person")
        ),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_matter_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_matter_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_matter")),
    )
    op.create_index(op.f("ix_matter_kind"), "matter", ["kind"])
    op.create_index(op.f("ix_matter_person_id"), "matter", ["person_id"])
    op.create_index(op.f("ix_matter_pitcher_id"), "matter", ["pitcher_id"])
    op.create_index(op.f("ix_matter_team_id"), "matter", ["team_id"])
    op.create_index(op.f("ix_matter_workspace_id"), "matter", ["workspace_id"])
    with op.batch_alter_table("outing") as outing:
        outing.add_column(
            sa.Column("kept_back", sa.Boolean(), nullable=False, server_default=sa.false())
        )
    with op.batch_alter_table("outing") as outing:
        outing.alter_column("kept_back", server_default=None)
    op.execute(_FROM_FILES)


def downgrade() -> None:
    op.drop_column("outing", "kept_back")
    for table in ("matter", "errand", "consentevent"):
        op.drop_table(table)
