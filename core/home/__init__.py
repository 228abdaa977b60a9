"""What a person's Home tab tells: what is theirs, from the record as it stands."""

from core.home.board import Board
from core.home.card import ArmCard
from core.home.home import Home, home_of

__all__ = ["ArmCard", "Board", "Home", "home_of"]
