"""Groups of symbols that rules share. Importing this module declares them."""

from core.reading.pattern import group

UNITS = ("pitches", "breaking", "curve", "slider", "changeup", "fastball", "strikes")
TYPES = ("breaking", "curve", "slider", "changeup", "fastball")

group("unit", UNITS)
group("type", TYPES)
group("site", ("site",))
group("det", ("the", "hisher", "a", "i", "he"))
group("fill", ("adj", "the", "hisher", "total", "adv", "ish", "ball"))
group("link", ("is", "colon", "eq", "dash", "at", "of", "about", "adv", "total", "the"))
group("sep", ("comma", "dot", "dash", "open", "close", "semi", "stop", "slash", "star"))
group("kind", ("bullpen", "catch", "live", "game", "scrimmage", "bp", "tryout", "warm"))
group("pitchkind", ("bullpen", "live", "game", "warm"))
group("goodish", ("good", "adj"))
group("painful", ("pain", "sore"))
group("amount", ("num", "about"))
