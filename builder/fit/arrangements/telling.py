"""
The best of the evenings that a day could be, and how the others fare: what decides between them.
"""

from builder.fit.arrangements.records import Evening, Judged
from builder.fit.arrangements.sentences import (
    ACT_IN,
    BEST_OF,
    BETTER,
    CAN_IT_CHANGE,
    CHANGEOVER,
    DIFFERENT,
    EACH_IN_ITS_OWN,
    JUDGED_IN,
    MORE,
    NOTHING_SHORT,
    OTHER_IN,
    SAME_IN,
    SET_FOR_SHOW,
    SETTING,
    SETTING_IN_BOTH,
    WORSE,
)
from builder.fit.counting import count_words
from builder.fit.overall import overall
from builder.fit.records import Line, OtherArrangement, RiderAsked, Setting, Verdict
from builder.fit.sentences import fill
from builder.fit.show_day import THE_DAY
from builder.fit.verdicts import ASK, RANK, SHORT, verdict, with_question
from builder.fit.wording import digits

BETWEEN = "; "
MOST_TOLD = 4
"""How many lines tell of other arrangements."""
Fare = tuple[int, int, int]


def fare_of(verdicts: list[Verdict]) -> Fare:
    """
    How a show fares, less is better: what must be and is short, what is to ask, what only should be
    and is short.
    """
    short = [answer for answer in verdicts if answer["verdict"] == SHORT]
    must = len([answer for answer in short if answer["strictness"] == "must"])
    asks = len([answer for answer in verdicts if answer["verdict"] == ASK])
    return (must, asks, len(short) - must)


def place_of_best(judged: list[Judged]) -> int:
    """Which evening is the best: the first of those on which the show fares best."""
    fares = [fare_of(one["verdicts"]) for one in judged]
    return fares.index(min(fares))


def others_of(best: Judged, judged: list[Judged]) -> list[OtherArrangement]:
    """How a show fares in the other arrangements, beside the best."""
    found: list[OtherArrangement] = []
    for other in judged:
        if other["evening"]["free"] != best["evening"]["free"]:
            found.append(beside_best(best["verdicts"], other))
    return found


def beside_best(best: list[Verdict], judged: Judged) -> OtherArrangement:
    """One other arrangement beside the best."""
    verdicts = judged["verdicts"]
    return {
        "arrangement": {
            "space": "",
            "configuration": judged["evening"]["free"]["configuration"],
            "settings": settings_leaned_on(judged),
        },
        "verdict": overall(verdicts, ""),
        "short": len([answer for answer in verdicts if answer["verdict"] == SHORT]),
        "ask": len([answer for answer in verdicts if answer["verdict"] == ASK]),
        "worse": first_graver(verdicts, best),
        "better": first_graver(best, verdicts),
    }


def first_graver(verdicts: list[Verdict], others: list[Verdict]) -> str:
    """What of some verdicts is graver than in others, the gravest first; empty where nothing is."""
    title = ""
    rank = -1
    for answer, other in zip(verdicts, others, strict=False):
        own = RANK[answer["verdict"]]
        if own > RANK[other["verdict"]] and own > rank:
            title = answer["title"]
            rank = own
    return title


def judged_in_words(
    riders: list[RiderAsked], best: Judged, others: list[OtherArrangement], names: list[str]
) -> list[str]:
    """
    In which arrangement a show is judged and how the others fare; nothing where the house has one
    only.
    """
    if len(names) < 2:
        return []
    evening = best["evening"]
    known = [place for place in evening["places"] if not place["is_open"]]
    if len(known) == 0:
        return []
    if len(evening["places"]) > 1:
        return [fill(EACH_IN_ITS_OWN, {"names": acts_words(riders, evening)}), *lines_of(others)]
    parts = {"names": known[0]["configuration"], "number": digits(len(others) + 1, 0)}
    return [fill(BEST_OF if len(others) > 0 else JUDGED_IN, parts), *lines_of(others)]


def with_settings_told(words: list[str], best: Judged) -> list[str]:
    """
    In which arrangement a show is judged, and after its first line what the house sets for it: of
    that only what a verdict leans on.
    """
    told = [setting_words(each) for each in settings_leaned_on(best)]
    if len(told) == 0:
        return words
    return [*words[:1], fill(SET_FOR_SHOW, {"settings": BETWEEN.join(told)}), *words[1:]]


def settings_leaned_on(judged: Judged) -> list[Setting]:
    """What the house sets for a show, of that what a verdict leans on."""
    facts = [answer["fact"] for answer in judged["verdicts"]]
    keys = [fact["key"] for fact in facts if fact is not None]
    for answer in judged["verdicts"]:
        keys.extend(answer["leans_on"])
    return [each for each in judged["settings"] if each["key"] in keys]


def setting_words(setting: Setting) -> str:
    """One value as it is set, in both systems where its kind has two."""
    parts = {
        "item": setting["item"],
        "label": setting["label"],
        "amount": setting["words"][0],
        "also": setting["words"][1],
    }
    return fill(SETTING if parts["also"] == "" else SETTING_IN_BOTH, parts)


def acts_words(riders: list[RiderAsked], evening: Evening) -> str:
    """Each act with its configuration, where that is known."""
    words: list[str] = []
    for rider, own in zip(riders, evening["own"], strict=True):
        place = evening["places"][own]
        if not place["is_open"]:
            parts = {"act": rider["act"], "configuration": place["configuration"]}
            words.append(fill(ACT_IN, parts))
    return BETWEEN.join(words)


def lines_of(others: list[OtherArrangement]) -> list[str]:
    """How other arrangements fare, those alike in one line."""
    alike: dict[str, list[OtherArrangement]] = {}
    for other in others:
        alike.setdefault(line_of(other, ""), []).append(other)
    groups = list(alike.values())
    lines = [line_of(group[0], names_of(group)) for group in groups[:MOST_TOLD]]
    rest = sum(len(group) for group in groups[MOST_TOLD:])
    return lines if rest == 0 else [*lines, fill(MORE, {"number": digits(rest, 0)})]


def names_of(group: list[OtherArrangement]) -> str:
    """The names of some arrangements."""
    return BETWEEN.join(
        other["arrangement"]["space"] + other["arrangement"]["configuration"] for other in group
    )


def line_of(other: OtherArrangement, names: str) -> str:
    """How arrangements of these names fare."""
    if other["worse"] == "" and other["better"] == "":
        return fill(SAME_IN, {"names": names})
    count = count_words([*[SHORT] * other["short"], *[ASK] * other["ask"]])
    return fill(
        OTHER_IN,
        {
            "names": names,
            "count": ", ".join(count) if len(count) > 0 else NOTHING_SHORT,
            "worse": fill(WORSE, {"title": other["worse"]}) if other["worse"] != "" else "",
            "better": fill(BETTER, {"title": other["better"]}) if other["better"] != "" else "",
        },
    )


def changeover_asked(riders: list[RiderAsked], evening: Evening) -> list[Verdict]:
    """The question that acts of one day in different configurations come to."""
    known = [place for place in evening["places"] if not place["is_open"]]
    if len(known) < 2:
        return []
    line: Line = {
        "act": THE_DAY,
        "line": 0,
        "department": "house",
        "title": CHANGEOVER,
        "need": acts_words(riders, evening),
        "strictness": "must",
    }
    return [with_question(verdict(line, ASK, DIFFERENT), line, CAN_IT_CHANGE)]
