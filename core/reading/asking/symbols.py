"""The symbols that the word tables give, grouped by what they do in a question."""


def _of(names: str) -> frozenset[str]:
    return frozenset(names.split())


NAME = "name"
UNKNOWN = "unk"  # a word of no table: a name where a subject stands, else not understood

# Numbers with the word beside them; see amounts.py.
AMOUNTS = _of("n_pitches n_innings n_rest n_game n_games n_bare n_odd clock")
COUNTED = _of("n_pitches n_bare n_innings n_odd")  # how much was or will be thrown
# What fills a field of its own, so that a frame does not see it.
SLOTS = AMOUNTS | _of("day span team n_without")
# What says nothing to a frame.
SILENT = SLOTS | _of("glue coach through ordmark in mark stop gm this win lose each")
# Symbols of the day tables that no day used up, and what they say then.
LEFTOVERS = {"next": "again", "ago": "back", "last": "other", "date": "other", "aged": "other"}

# Where a question may begin, and what shows that another question has begun already.
OPENERS = _of(
    "who when what howmany howlong howsoon can cannot is do did have earliest about whether"
)
ASKING = _of("who what when ask howmany howlong howsoon someone anyone")
SUBJECTS = _of("name unk i he we you it everyone anyone someone")
INVERTED = _of("can cannot is do did have")  # "can he" asks, "he can" tells
# A clause with one of these speaks of pitching, so that its tail may be anything.
STRONG = _of("pitch rest rested innings count breaking arms catchplay catch hit spot threw limit")

# The parts of a question: "if he throws 40 thursday", "and still go saturday".
THROWING = _of("pitch pitches go throws threw use")
SUPPOSING = THROWING | _of("halt limit after")
IN_SUPPOSED = SUPPOSING | _of("if we i he name is at can did more not you")
THROWN_ALREADY = _of("threw after did")
IN_LATER = _of("can is able pitch go use he i name we still back again rested have left")

# A plan.
PLAN_HEAD = _of("glue coach mark help")
IN_PLAN = SILENT | _of("plan arms we i at more pitch pitches guest without versus name unk link it")
