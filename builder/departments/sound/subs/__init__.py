"""The sub line: its delays, what it covers by frequency, other ways to set it."""
