"""What takes an upgrade back: the name of its file, which no department has to be loaded for."""

RECORD = "upgrade-undo.json"
"""The file in the venue's folder that takes its upgrade to a newer language back."""
