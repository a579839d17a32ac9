"""
What to ask the house and the acts, ready to send: each thing that is not said once, with all the
riders' lines that hang on it.
"""

from typing import TypedDict

from builder.fit.records import ActQuestions, DepartmentQuestions, Verdict
from builder.fit.sentences import PLEASE_SAY, QUESTION, fill
from builder.fit.verdicts import asker_words

LINES_BETWEEN = "; "


class Wanted(TypedDict):
    """
    One thing that is asked for: what it is in words, where that is known; the questions that ask
    for it, the latest of each kind last; and the riders' lines that ask them.
    """

    words: str
    questions: list[str]
    lines: list[str]


Asked = dict[str, dict[str, Wanted]]
"""By whom they are for: what is asked for, by its key."""


def questions(verdicts: list[Verdict]) -> list[DepartmentQuestions]:
    """
    What to ask the house, by department in alphabetical order, each thing once, with all the
    riders' lines that ask for it.
    """
    departments: Asked = {}
    for one in with_parts(verdicts):
        if len(one["lacks"]) == 0:
            add_question(departments, one["department"], one, one["question"])
        elif one["question"] != "":
            add_lacks(departments, one["department"], one)
    return [
        {"department": name, "questions": in_words(departments[name])}
        for name in sorted(departments)
    ]


def act_questions(verdicts: list[Verdict]) -> list[ActQuestions]:
    """What to ask each act, in the order of the verdicts, in the same way."""
    acts: Asked = {}
    for one in with_parts(verdicts):
        add_question(acts, one["act"], one, one["act_question"])
    return [{"act": name, "questions": in_words(acts[name])} for name in acts]


def with_parts(verdicts: list[Verdict]) -> list[Verdict]:
    """Verdicts, each with its parts after it."""
    return [one for answer in verdicts for one in [answer, *answer["parts"]]]


def add_question(asked: Asked, to: str, answer: Verdict, words: str) -> None:
    """Add a question, if it is one, with the line that asks it; the line alone where it stands."""
    if words == "":
        return
    line = quoted_line(answer, words)
    if line != "":
        words = words.removesuffix(fill(QUESTION, {"question": "", "asker": line}))
    add_wanted(asked, to, words, {"words": "", "questions": [words], "lines": [line]})


def add_lacks(asked: Asked, to: str, answer: Verdict) -> None:
    """Add all that an ask hangs on, each by itself."""
    for lack in answer["lacks"]:
        wanted: Wanted = {
            "words": lack["words"],
            "questions": [lack["question"]],
            "lines": [asker_words(answer)],
        }
        add_wanted(asked, to, lack["key"], wanted)


def add_wanted(asked: Asked, to: str, key: str, more: Wanted) -> None:
    """Add something that is asked for, to what asks for the same already."""
    wanted = asked.setdefault(to, {})
    if key not in wanted:
        wanted[key] = more
        return
    known = wanted[key]
    if known["words"] == "":
        known["words"] = more["words"]
    known["questions"] = joined(known["questions"], more["questions"])
    known["lines"] = joined(known["lines"], more["lines"])


def joined(first: list[str], second: list[str]) -> list[str]:
    """Two lists in one, each entry once."""
    return [*first, *[entry for entry in second if entry not in first]]


def quoted_line(answer: Verdict, words: str) -> str:
    """
    The line of the rider that a question quotes at its end, or an empty one where it quotes none.
    """
    line = asker_words(answer)
    quoted = fill(QUESTION, {"question": "", "asker": line})
    return line if words.endswith(quoted) else ""


def in_words(asked: dict[str, Wanted]) -> list[str]:
    """Questions with the lines that ask them; what reads the same is one."""
    lines: dict[str, list[str]] = {}
    for wanted in asked.values():
        words = question_for(wanted)
        lines[words] = joined(lines.get(words, []), wanted["lines"])
    return [with_lines(words, lines[words]) for words in lines]


def question_for(wanted: Wanted) -> str:
    """
    One question for one thing: the only one that is asked; of several what the house has not said,
    in words; where nothing but questions tells it, the last, which asks for the most.
    """
    if len(wanted["questions"]) > 1 and wanted["words"] != "":
        return fill(PLEASE_SAY, {"fact": wanted["words"]})
    return wanted["questions"][len(wanted["questions"]) - 1]


def with_lines(words: str, lines: list[str]) -> str:
    """A question with the lines that ask it."""
    quoted = [line for line in lines if line != ""]
    if len(quoted) == 0:
        return words
    return fill(QUESTION, {"question": words, "asker": LINES_BETWEEN.join(quoted)})
