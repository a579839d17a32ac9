"""What stands against a hang."""

from builder.fit.hangs.records import Issue, IssueWord
from builder.fit.hangs.sentences import WHICH_BRIDLE, WITH_THIS_BRIDLE
from builder.fit.records import Fact, Item
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, SHORT, fact_of


def issue(
    word: IssueWord,
    reason: str,
    *,
    question: str = "",
    about: str = "",
    words: str = "",
    remedy: str = "",
    item: Item | None = None,
) -> Issue:
    """Something that stands against a fit; the fact is the item's own limit."""
    return {
        "word": word,
        "reason": reason,
        "question": question,
        "about": about,
        "words": words,
        "remedy": remedy,
        "slack": 0.0,
        "fact": limit_fact(item),
        "house": False,
        "hangs": [],
    }


def limit_fact(item: Item | None) -> Fact | None:
    """An item's own limit as the house's fact, or None."""
    if item is None:
        return None
    value = item["values"].get("limit")
    return None if value is None else fact_of(value, item)


def with_this_bridle(found: Issue) -> Issue:
    """What stands against this bridle does not stand against every other: it is asked."""
    if found["word"] != SHORT:
        return found
    return {
        **found,
        "word": ASK,
        "reason": fill(WITH_THIS_BRIDLE, {"reason": found["reason"]}),
        "question": WHICH_BRIDLE,
        "about": "",
        "words": "",
        "remedy": "",
        "slack": 0.0,
    }
