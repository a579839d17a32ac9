"""
The day's clock against the house's hours: when sound must stop, and from when work may be heard
outside.
"""

from typing import Any

from builder.fit.comparing import age_notes, asked, signed
from builder.fit.records import Advice
from builder.fit.verdicts import ASK, FITS, SHORT, Record, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both
from builder.fit.wording import clock as clock_words

DAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
DAY_S = 86400
DAY_BEGINS_S = 21600
CURFEW: Advice = {
    "question": "On which days must sound stop, at what time, and can anybody extend that?",
    "remedy": "Start earlier, or shorten a set or a changeover.",
    "who": "the show and the promoter",
}
LOAD_IN: Advice = {
    "question": "From when may we load in?",
    "remedy": "Come later, or load in the day before.",
    "who": "the show",
}


def of_the_show(time_s: float) -> float:
    """
    A time on the show's own day: what ends before six in the morning belongs to the evening before.
    """
    return time_s + DAY_S if time_s < DAY_BEGINS_S else time_s


def holds_on(text: str, day: str) -> str:
    """Whether words such as "Sunday to Thursday" name a day: yes, no, or unclear."""
    words = text.lower().replace(",", " ").split()
    if words in (["every", "day"], ["daily"], ["always"]):
        return "yes"
    if len(words) == 3 and words[1] == "to" and words[0] in DAYS and words[2] in DAYS:
        first, last, asked_for = DAYS.index(words[0]), DAYS.index(words[2]), DAYS.index(day)
        inside = (
            first <= asked_for <= last if first <= last else asked_for >= first or asked_for <= last
        )
        return "yes" if inside else "no"
    for word in words:
        if word != "and" and word not in DAYS:
            return "unclear"
    return "yes" if day in words else "no"


def holds_today(text: str, day: str) -> str:
    """
    The same where the day may not be named: then yes only for words that name every day, else
    unclear.
    """
    if day != "":
        return holds_on(text, day)
    return "yes" if all(holds_on(text, each) == "yes" for each in DAYS) else "unclear"


def ends_before_curfew(requirement: Record, section: Any) -> Record:
    """
    Whether the last note is before the curfew of that day, or of every day where the rider names
    none.
    """
    if section is None:
        return asked(requirement, CURFEW, "The pack does not describe this.")
    curfews = [
        item
        for item in section["items"]
        if item["kind"] == "curfew" and applies(item, requirement["day"])
    ]
    if len(curfews) == 0:
        return no_curfew(requirement, section)
    found = [against_curfew(requirement, item) for item in curfews]
    words = [each["verdict"] for each in found]
    if SHORT in words and FITS in words and requirement["day"] == "":
        mixed = asked(requirement, CURFEW, "It depends on the day, and the rider names none.")
        mixed["fact"] = found[words.index(SHORT)]["fact"]
        return mixed
    for word in (SHORT, ASK):
        if word in words:
            return found[words.index(word)]
    return settled(found[0])


def applies(item: Record, day: str) -> bool:
    """Whether a curfew may hold on the show's day. One whose words are unclear may."""
    return day == "" or holds_on(item["name"], day) != "no"


def no_curfew(requirement: Record, section: Record) -> Record:
    """No curfew in the pack: there is none, or nobody has said."""
    for item in section["items"]:
        if (
            item["kind"] == "identity"
            and "curfews" in item["values"]
            and item["values"]["curfews"]["standing"] == "none"
        ):
            found = verdict(requirement, FITS, "The house has no curfew.")
            found["fact"] = fact_of(item["values"]["curfews"], item)
            return found
    return asked(requirement, CURFEW, "The house has not said when sound must stop on that day.")


def against_curfew(requirement: Record, item: Record) -> Record:
    """One curfew against the end of the show."""
    value = item["values"]["music_ends"]
    hard = item["values"]["strictness"]["text"] == "hard"
    slack = of_the_show(value["number"]) - of_the_show(requirement["time_s"])
    words = both("duration", abs(slack))
    if requirement["day"] != "" and holds_on(item["name"], requirement["day"]) == "unclear":
        found = asked(
            requirement,
            CURFEW,
            "It is not clear whether this curfew holds on that day: " + item["name"] + ".",
        )
    elif slack >= 0:
        found = verdict(
            requirement,
            FITS,
            words[0] + " before the curfew at " + clock_words(value["number"]) + ".",
        )
        found["notes"] = age_notes(value)
    elif hard:
        found = with_remedy(
            verdict(
                requirement,
                SHORT,
                words[0] + " after the curfew at " + clock_words(value["number"]) + ".",
            ),
            CURFEW,
        )
    else:
        reason = (
            words[0]
            + " after the curfew at "
            + clock_words(value["number"])
            + ", which somebody may extend."
        )
        found = asked(requirement, CURFEW, reason)
    found["fact"] = fact_of(value, item)
    found["margin"] = signed(words, slack)
    return found


def load_in_after(requirement: Record, section: Any) -> Record:
    """Whether load-in is not before the hour from which work may be heard outside."""
    for item in section["items"] if section is not None else []:
        if item["kind"] == "identity" and "load_in_from" in item["values"]:
            return against_hour(requirement, item, item["values"]["load_in_from"])
    return asked(requirement, LOAD_IN, "The house has not said.")


def against_hour(requirement: Record, item: Record, value: Record) -> Record:
    """The house's hour against the rider's."""
    if value["standing"] == "none":
        found = verdict(requirement, FITS, "The house sets no hour.")
    elif value["number"] is None:
        found = asked(requirement, LOAD_IN, "The house does not know yet.")
    else:
        slack = requirement["time_s"] - value["number"]
        words = both("duration", abs(slack))
        if slack >= 0:
            found = verdict(requirement, FITS, "Not before " + clock_words(value["number"]) + ".")
            found["notes"] = age_notes(value)
        else:
            found = with_remedy(verdict(requirement, SHORT, words[0] + " too early."), LOAD_IN)
        found["margin"] = signed(words, slack)
    found["fact"] = fact_of(value, item)
    return settled(found)
