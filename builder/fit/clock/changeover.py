"""How long a changeover takes, all in or by its parts, and whether it fits between two acts."""

from builder.fit.clock.answers import acts_asked, length_answer, questions_of
from builder.fit.clock.pieces import act_asked
from builder.fit.clock.records import Act, Changeover, LineCheck
from builder.fit.clock.sentences import (
    ADDED_UP,
    ALL_IN,
    ALL_IN_OVER_PARTS,
    ASK_ENDS,
    ASK_GAP,
    ASK_LINES,
    ASK_MONITORS,
    ASK_PATCH,
    ASK_RATE,
    ASK_ROLL_ON,
    ASK_SPARE,
    ASK_STRIKE,
    BEGINS_AT,
    END_NOT_SAID,
    GAP_IS,
    GAP_LACKS,
    GAP_NEEDS,
    GAP_NEEDS_SO_FAR,
    LINES_AT_RATE,
    LINES_BEFORE,
    LINES_DURING_SET,
    NOT_ALL_OF_IT,
    PART_LENGTH,
    PARTS_OVER_ALL_IN,
    SHORTEN_SET,
    WHAT_HELPS,
)
from builder.fit.clock.times import known_time
from builder.fit.records import ChangeoverAsked, Line, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import settled
from builder.fit.wording import clock as clock_words
from builder.fit.wording import digits, lasting

MINUTE_S = 60.0


def changeover_of(before: Act, act: Act) -> Changeover:
    """
    How long a changeover takes: what is stated all in, or the sum of its parts, whichever is more;
    and what nobody has said.
    """
    all_in_s, parts = act["clock"]["changeover"], act["clock"]["parts"]
    if parts is None:
        if all_in_s is None:
            asks = [act_asked(act["act"], ASK_GAP)]
            return {"s": 0.0, "asks": asks, "sum_words": "", "lines_s": 0.0, "notes": []}
        return all_in(all_in_s)
    added = add_up(before, act, parts)
    if all_in_s is None:
        return added
    if len(added["asks"]) > 0 and added["s"] <= all_in_s:
        return all_in(all_in_s)
    words = {"length": lasting(all_in_s), "parts": lasting(added["s"])}
    if all_in_s > added["s"]:
        sum_words = fill(ALL_IN_OVER_PARTS, words)
        return {**added, "s": all_in_s, "sum_words": sum_words, "lines_s": 0.0}
    if all_in_s < added["s"]:
        added["notes"] = [fill(PARTS_OVER_ALL_IN, words)]
    return added


def all_in(length_s: float) -> Changeover:
    """A changeover of a length that is stated for all of it."""
    sum_words = fill(ALL_IN, {"length": lasting(length_s)})
    return {"s": length_s, "asks": [], "sum_words": sum_words, "lines_s": 0.0, "notes": []}


def add_up(before: Act, act: Act, parts: ChangeoverAsked) -> Changeover:
    """The sum: strike, rolling on, patch, lines at their rate, monitors, spare."""
    added: Changeover = {"s": 0.0, "asks": [], "sum_words": "", "lines_s": 0.0, "notes": []}
    words: list[str] = []
    lines = line_check_of(act, parts)
    add_part(
        added, words, before["clock"]["strike"], "strike", act_asked(before["act"], ASK_STRIKE)
    )
    add_part(added, words, parts["roll on"], "rolling on", act_asked(act["act"], ASK_ROLL_ON))
    add_part(added, words, parts["patch"], "patch", act_asked(act["act"], ASK_PATCH))
    added["s"] += lines["s"]
    added["lines_s"] = lines["s"]
    added["asks"].extend(lines["asks"])
    words.extend(lines["words"])
    add_part(added, words, parts["monitors"], "monitors", act_asked(act["act"], ASK_MONITORS))
    add_part(added, words, parts["spare"], "spare", act_asked(act["act"], ASK_SPARE))
    if len(words) > 0:
        total = lasting(added["s"])
        added["sum_words"] = fill(ADDED_UP, {"parts": " + ".join(words), "length": total})
    return added


