"""
What a net catches: a failure of the program itself, as a sentence that names the file at which it
happened. Its details go to the log, and to the terminal where somebody asks for them.
"""

import logging

from builder.reading.problems import Problem, Where

LOG = logging.getLogger("housepack")
REPORT = (
    "this is a mistake of the program and not yours; please report it, with what the same command"
    " prints with --details"
)


def program_failed(file: str, failure: Exception) -> Problem:
    """A failure that nobody expected, as a problem of the file at which it happened."""
    LOG.debug("The program failed at %s", file, exc_info=failure)
    kind = type(failure).__name__
    words = " ".join(str(failure).split())[:200]
    reason = f"made the program fail ({kind}: {words})" if words else f"made it fail ({kind})"
    return Problem(Where(file), "", "", reason, "program-failed", REPORT)
