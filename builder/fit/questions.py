"""What to ask the house and the acts, each question once, ready to send."""

from builder.fit.records import ActQuestions, DepartmentQuestions, Verdict
from builder.fit.sentences import QUESTION, fill
from builder.fit.verdicts import asker_words

LINES_BETWEEN = "; "
Asked = dict[str, dict[str, list[str]]]
"""By whom they are for: questions, each with the riders' lines that ask it."""


def questions(verdicts: list[Verdict]) -> list[DepartmentQuestions]:
    """
    What to ask the house, by department in alphabetical order, each question once, with all the
    riders' lines that ask it.
    """
    departments: Asked = {}
    for one in with_parts(verdicts):
        add_question(departments, one["department"], one, one["question"])
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
    lines = asked.setdefault(to, {}).setdefault(words, [])
    if line not in lines:
        lines.append(line)


def quoted_line(answer: Verdict, words: str) -> str:
    """
    The line of the rider that a question quotes at its end, or an empty one where it quotes none.
    """
    line = asker_words(answer)
    quoted = fill(QUESTION, {"question": "", "asker": line})
    return line if words.endswith(quoted) else ""


def in_words(asked: dict[str, list[str]]) -> list[str]:
    """Questions with the lines that ask them."""
    return [with_lines(words, lines) for words, lines in asked.items()]


def with_lines(words: str, lines: list[str]) -> str:
    """A question with the lines that ask it."""
    quoted = [line for line in lines if line != ""]
    if len(quoted) == 0:
        return words
    return fill(QUESTION, {"question": words, "asker": LINES_BETWEEN.join(quoted)})
