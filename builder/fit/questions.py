"""What to ask the house, each question once, ready to send."""

from builder.fit.records import DepartmentQuestions, Verdict
from builder.fit.sentences import QUESTION, fill
from builder.fit.verdicts import asker_words

LINES_BETWEEN = "; "


def questions(verdicts: list[Verdict]) -> list[DepartmentQuestions]:
    """
    What to ask, by department in alphabetical order, each question once, with all the riders' lines
    that ask it.
    """
    departments: dict[str, dict[str, list[str]]] = {}
    for answer in verdicts:
        for one in [answer, *answer["parts"]]:
            if one["question"] != "":
                add_question(departments.setdefault(one["department"], {}), one)
    return [
        {
            "department": name,
            "questions": [with_lines(words, lines) for words, lines in departments[name].items()],
        }
        for name in sorted(departments)
    ]


def add_question(questions_asked: dict[str, list[str]], answer: Verdict) -> None:
    """Add a question with the line that asks it; the line alone where it is asked already."""
    line = quoted_line(answer)
    words = answer["question"]
    if line != "":
        words = words.removesuffix(fill(QUESTION, {"question": "", "asker": line}))
    lines = questions_asked.setdefault(words, [])
    if line not in lines:
        lines.append(line)


def quoted_line(answer: Verdict) -> str:
    """
    The line of the rider that a question quotes at its end, or an empty one where it quotes none.
    """
    line = asker_words(answer)
    quoted = fill(QUESTION, {"question": "", "asker": line})
    return line if answer["question"].endswith(quoted) else ""


def with_lines(words: str, lines: list[str]) -> str:
    """A question with the lines that ask it."""
    quoted = [line for line in lines if line != ""]
    if len(quoted) == 0:
        return words
    return fill(QUESTION, {"question": words, "asker": LINES_BETWEEN.join(quoted)})
