"""
From doors to the last truck: the first act after doors, sets that end when they say, changeovers,
the load-out and the crew's day.
"""

from typing import Any

from builder.fit.clock.hours import of_the_show
from builder.fit.clock.house import PRACTICE, said_by_house
from builder.fit.comparing import age_notes
from builder.fit.verdicts import ASK, FITS, SHORT, Record, fact_of, settled, verdict
from builder.fit.wording import clock as clock_words
from builder.fit.wording import digits, lasting

MINUTE_S = 60.0
GAP = (
    "how long from the last note of the act before to your first, all in or by its parts? Commonly"
    " 15 to 30 min all in" + PRACTICE
)
RATE = (
    "how many lines do you check in a minute? Commonly 4 to 6 with two people at the patch"
    + PRACTICE
)
PARTS = (
    ("roll on", "rolling on", "how long do you roll on and set?"),
    ("patch", "patch", "how long do you patch, or 0 min where it is patched before?"),
    ("monitors", "monitors", "how long for wedges, in-ears and vocal positions?"),
    ("spare", "spare", "how much do you keep for what goes wrong, or 0 min?"),
)
LOAD_OUT = (
    "how long from your last note until your last truck is closed? Commonly 1 to 4 h" + PRACTICE
)


def judged_length(requirement: Record, slack_s: float, said: str) -> Record:
    """A fit with what is to spare, or a short with by how much."""
    words = lasting(slack_s)
    found = verdict(
        requirement,
        FITS if slack_s >= 0 else SHORT,
        said + (words + " to spare." if slack_s >= 0 else "short by " + words + "."),
    )
    found["margin"] = [("−" if slack_s < 0 else "+" if slack_s > 0 else "") + words, ""]
    return found


def asked_for(requirement: Record, asks: list[str], reason: str) -> Record:
    """An ask with its questions in one line."""
    found = verdict(requirement, ASK, reason)
    found["question"] = " ".join(asks) + " (" + requirement["title"] + ".)"
    return found


def changeover_of(before: Record, act: Record) -> Record:
    """
    How long a changeover takes: what is stated all in, or the sum of its parts, whichever is more;
    and what nobody has said.
    """
    clock, parts = act["clock"], act["clock"]["parts"]
    if parts is None and clock["changeover"] is None:
        return {
            "s": 0.0,
            "asks": [act["act"] + ": " + GAP],
            "said": "",
            "lines_s": 0.0,
            "notes": [],
        }
    if parts is None:
        return {
            "s": clock["changeover"],
            "asks": [],
            "said": "All in " + lasting(clock["changeover"]),
            "lines_s": 0.0,
            "notes": [],
        }
    found = added_up(before, act, parts)
    if (
        clock["changeover"] is not None
        and len(found["asks"]) > 0
        and found["s"] <= clock["changeover"]
    ):
        return {
            "s": clock["changeover"],
            "asks": [],
            "said": "All in " + lasting(clock["changeover"]),
            "lines_s": 0.0,
            "notes": [],
        }
    if clock["changeover"] is not None and clock["changeover"] > found["s"]:
        said = (
            "All in "
            + lasting(clock["changeover"])
            + ", more than its parts of "
            + lasting(found["s"])
        )
        return {**found, "s": clock["changeover"], "said": said, "lines_s": 0.0}
    if clock["changeover"] is not None and clock["changeover"] < found["s"]:
        found["notes"] = [
            "The rider says "
            + lasting(clock["changeover"])
            + " all in; its own parts are more, and they count."
        ]
    return found


def added_up(before: Record, act: Record, parts: Record) -> Record:
    """The sum: strike, rolling on, patch, lines at their rate, monitors, spare."""
    asks, words = [], []
    total_s = 0.0
    strike_s = before["clock"]["strike"]
    if strike_s is None:
        asks.append(
            before["act"]
            + ": how long do you take to clear the deck after your last note? Commonly 5 to 10 min"
            + PRACTICE
        )
    else:
        total_s += strike_s
        words.append("strike " + lasting(strike_s))
    lines = lines_of(act, parts)
    for key, said, question in PARTS:
        if key == "monitors":
            total_s += lines["s"]
            words = [*words, *lines["words"]]
            asks = [*asks, *lines["asks"]]
        if parts[key] is None:
            asks.append(act["act"] + ": " + question)
        else:
            total_s += parts[key]
            words.append(said + " " + lasting(parts[key]))
    said = "It takes " + " + ".join(words) + " = " + lasting(total_s) if len(words) > 0 else ""
    return {"s": total_s, "asks": asks, "said": said, "lines_s": lines["s"], "notes": []}


