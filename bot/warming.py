"""Makes a process ready before it serves: its tables are read, its memory is settled."""

import gc
from datetime import datetime

from sqlalchemy.orm import configure_mappers

from core.reading import read


def warm() -> None:
    """Do now what the first line would wait for, and keep what stands from being walked again.

    The collector walks all that is alive again and again, a tenth of a second each time, and
    every line waits for it. What lives as long as the process need not be looked at.
    """
    configure_mappers()
    read(
        "62p 11cb 4.1ip no pain",
        datetime.fromisoformat("2000-01-01T18:00"),
        "pitcher",
        roster=["A B"],
    )
    gc.collect()
    gc.freeze()
