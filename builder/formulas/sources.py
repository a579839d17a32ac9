"""The works that formulas and checks cite, each once. The key carries the edition."""

from builder.formulas.cite import Source

COMMON_PRACTICE = Source("common practice, no source", "A fact of the trade that no published source was found for")
