"""
Riders and a pack in, verdicts and questions out.

This is the whole of the check; the page in the browser runs its twin.
"""

from typing import Any

from builder.fit.clock.day import the_day
from builder.fit.clock.hours import ends_before_curfew, load_in_after
from builder.fit.comparing import compared, section_of
from builder.fit.hangs.plan import hangs_for_all
from builder.fit.loudness import level_asked
from builder.fit.placing import power_for_all
from builder.fit.plots.stage_plot import stage_plot
from builder.fit.plots.together import plots_together
from builder.fit.show_day import day_requirements, stays_on_deck
from builder.fit.verdicts import ASK, NOT_NEEDED, RANK, Record, verdict
from builder.fit.way_in import trucks_get_in

THE_DAY = "The day"
HUNG = ("hang", "trim")


def fit(pack: Record, riders: list[Record]) -> Record:
    """
    The verdicts on every requirement of every rider, and on the day.

    ``pack`` is what :func:`builder.fit.published.fit_record` makes, a rider what
    :func:`builder.rider.asked.asked` makes.
    """
    requirements = [requirement for rider in riders for requirement in rider["requirements"]]
    loads = power_for_all(
        [requirement for requirement in requirements if requirement["sort"] == "power"], pack
    )
    hangs = hangs_for_all(
        [requirement for requirement in requirements if requirement["sort"] in HUNG], pack
    )
    verdicts: list[Record] = []
    for requirement in requirements:
        together = (
            loads
            if requirement["sort"] == "power"
            else hangs
            if requirement["sort"] in HUNG
            else None
        )
        verdicts.append(judged(requirement, pack) if together is None else together.pop(0))
    for requirement in day_requirements(riders, pack):
        verdicts.append(judged(requirement, pack))
    day = the_day(riders, pack)
    verdicts = [
        *verdicts,
        *stays_on_deck(riders, pack),
        *plots_together(riders, pack),
        *day["verdicts"],
    ]
    return {
        "venue": pack["venue"],
        "revision": pack["revision"],
        "acts": [
            {
                "act": rider["act"],
                "revision": rider["revision"],
                "verdict": overall(verdicts, rider["act"]),
            }
            for rider in riders
        ],
        "verdict": overall(verdicts, ""),
        "verdicts": verdicts,
        "day": day["rows"],
        "questions": questions(verdicts),
        "cautions": cautions(verdicts, pack),
    }


def judged(requirement: Record, pack: Record) -> Record:
    """The verdict on one requirement."""
    sort = requirement["sort"]
    if sort == "any":
        return any_of(requirement, pack)
    if sort == "question":
        found = verdict(requirement, ASK, "The rider asks.")
        found["question"] = requirement["words"]
        return found
    if sort == "ends":
        return ends_before_curfew(requirement, section_of(pack, "house"))
    if sort == "load in":
        return load_in_after(requirement, section_of(pack, "house"))
    if sort == "level":
        return level_asked(requirement, section_of(pack, "house"), section_of(pack, "sound"))
    if sort == "plot":
        return stage_plot(requirement, pack)
    if sort == "trucks":
        return trucks_get_in(requirement, section_of(pack, "access"))
    return compared(requirement, rule_of(requirement["what"], pack), pack)


def rule_of(key: str, pack: Record) -> Record:
    """
    The rule that a requirement names.

    The rider's reader knows the same rules, so it is there; a pack of another edition may lack it.
    """
    for rule in pack["rules"]:
        if rule["key"] == key:
            return dict(rule)
    return {
        "section": "",
        "question": "Does the house have " + key + "?",
        "legal": False,
        "kind": "",
        "remedy": "",
        "who": "",
    }


def any_of(requirement: Record, pack: Record) -> Record:
    """Alternatives: the best verdict of them is the verdict."""
    found = [judged(each, pack) for each in requirement["any"]]
    chosen = found[0]
    for other in found:
        if RANK[other["verdict"]] < RANK[chosen["verdict"]]:
            chosen = other
    chosen["reason"] = chosen["title"] + ", " + chosen["need"] + ": " + chosen["reason"]
    for name in ("act", "line", "title", "need", "strictness", "department"):
        chosen[name] = requirement[name]
    return chosen


def overall(verdicts: list[Record], act: str) -> str:
    """The worst verdict of an act, or of all. What only should be so does not make a show short."""
    worst = NOT_NEEDED
    for found in verdicts:
        if act in ("", found["act"]):
            word = found["verdict"]
            if word == "short" and found["strictness"] == "should":
                word = "fits, with a note"
            if RANK[word] > RANK[worst]:
                worst = word
    return worst


def questions(verdicts: list[Record]) -> list[Record]:
    """
    What to ask, by department in alphabetical order, each question once, with all the riders' lines
    that ask it.
    """
    groups: dict[str, dict[str, list[str]]] = {}
    for found in [each for whole in verdicts for each in (whole, *whole["parts"])]:
        if found["question"] != "":
            line = quoted_line(found)
            words = (
                found["question"][: len(found["question"]) - len(line) - 4]
                if line != ""
                else found["question"]
            )
            lines = groups.setdefault(found["department"], {}).setdefault(words, [])
            if line not in lines:
                lines.append(line)
    return [
        {
            "department": name,
            "questions": [with_lines(words, groups[name][words]) for words in groups[name]],
        }
        for name in sorted(groups)
    ]


def quoted_line(found: Record) -> str:
    """
    The line of the rider that a question quotes at its end, or an empty one where it quotes none.
    """
    line = ", rider line " + str(found["line"]) if found["line"] > 0 else ""
    whole = found["act"] + line + ": " + found["title"] + ", " + found["need"]
    return whole if found["question"][-len(whole) - 4 :] == " (" + whole + ".)" else ""


def with_lines(words: str, lines: list[str]) -> str:
    """A question with the lines that ask it."""
    quoted = [line for line in lines if line != ""]
    return words if len(quoted) == 0 else words + " (" + "; ".join(quoted) + ".)"


def cautions(verdicts: list[Record], pack: Record) -> list[str]:
    """
    The cautions of the departments that answered or are asked, in the pack's order, each once.
    """
    found: list[str] = []
    for section in pack["sections"]:
        for words in section["cautions"]:
            if words not in found and any(answers(section, each) for each in verdicts):
                found.append(words)
    return found


def answers(section: Record, found: Record) -> bool:
    """
    Whether a verdict shows a fact of a section, or is of its department: what is only asked has
    figures in its reason too.
    """
    return bool(
        found["department"] == section["key"]
        or (found["fact"] is not None and found["fact"]["key"].split(".")[0] == section["key"])
    )


def counts(result: Record) -> Record:
    """How many verdicts of each word."""
    words: dict[str, Any] = dict.fromkeys(RANK, 0)
    for found in result["verdicts"]:
        words[found["verdict"]] += 1
    return words
