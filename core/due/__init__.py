"""What falls due by the clock: schedules in the team's zone, and what each message is about."""
