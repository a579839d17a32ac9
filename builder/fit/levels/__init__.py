"""The level that a show expects, against the house's limits and against what its system reaches."""