def lines_of(act: Record, parts: Record) -> Record:
    """
    The line check within a changeover: none where it is done before, else lines by their rate.
    """
    if parts["before"]:
        return {"s": 0.0, "words": ["lines checked before"], "asks": []}
    asks = []
    if parts["lines"] is None:
        asks.append(act["act"] + ": how many lines do you check?")
    if parts["lines a minute"] is None and parts["lines"] != 0:
        asks.append(act["act"] + ": " + RATE)
    if len(asks) > 0:
        return {"s": 0.0, "words": [], "asks": asks}
    if parts["lines"] == 0:
        return {"s": 0.0, "words": [], "asks": []}
    length_s = parts["lines"] * MINUTE_S / parts["lines a minute"]
    said = (
        digits(parts["lines"], 0)
        + " lines at "
        + digits(parts["lines a minute"], 0)
        + " a minute "
        + lasting(length_s)
    )
    return {"s": length_s, "words": [said], "asks": []}


def changeover(requirement: Record, before: Record, act: Record) -> Record:
    """The time between two acts against what the changeover takes."""
    needed = changeover_of(before, act)
    if before["ends_s"] is None:
        asks = [
            before["act"] + ": when does your last note end, or how long is your set?",
            *needed["asks"],
        ]
        return asked_for(requirement, asks, "Nobody has said when " + before["act"] + " ends.")
    gap_s = act["starts_s"] - before["ends_s"]
    said = (
        clock_words(before["ends_s"])
        + " to "
        + clock_words(act["starts_s"])
        + " is "
        + ("−" if gap_s < 0 else "")
        + lasting(gap_s)
        + ". "
    )
    slack_s = gap_s - needed["s"]
    if slack_s >= 0 and len(needed["asks"]) > 0:
        return asked_for(requirement, needed["asks"], said + "Not all that decides is known.")
    least = " so far" if len(needed["asks"]) > 0 else ""
    found = judged_length(
        requirement, slack_s, said + (needed["said"] + least + ": " if needed["said"] != "" else "")
    )
    found["notes"] = needed["notes"]
    if len(needed["asks"]) > 0:
        found["question"] = " ".join(needed["asks"]) + " (" + requirement["title"] + ".)"
    return (
        quicker(settled(found), before, act, needed["lines_s"], -slack_s)
        if slack_s < 0
        else settled(found)
    )


def quicker(found: Record, before: Record, act: Record, lines_s: float, short_s: float) -> Record:
    """What would mend a changeover that is too long."""
    ways = []
    if lines_s > 0:
        whole = "" if lines_s >= short_s else ", which is not all of it"
        ways.append(
            "check the lines of "
            + act["act"]
            + " during the set before, which saves "
            + lasting(lines_s)
            + whole
        )
    set_s = before["clock"]["set"]
    if set_s is not None and set_s > short_s:
        ways.append("shorten the set of " + before["act"] + " to " + lasting(set_s - short_s))
    ways.append(act["act"] + " begins at " + clock_words(act["starts_s"] + short_s))
    found["remedy"] = "What helps: " + "; ".join(ways) + "."
    found["who"] = "the acts and the house crew"
    return found


def set_closes(requirement: Record, act: Record) -> Record:
    """A set that begins, lasts and ends as stated, or does not."""
    clock = act["clock"]
    found = judged_length(
        requirement,
        of_the_show(clock["ends"]) - of_the_show(clock["on stage"]) - clock["set"],
        clock_words(of_the_show(clock["on stage"]))
        + " and "
        + lasting(clock["set"])
        + ", until "
        + clock_words(of_the_show(clock["ends"]))
        + ": ",
    )
    if found["verdict"] == SHORT:
        found["remedy"] = "Begin earlier, play less, or end later where the curfew allows it."
        found["who"] = "the show"
    return found


