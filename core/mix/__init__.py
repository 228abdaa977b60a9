"""Breaking-ball share over windows: counts are facts, strike rates are estimates."""

from core.mix.interval import wilson
from core.mix.share import Game, Mix, Window, mix_of, windows

__all__ = ["Game", "Mix", "Window", "mix_of", "wilson", "windows"]
