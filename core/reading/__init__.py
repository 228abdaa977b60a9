"""A typed line becomes entries, or says what in it is unclear.

How a line flows, and where to look:

    tokens      the line cut up, each piece with its place; starred: words put right by a star
    lexicon     words to symbols, from the tables in vocabulary/; slips put right
    items       tokens to items: a symbol, and the value of a number
    neighbours  words that mean one thing or another by what stands beside them
    clauses     sentences, clauses and pieces
    board       the items, and the claims that rules lay on them; pattern holds their language
    roster      known names; opponents: whom a game was against; everyone: the whole roster
    people, talk, ahead, pain, severity, healed, armroll, limits, nolog, corrections, effort, days,
    running, bare, strikes, shares, counts, innings, pairing, ellipsis, tables, kinds
                the recognisers: each claims what it explains, surest first (reader has the order)
    stretches   how far a pain report reaches
    pieces, draft, assemble, together
                claims to drafts: whose, which outing, what is shared
    in_order    numbers said once for several outings: lists, and totals over all
    conclude    drafts to entries: sums, kinds, and what cannot be
    explained   the words beside counts: harmless, or asked about
    leftovers   what else nothing explained: it is asked about
    doubts, far_doubts
                a second look at a reading that asks nothing
    account     what became of each number
    jsonl, report
                the line filter, and how labelled lines are read

No number is dropped in silence: it is in a claim, or it is asked about, unless the whole line is
plain talk; and no word beside a count, unless a table says that it changes none. To teach the
reader a word, add it to a table in vocabulary/; to teach it a form, add a rule to the table of the
recogniser it belongs to, and a test beside it.
"""

from core.reading.entry import Detail, Entry, Pain, Reading, Unread, UnreadReason
from core.reading.reader import read

__all__ = ["Detail", "Entry", "Pain", "Reading", "Unread", "UnreadReason", "read"]
