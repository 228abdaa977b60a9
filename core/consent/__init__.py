"""Consent to a pitcher's record: who may give it, whether it stands, what follows from it."""
