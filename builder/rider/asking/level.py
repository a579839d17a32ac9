"""``level``: the level that the show expects, and questions in the rider's own words."""

from builder.fit.records import LevelAsked, QuestionAsked
from builder.rider.asking.asked import asked_base, parts_joined, sized, strictness_of
from builder.rider.asking.asking import Asking
from builder.rider.asking.hangs import or_nothing
from builder.rider.asking.values import ReadValue, si_of, words_of

OVER = "over {words}"
AT_THE = "at the {words}"
WEIGHTED = "dB("
"""A unit of level that tells its weighting begins so; the weighting is the sign behind it."""


def level_asked(level: ReadValue, asking: Asking) -> LevelAsked:
    """The level that the show expects to play at. [dB]"""
    words = parts_joined(
        [
            words_of(level, "at"),
            words_of(level, "metric"),
            sized(OVER, level, "over"),
            sized(AT_THE, level, "place"),
        ]
    )
    strictness = strictness_of(level)
    base = asked_base(asking, level["line"], "house", "Level of the show", words, strictness)
    symbol = level["keys"]["at"]["symbol"]
    return {
        **base,
        "sort": "level",
        "level_db": or_nothing(si_of(level, "at")),
        "weighting": symbol[3:4] if symbol.startswith(WEIGHTED) else "",
        "metric": words_of(level, "metric"),
        "over_s": si_of(level, "over"),
        "place": words_of(level, "place"),
    }


def question_asked(question: ReadValue, asking: Asking) -> QuestionAsked:
    """A question to the house."""
    words = question["text"]
    base = asked_base(asking, question["line"], "other", "A question", words, "must")
    return {**base, "sort": "question", "words": words}
