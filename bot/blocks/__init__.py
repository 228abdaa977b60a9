"""From what the record says now to what people see: one renderer for each kind of notice."""

from bot.blocks.renderer import Renderer

__all__ = ["Renderer"]
