"""The first tables."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "workspace",
        sa.Column("id", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("bot_user_id", sa.String(), nullable=False),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_workspace")),
    )
    op.create_table(
        "person",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("slack_id", sa.String(), nullable=True),
        sa.Column("name", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_person_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_person")),
        sa.UniqueConstraint(
            "workspace_id", "slack_id", name=op.f("uq_person_workspace_id_slack_id")
        ),
    )
    with op.batch_alter_table("person", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_person_workspace_id"), ["workspace_id"], unique=False)

    op.create_table(
        "team",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("time_zone", sa.String(), nullable=False),
        sa.Column("log_channel", sa.String(), nullable=False),
        sa.Column("staff_channel", sa.String(), nullable=False),
        sa.Column("rule_books", sa.JSON(), nullable=False),
        sa.Column("account_age", sa.Integer(), nullable=False),
        sa.Column("season_start", sa.Date(), nullable=True),
        sa.Column("rest_day", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_team_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_team")),
        sa.UniqueConstraint("workspace_id", "name", name=op.f("uq_team_workspace_id_name")),
    )
    with op.batch_alter_table("team", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_team_workspace_id"), ["workspace_id"], unique=False)

    op.create_table(
        "line",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("channel", sa.String(), nullable=False),
        sa.Column("ts", sa.String(), nullable=False),
        sa.Column("thread_ts", sa.String(), nullable=True),
        sa.Column("direct", sa.Boolean(), nullable=False),
        sa.Column("author_slack_id", sa.String(), nullable=False),
        sa.Column("author_id", sa.Integer(), nullable=True),
        sa.Column("team_id", sa.Integer(), nullable=True),
        sa.Column("text", sa.String(), nullable=False),
        sa.Column("posted_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("received_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("edited_ts", sa.String(), nullable=True),
        sa.Column("deleted_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("entries", sa.JSON(), nullable=False),
        sa.Column("questions", sa.JSON(), nullable=False),
        sa.Column("answers", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(
            ["author_id"], ["person.id"], name=op.f("fk_line_author_id_person")
        ),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_line_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_line_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_line")),
        sa.UniqueConstraint(
            "workspace_id", "channel", "ts", name=op.f("uq_line_workspace_id_channel_ts")
        ),
    )
    with op.batch_alter_table("line", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_line_author_id"), ["author_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_line_workspace_id"), ["workspace_id"], unique=False)

    op.create_table(
        "membership",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("role", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_membership_person_id_person")
        ),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_membership_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_membership_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_membership")),
        sa.UniqueConstraint(
            "team_id", "person_id", "role", name=op.f("uq_membership_team_id_person_id_role")
        ),
    )
    with op.batch_alter_table("membership", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_membership_person_id"), ["person_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_membership_team_id"), ["team_id"], unique=False)
        batch_op.create_index(
            batch_op.f("ix_membership_workspace_id"), ["workspace_id"], unique=False
        )

    op.create_table(
        "pitcher",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("person_id", sa.Integer(), nullable=True),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("also_called", sa.JSON(), nullable=False),
        sa.Column("birth_date", sa.Date(), nullable=False),
        sa.Column("throws", sa.String(), nullable=False),
        sa.Column("breaking_pitch", sa.String(), nullable=False),
        sa.Column("consent_on", sa.Date(), nullable=True),
        sa.Column("pitch_caller", sa.String(), nullable=False),
        sa.Column("grade", sa.Integer(), nullable=True),
        sa.Column("level", sa.String(), nullable=True),
        sa.Column("rule_books", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_pitcher_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_pitcher_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_pitcher")),
    )
    with op.batch_alter_table("pitcher", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_pitcher_person_id"), ["person_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_pitcher_workspace_id"), ["workspace_id"], unique=False)

    op.create_table(
        "season",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("starts_on", sa.Date(), nullable=False),
        sa.Column("ends_on", sa.Date(), nullable=False),
        sa.Column("rule_books", sa.JSON(), nullable=True),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_season_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_season_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_season")),
    )
    with op.batch_alter_table("season", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_season_team_id"), ["team_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_season_workspace_id"), ["workspace_id"], unique=False)

    op.create_table(
        "teamevent",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("name", sa.String(), nullable=False),
        sa.Column("starts_on", sa.Date(), nullable=False),
        sa.Column("ends_on", sa.Date(), nullable=False),
        sa.Column("rule_books", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_teamevent_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_teamevent_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_teamevent")),
    )
    with op.batch_alter_table("teamevent", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_teamevent_team_id"), ["team_id"], unique=False)
        batch_op.create_index(
            batch_op.f("ix_teamevent_workspace_id"), ["workspace_id"], unique=False
        )

    op.create_table(
        "auditentry",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("at", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("by_slack_id", sa.String(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=True),
        sa.Column("subject", sa.String(), nullable=False),
        sa.Column("subject_id", sa.Integer(), nullable=False),
        sa.Column("action", sa.String(), nullable=False),
        sa.Column("before", sa.JSON(), nullable=False),
        sa.Column("after", sa.JSON(), nullable=False),
        sa.ForeignKeyConstraint(["line_id"], ["line.id"], name=op.f("fk_auditentry_line_id_line")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_auditentry_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_auditentry")),
    )
    with op.batch_alter_table("auditentry", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_auditentry_line_id"), ["line_id"], unique=False)
        batch_op.create_index(
            batch_op.f("ix_auditentry_workspace_id"), ["workspace_id"], unique=False
        )

    op.create_table(
        "coachlimit",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("pitches", sa.Integer(), nullable=False),
        sa.Column("starts_on", sa.Date(), nullable=False),
        sa.Column("ends_on", sa.Date(), nullable=True),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("set_by", sa.Integer(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["line_id"], ["line.id"], name=op.f("fk_coachlimit_line_id_line")),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_coachlimit_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["set_by"], ["person.id"], name=op.f("fk_coachlimit_set_by_person")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_coachlimit_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_coachlimit")),
    )
    with op.batch_alter_table("coachlimit", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_coachlimit_line_id"), ["line_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_coachlimit_pitcher_id"), ["pitcher_id"], unique=False)
        batch_op.create_index(
            batch_op.f("ix_coachlimit_workspace_id"), ["workspace_id"], unique=False
        )

    op.create_table(
        "guardianlink",
        sa.Column("person_id", sa.Integer(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_guardianlink_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_guardianlink_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_guardianlink_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("person_id", "pitcher_id", name=op.f("pk_guardianlink")),
    )
    with op.batch_alter_table("guardianlink", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_guardianlink_workspace_id"), ["workspace_id"], unique=False
        )

    op.create_table(
        "outboxmessage",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("slot", sa.String(), nullable=False),
        sa.Column("kind", sa.String(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=True),
        sa.Column("team_id", sa.Integer(), nullable=True),
        sa.Column("person_id", sa.Integer(), nullable=True),
        sa.Column("destination", sa.String(), nullable=False),
        sa.Column("thread_ts", sa.String(), nullable=True),
        sa.Column("not_before", sqlmodel.UTCDateTime(), nullable=False),
        sa.Column("wanted", sa.Integer(), nullable=False),
        sa.Column("delivered", sa.Integer(), nullable=False),
        sa.Column("state", sa.String(), nullable=False),
        sa.Column("lease_until", sqlmodel.UTCDateTime(), nullable=True),
        sa.Column("attempts", sa.Integer(), nullable=False),
        sa.Column("channel", sa.String(), nullable=True),
        sa.Column("ts", sa.String(), nullable=True),
        sa.Column("shown", sa.String(), nullable=True),
        sa.Column("error", sa.String(), nullable=True),
        sa.ForeignKeyConstraint(
            ["line_id"], ["line.id"], name=op.f("fk_outboxmessage_line_id_line")
        ),
        sa.ForeignKeyConstraint(
            ["person_id"], ["person.id"], name=op.f("fk_outboxmessage_person_id_person")
        ),
        sa.ForeignKeyConstraint(
            ["team_id"], ["team.id"], name=op.f("fk_outboxmessage_team_id_team")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_outboxmessage_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_outboxmessage")),
        sa.UniqueConstraint(
            "workspace_id", "slot", name=op.f("uq_outboxmessage_workspace_id_slot")
        ),
    )
    with op.batch_alter_table("outboxmessage", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_outboxmessage_line_id"), ["line_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_outboxmessage_state"), ["state"], unique=False)
        batch_op.create_index(
            batch_op.f("ix_outboxmessage_workspace_id"), ["workspace_id"], unique=False
        )

    op.create_table(
        "outing",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("slot", sa.String(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=True),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("kind", sa.String(), nullable=True),
        sa.Column("pitches", sa.Integer(), nullable=True),
        sa.Column("breaking", sa.Integer(), nullable=True),
        sa.Column("curve", sa.Integer(), nullable=True),
        sa.Column("slider", sa.Integer(), nullable=True),
        sa.Column("changeup", sa.Integer(), nullable=True),
        sa.Column("fastball", sa.Integer(), nullable=True),
        sa.Column("strikes", sa.Integer(), nullable=True),
        sa.Column("breaking_strikes", sa.Integer(), nullable=True),
        sa.Column("outs", sa.Integer(), nullable=True),
        sa.Column("caught_outs", sa.Integer(), nullable=True),
        sa.Column("effort", sa.Integer(), nullable=True),
        sa.Column("last_batter_from", sa.Integer(), nullable=True),
        sa.Column("game", sa.Integer(), nullable=True),
        sa.Column("about", sa.Boolean(), nullable=False),
        sa.Column("waiting", sa.JSON(), nullable=False),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["line_id"], ["line.id"], name=op.f("fk_outing_line_id_line")),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_outing_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_outing_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_outing_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_outing")),
        sa.UniqueConstraint("line_id", "slot", name=op.f("uq_outing_line_id_slot")),
    )
    with op.batch_alter_table("outing", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_outing_line_id"), ["line_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_outing_on"), ["on"], unique=False)
        batch_op.create_index(batch_op.f("ix_outing_pitcher_id"), ["pitcher_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_outing_workspace_id"), ["workspace_id"], unique=False)

    op.create_table(
        "painreport",
        sa.Column("id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("line_id", sa.Integer(), nullable=False),
        sa.Column("slot", sa.String(), nullable=False),
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("on", sa.Date(), nullable=False),
        sa.Column("feeling", sa.String(), nullable=False),
        sa.Column("site", sa.String(), nullable=True),
        sa.Column("severity", sa.Integer(), nullable=True),
        sa.Column("side", sa.String(), nullable=True),
        sa.Column("when", sa.String(), nullable=True),
        sa.Column("withdrawn_at", sqlmodel.UTCDateTime(), nullable=True),
        sa.ForeignKeyConstraint(["line_id"], ["line.id"], name=op.f("fk_painreport_line_id_line")),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_painreport_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_painreport_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("id", name=op.f("pk_painreport")),
        sa.UniqueConstraint("line_id", "slot", name=op.f("uq_painreport_line_id_slot")),
    )
    with op.batch_alter_table("painreport", schema=None) as batch_op:
        batch_op.create_index(batch_op.f("ix_painreport_line_id"), ["line_id"], unique=False)
        batch_op.create_index(batch_op.f("ix_painreport_pitcher_id"), ["pitcher_id"], unique=False)
        batch_op.create_index(
            batch_op.f("ix_painreport_workspace_id"), ["workspace_id"], unique=False
        )

    op.create_table(
        "pitcherteam",
        sa.Column("pitcher_id", sa.Integer(), nullable=False),
        sa.Column("team_id", sa.Integer(), nullable=False),
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.ForeignKeyConstraint(
            ["pitcher_id"], ["pitcher.id"], name=op.f("fk_pitcherteam_pitcher_id_pitcher")
        ),
        sa.ForeignKeyConstraint(["team_id"], ["team.id"], name=op.f("fk_pitcherteam_team_id_team")),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_pitcherteam_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("pitcher_id", "team_id", name=op.f("pk_pitcherteam")),
    )
    with op.batch_alter_table("pitcherteam", schema=None) as batch_op:
        batch_op.create_index(
            batch_op.f("ix_pitcherteam_workspace_id"), ["workspace_id"], unique=False
        )


def downgrade() -> None:
    with op.batch_alter_table("pitcherteam", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_pitcherteam_workspace_id"))

    op.drop_table("pitcherteam")
    with op.batch_alter_table("painreport", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_painreport_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_painreport_pitcher_id"))
        batch_op.drop_index(batch_op.f("ix_painreport_line_id"))

    op.drop_table("painreport")
    with op.batch_alter_table("outing", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_outing_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_outing_pitcher_id"))
        batch_op.drop_index(batch_op.f("ix_outing_on"))
        batch_op.drop_index(batch_op.f("ix_outing_line_id"))

    op.drop_table("outing")
    with op.batch_alter_table("outboxmessage", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_outboxmessage_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_outboxmessage_state"))
        batch_op.drop_index(batch_op.f("ix_outboxmessage_line_id"))

    op.drop_table("outboxmessage")
    with op.batch_alter_table("guardianlink", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_guardianlink_workspace_id"))

    op.drop_table("guardianlink")
    with op.batch_alter_table("coachlimit", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_coachlimit_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_coachlimit_pitcher_id"))
        batch_op.drop_index(batch_op.f("ix_coachlimit_line_id"))

    op.drop_table("coachlimit")
    with op.batch_alter_table("auditentry", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_auditentry_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_auditentry_line_id"))

    op.drop_table("auditentry")
    with op.batch_alter_table("teamevent", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_teamevent_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_teamevent_team_id"))

    op.drop_table("teamevent")
    with op.batch_alter_table("season", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_season_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_season_team_id"))

    op.drop_table("season")
    with op.batch_alter_table("pitcher", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_pitcher_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_pitcher_person_id"))

    op.drop_table("pitcher")
    with op.batch_alter_table("membership", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_membership_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_membership_team_id"))
        batch_op.drop_index(batch_op.f("ix_membership_person_id"))

    op.drop_table("membership")
    with op.batch_alter_table("line", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_line_workspace_id"))
        batch_op.drop_index(batch_op.f("ix_line_author_id"))

    op.drop_table("line")
    with op.batch_alter_table("team", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_team_workspace_id"))

    op.drop_table("team")
    with op.batch_alter_table("person", schema=None) as batch_op:
        batch_op.drop_index(batch_op.f("ix_person_workspace_id"))

    op.drop_table("person")
    op.drop_table("workspace")
