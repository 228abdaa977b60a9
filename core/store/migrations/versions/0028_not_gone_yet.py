"""When a family last said that a reported arm is not well yet."""

import sqlalchemy as sa
from alembic import op

revision = "0028"
down_revision = "0027"
branch_labels = None
depends_on = None


def upgrade() -> None:
    op.add_column("painreport", sa.Column("not_gone_on", sa.Date(), nullable=True))


def downgrade() -> None:
    op.drop_column("painreport", "not_gone_on")
