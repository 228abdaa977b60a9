"""Whom the bot may write to: a guardian's "do not write to my child", "no more reminders"."""
