"""
The day's clock against the house's hours: when sound must stop, and from when work may be heard
outside.
"""

from builder.fit.clock.sentences import (
    AFTER_CURFEW,
    AFTER_OPEN_CURFEW,
    AFTER_SOFT_CURFEW,
    ASK_CURFEW,
    ASK_LOAD_IN,
    BEFORE_CURFEW,
    CURFEW_NOT_SAID,
    CURFEW_UNCLEAR,
    DEPENDS_ON_DAY,
    MEND_CURFEW,
    MEND_LOAD_IN,
    NO_CURFEW,
    NO_HOUR,
    NOT_BEFORE,
    TOO_EARLY,
)
from builder.fit.clock.times import holds_on, known_time, of_the_show
from builder.fit.margins import signed
from builder.fit.notes import age_notes, once
from builder.fit.records import Advice, EndAsked, Item, LoadInAsked, Section, Value, Verdict
from builder.fit.sections import items_of
from builder.fit.sentences import NOT_DESCRIBED, NOT_SAID, fill
from builder.fit.silence import silence
from builder.fit.values import text_of
from builder.fit.verdicts import ASK, FITS, SHORT, asked, fact_of, settled, verdict, with_remedy
from builder.fit.wording import both
from builder.fit.wording import clock as clock_words

CURFEW: Advice = {
    "question": ASK_CURFEW,
    "remedy": MEND_CURFEW,
    "who": "the show and the promoter",
}
LOAD_IN: Advice = {"question": ASK_LOAD_IN, "remedy": MEND_LOAD_IN, "who": "the show"}


def ends_before_curfew(requirement: EndAsked, section: Section | None) -> Verdict:
    """
    Whether the last note is before the curfew of that day, or of every day where the rider names
    none.
    """
    if section is None:
        return asked(requirement, CURFEW, NOT_DESCRIBED)
    curfews = [item for item in items_of(section, "curfew") if may_apply(item, requirement["day"])]
    if len(curfews) == 0:
        return no_curfew(requirement, section)
    answers = [against_curfew(requirement, item) for item in curfews]
    words = [answer["verdict"] for answer in answers]
    if SHORT in words and FITS in words and requirement["day"] == "":
        mixed = asked(requirement, CURFEW, DEPENDS_ON_DAY)
        mixed["fact"] = answers[words.index(SHORT)]["fact"]
        return mixed
    if SHORT in words:
        return answers[words.index(SHORT)]
    if ASK in words:
        return answers[words.index(ASK)]
    answers[0]["notes"] = once([note for answer in answers for note in answer["notes"]])
    return settled(answers[0])


def may_apply(item: Item, day: str) -> bool:
    """Whether a curfew may hold on the show's day. One whose words are unclear may."""
    return day == "" or holds_on(item["name"], day) != "no"


def no_curfew(requirement: EndAsked, section: Section) -> Verdict:
    """No curfew in the pack: there is none, or nobody has said."""
    for item in items_of(section, "identity"):
        if "curfews" in item["values"] and item["values"]["curfews"]["standing"] == "none":
            answer = verdict(requirement, FITS, NO_CURFEW)
            answer["fact"] = fact_of(item["values"]["curfews"], item)
            answer["notes"] = age_notes(item["values"]["curfews"])
            return settled(answer)
    return asked(requirement, CURFEW, CURFEW_NOT_SAID)


def against_curfew(requirement: EndAsked, item: Item) -> Verdict:
    """One curfew against the end of the show."""
    value = item["values"]["music_ends"]
    if value["number"] is None:
        unknown = asked(requirement, CURFEW, silence(value))
        unknown["fact"] = fact_of(value, item)
        return unknown
    curfew_s = known_time(value["number"])
    slack_s = of_the_show(curfew_s) - of_the_show(requirement["time_s"])
    words = both("duration", abs(slack_s))
    parts = {"amount": words[0], "time": clock_words(curfew_s), "name": item["name"]}
    if requirement["day"] != "" and holds_on(item["name"], requirement["day"]) == "unclear":
        answer = asked(requirement, CURFEW, fill(CURFEW_UNCLEAR, parts))
    elif slack_s >= 0:
        answer = verdict(requirement, FITS, fill(BEFORE_CURFEW, parts))
        answer["notes"] = age_notes(value)
    elif text_of(item, "strictness") == "hard":
        answer = with_remedy(verdict(requirement, SHORT, fill(AFTER_CURFEW, parts)), CURFEW)
    else:
        is_soft = text_of(item, "strictness") == "soft"
        words_of_end = AFTER_SOFT_CURFEW if is_soft else AFTER_OPEN_CURFEW
        answer = asked(requirement, CURFEW, fill(words_of_end, parts))
    answer["fact"] = fact_of(value, item)
    answer["margin"] = signed(words, slack_s)
    return answer


def load_in_after(requirement: LoadInAsked, section: Section | None) -> Verdict:
    """Whether load-in is not before the hour from which work may be heard outside."""
    for item in items_of(section, "identity"):
        if "load_in_from" in item["values"]:
            return against_hour(requirement, item, item["values"]["load_in_from"])
    return asked(requirement, LOAD_IN, NOT_SAID)


def against_hour(requirement: LoadInAsked, item: Item, value: Value) -> Verdict:
    """The house's hour against the rider's."""
    hour_s = value["number"]
    if value["standing"] == "none":
        answer = verdict(requirement, FITS, NO_HOUR)
        answer["notes"] = age_notes(value)
    elif hour_s is None:
        answer = asked(requirement, LOAD_IN, silence(value))
    else:
        slack_s = requirement["time_s"] - hour_s
        words = both("duration", abs(slack_s))
        if slack_s >= 0:
            answer = verdict(requirement, FITS, fill(NOT_BEFORE, {"time": clock_words(hour_s)}))
            answer["notes"] = age_notes(value)
        else:
            reason = fill(TOO_EARLY, {"amount": words[0]})
            answer = with_remedy(verdict(requirement, SHORT, reason), LOAD_IN)
        answer["margin"] = signed(words, slack_s)
    answer["fact"] = fact_of(value, item)
    return settled(answer)
