"""Every sentence that people read, in one place, ready for translation."""
