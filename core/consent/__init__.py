"""Consent to a pitcher's record: who may give it, whether it stands, what follows from it."""

# The ledger obeys words of consent, and consent is told by the ledger: it is loaded first.
import core.ledger  # noqa: F401
