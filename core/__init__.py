"""The trade: what pitchers log and what follows from it.

No Slack, no network and no wall clock in here: time comes in as an argument.
"""
