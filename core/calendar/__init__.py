"""A team's calendar: read from iCalendar, looked up by day, and read back as iCalendar."""
