"""A stand-in workspace on this machine, so that the whole bot runs with no Slack account."""
