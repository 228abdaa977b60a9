"""The app is installed by OAuth: the bot's token, and installs that somebody began."""

import sqlalchemy as sa
import sqlmodel
from alembic import op

revision = "0029"
down_revision = "0028"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.create_table(
        "bottoken",
        sa.Column("workspace_id", sa.String(), nullable=False),
        sa.Column("token", sa.String(), nullable=False),
        sa.Column("bot_id", sa.String(), nullable=False),
        sa.Column("bot_user_id", sa.String(), nullable=False),
        sa.Column("app_id", sa.String(), nullable=False),
        sa.Column("scopes", sa.String(), nullable=False),
        sa.Column("installed_by", sa.String(), nullable=False),
        sa.Column("installed_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.ForeignKeyConstraint(
            ["workspace_id"], ["workspace.id"], name=op.f("fk_bottoken_workspace_id_workspace")
        ),
        sa.PrimaryKeyConstraint("workspace_id", name=op.f("pk_bottoken")),
    )
    op.create_table(
        "installstate",
        sa.Column("digest", sa.String(), nullable=False),
        sa.Column("expires_at", sqlmodel.UTCDateTime(), nullable=False),
        sa.PrimaryKeyConstraint("digest", name=op.f("pk_installstate")),
    )
    op.create_index("ix_installstate_expires_at", "installstate", ["expires_at"])


def downgrade() -> None:
    op.drop_table("installstate")
    op.drop_table("bottoken")
