"""An outing may be a part of an earlier one, or the same one logged twice."""

import sqlalchemy as sa
from alembic import op

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    with op.batch_alter_table("outing") as batch_op:
        batch_op.add_column(sa.Column("joins", sa.Integer(), nullable=True))
        batch_op.add_column(sa.Column("joined_as", sa.String(), nullable=True))
        batch_op.create_foreign_key(op.f("fk_outing_joins_outing"), "outing", ["joins"], ["id"])
        batch_op.create_index(op.f("ix_outing_joins"), ["joins"])


def downgrade() -> None:
    with op.batch_alter_table("outing") as batch_op:
        batch_op.drop_index(op.f("ix_outing_joins"))
        batch_op.drop_constraint(op.f("fk_outing_joins_outing"), type_="foreignkey")
        batch_op.drop_column("joined_as")
        batch_op.drop_column("joins")
