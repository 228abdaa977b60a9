"""What Slack's own pages and menus say of the app."""

NAME = "Spinkeeper"
DESCRIPTION = "Keeps a youth pitching log: counts, breaking-ball share and days of rest."
LONG_DESCRIPTION = (
    "Type one short line after a game or a practice, such as “62p 11cb 4.1ip vs Summit no pain”. "
    "Spinkeeper keeps the pitching log, works out the breaking-ball share and the days of rest "
    "that published rules ask for, and tells the staff and the parents at once when a line "
    "speaks of pain. Records of minors are shown only to their families and to the staff. "
    "Spinkeeper is no clinician: league and local rules govern, and the coach decides. Any pain "
    "in the throwing arm: stop, and see a licensed clinician."
)

COMMAND_SAYS = "Log, look up and set: type help to see what you can do."
COMMAND_HINT = "[log | who | rest | mix | plan | pain | settings | help]"
LOG_NAME = "Log an outing"
LOG_SAYS = "Opens a short form: a game, a bullpen or catch play."
FIX_NAME = "Fix this line"
FIX_SAYS = "Opens what was read of this line, so that you can put it right."
