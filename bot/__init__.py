"""The workspace: Slack on one side, the domain in `core` on the other."""