def after_doors(requirement: Record, first: Record, doors_s: float, section: Any) -> Record:
    """The first act after doors, and after the time that the house wants between."""
    kept = said_by_house(section, "identity", "doors_before_show")
    gap_s = first["starts_s"] - doors_s
    said = clock_words(doors_s) + " to " + clock_words(first["starts_s"]) + ": "
    if kept["standing"] == "ask" and gap_s >= 0:
        ask = "How long must there be from doors to the first act? Commonly 30 to 60 min" + PRACTICE
        return asked_for(
            requirement,
            [ask],
            lasting(gap_s) + " from doors. The house has not said how long it wants.",
        )
    wanted_s = kept["s"] if kept["s"] is not None else 0.0
    found = judged_length(
        requirement,
        gap_s - wanted_s,
        said + ("the house wants " + lasting(wanted_s) + ", " if wanted_s > 0 else ""),
    )
    if kept["item"] is not None:
        found["fact"] = fact_of(kept["value"], kept["item"])
        found["notes"] = age_notes(kept["value"]) if found["verdict"] == FITS else []
    if found["verdict"] == SHORT:
        found["remedy"] = "Open doors earlier, or begin later."
        found["who"] = "the promoter and the house"
    return settled(found)


def load_out(requirement: Record, act: Record, section: Any) -> Record:
    """The end of the load-out against the hour until which work may be heard outside."""
    limit = said_by_house(section, "identity", "load_out_until")
    if limit["standing"] == "ask":
        return asked_for(requirement, ["Until when may we load out?"], "The house has not said.")
    if limit["standing"] == "none":
        found = verdict(requirement, FITS, "The house sets no hour.")
    elif act["clock"]["load out"] is None:
        found = asked_for(
            requirement, [act["act"] + ": " + LOAD_OUT], "Nobody has said how long it takes."
        )
    else:
        until_s, end_s = of_the_show(limit["s"]), act["ends_s"] + act["clock"]["load out"]
        said = (
            clock_words(act["ends_s"])
            + " and "
            + lasting(act["clock"]["load out"])
            + " is "
            + clock_words(end_s)
            + ", until "
            + clock_words(until_s)
        )
        found = judged_length(requirement, until_s - end_s, said + ": ")
        found["notes"] = age_notes(limit["value"]) if found["verdict"] == FITS else []
    if found["verdict"] == SHORT:
        found["remedy"] = "End earlier, order more loaders, or leave trucks until the morning."
        found["who"] = "the show and the house"
    found["fact"] = fact_of(limit["value"], limit["item"])
    return settled(found)


def crew_day(requirement: Record, start_s: float, act: Record, section: Any) -> Record:
    """
    The whole day from the first truck to the last against the longest call; a short load-out is
    paid as the shortest call.
    """
    longest, shortest = (
        said_by_house(section, "crew", "longest_call"),
        said_by_house(section, "crew", "shortest_call"),
    )
    end_s = act["ends_s"] + act["clock"]["load out"]
    said = clock_words(start_s) + " to " + clock_words(end_s) + " is " + lasting(end_s - start_s)
    if longest["standing"] == "ask":
        ask = "How long may one crew work on one day? Commonly 10 to 14 h" + PRACTICE
        return asked_for(
            requirement, [ask], said + ". The house has not said how long one crew may work."
        )
    if longest["standing"] == "none":
        found = verdict(requirement, FITS, said + ". The house sets no longest call.")
    else:
        found = judged_length(
            requirement,
            longest["s"] - (end_s - start_s),
            said + " of " + lasting(longest["s"]) + ": ",
        )
    found["fact"] = fact_of(longest["value"], longest["item"])
    if found["verdict"] == SHORT:
        found["remedy"] = "Order a second crew for part of the day, or shorten it."
        found["who"] = "the promoter"
    elif shortest["s"] is not None and act["clock"]["load out"] < shortest["s"]:
        words = (
            lasting(act["clock"]["load out"])
            + " is paid as the shortest call of "
            + lasting(shortest["s"])
        )
        found["notes"] = [
            *age_notes(longest["value"]),
            "A crew called for the load-out alone: " + words + ".",
        ]
    else:
        found["notes"] = age_notes(longest["value"])
    return settled(found)