def add_part(
    added: Changeover, words: list[str], length_s: float | None, part: str, question: str
) -> None:
    """One part: its length where it is stated, else its question."""
    if length_s is None:
        added["asks"].append(question)
    else:
        added["s"] += length_s
        words.append(fill(PART_LENGTH, {"part": part, "length": lasting(length_s)}))


def line_check_of(act: Act, parts: ChangeoverAsked) -> LineCheck:
    """
    The line check within a changeover: none where it is done before, else lines by their rate.
    """
    if parts["before"]:
        return {"s": 0.0, "words": [LINES_BEFORE], "asks": []}
    lines, rate = parts["lines"], parts["lines a minute"]
    asks: list[str] = []
    if lines is None:
        asks.append(act_asked(act["act"], ASK_LINES))
    if rate is None and lines != 0:
        asks.append(act_asked(act["act"], ASK_RATE))
    if lines is None or lines == 0 or rate is None:
        return {"s": 0.0, "words": [], "asks": asks}
    length_s = lines * MINUTE_S / rate
    words = {"lines": digits(lines, 0), "rate": digits(rate, 0), "length": lasting(length_s)}
    return {"s": length_s, "words": [fill(LINES_AT_RATE, words)], "asks": []}


def changeover_answer(requirement: Line, before: Act, act: Act) -> Verdict:
    """The time between two acts against what the changeover takes."""
    needed = changeover_of(before, act)
    if before["ends_s"] is None:
        asks = [act_asked(before["act"], ASK_ENDS), *needed["asks"]]
        return acts_asked(requirement, asks, fill(END_NOT_SAID, {"act": before["act"]}))
    starts_s = known_time(act["starts_s"])
    gap_s = starts_s - before["ends_s"]
    gap = gap_words(before["ends_s"], starts_s)
    slack_s = gap_s - needed["s"]
    if slack_s >= 0 and len(needed["asks"]) > 0:
        return acts_asked(requirement, needed["asks"], fill(GAP_LACKS, {"gap": gap}))
    if needed["sum_words"] != "":
        template = GAP_NEEDS_SO_FAR if len(needed["asks"]) > 0 else GAP_NEEDS
        gap = fill(template, {"gap": gap, "sum": needed["sum_words"]})
    answer = length_answer(requirement, slack_s, gap)
    answer["notes"] = needed["notes"]
    if len(needed["asks"]) > 0:
        answer["act_question"] = questions_of(requirement, needed["asks"])
    answer = settled(answer)
    if slack_s < 0:
        return with_quicker_ways(answer, before, act, needed["lines_s"], -slack_s)
    return answer


def gap_words(ends_s: float, starts_s: float) -> str:
    """The time between two acts in words; less than nothing where they overlap."""
    gap_s = starts_s - ends_s
    length = f"−{lasting(gap_s)}" if gap_s < 0 else lasting(gap_s)
    return fill(
        GAP_IS, {"from": clock_words(ends_s), "to": clock_words(starts_s), "length": length}
    )


def with_quicker_ways(
    answer: Verdict, before: Act, act: Act, lines_s: float, short_s: float
) -> Verdict:
    """What would mend a changeover that is too long."""
    ways: list[str] = []
    if lines_s > 0:
        part = "" if lines_s >= short_s else NOT_ALL_OF_IT
        parts = {"act": act["act"], "length": lasting(lines_s), "part": part}
        ways.append(fill(LINES_DURING_SET, parts))
    set_s = before["clock"]["set"]
    if set_s is not None and set_s > short_s:
        parts = {"act": before["act"], "length": lasting(set_s - short_s)}
        ways.append(fill(SHORTEN_SET, parts))
    later_s = known_time(act["starts_s"]) + short_s
    ways.append(fill(BEGINS_AT, {"act": act["act"], "time": clock_words(later_s)}))
    answer["remedy"] = fill(WHAT_HELPS, {"ways": "; ".join(ways)})
    answer["who"] = "the acts and the house crew"
    return answer
