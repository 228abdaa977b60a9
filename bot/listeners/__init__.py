"""What the bot listens to: one file per surface."""
