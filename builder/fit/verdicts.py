"""The words of a verdict, its record, and what makes it complete."""

from typing import Literal

from builder.fit.records import Asker, Fact, Item, Lack, Line, Mender, Value, Verdict, Word
from builder.fit.sentences import ASKER, LACKING_FACT, QUESTION, RIDER_LINE, fill
from builder.reading.values.sentences import within_sentence

FITS: Literal["fits"] = "fits"
NOTED: Literal["fits, with a note"] = "fits, with a note"
SHORT: Literal["short"] = "short"
ASK: Literal["ask"] = "ask"
NOT_NEEDED: Literal["not needed"] = "not needed"
RANK: dict[str, int] = {NOT_NEEDED: 0, FITS: 1, NOTED: 2, ASK: 3, SHORT: 4}


def verdict(line: Line, word: Word, reason: str) -> Verdict:
    """A verdict on a requirement, without a fact yet."""
    return {
        "act": line["act"],
        "line": line["line"],
        "department": line["department"],
        "title": line["title"],
        "need": line["need"],
        "strictness": line["strictness"],
        "verdict": word,
        "reason": reason,
        "fact": None,
        "margin": ["", ""],
        "notes": [],
        "remedy": "",
        "who": "",
        "question": "",
        "act_question": "",
        "lacks": [],
        "parts": [],
        "leans_on": [],
    }


def with_remedy(answer: Verdict, mender: Mender) -> Verdict:
    """A short verdict that says what would mend it, and who could."""
    answer["remedy"] = mender["remedy"]
    answer["who"] = mender["who"]
    return answer


def with_question(answer: Verdict, line: Line, question: str) -> Verdict:
    """An ask that carries its question, the rider's own line quoted."""
    answer["question"] = question_of(line, question)
    return answer


def question_of(line: Line, question: str) -> str:
    """A question with the rider's own line quoted."""
    return fill(QUESTION, {"question": question, "asker": asker_words(line)})


def with_questions(answer: Verdict, line: Line, lacks: list[Lack]) -> Verdict:
    """An ask that hangs on several things: their questions in one, and each by itself."""
    questions: list[str] = []
    for lack in lacks:
        if lack["question"] != "" and lack["question"] not in questions:
            questions.append(lack["question"])
    answer["lacks"] = [lack for lack in lacks if lack["question"] != ""]
    return with_question(answer, line, " ".join(questions))


def lacks_of(questions: list[str]) -> list[Lack]:
    """What questions ask for, each once; nothing but the question tells it."""
    lacks: list[Lack] = []
    for question in questions:
        if all(lack["question"] != question for lack in lacks):
            lacks.append({"key": question, "words": "", "question": question})
    return lacks


def asked_for(line: Line, asker: Asker, reason: str, key: str, words: str) -> Verdict:
    """An ask for one thing that the house has not said, by its key and in words."""
    answer = asked(line, asker, reason)
    answer["lacks"] = [{"key": key, "words": words, "question": asker["question"]}]
    return answer


def lack_words(item: str, label: str) -> str:
    """A fact of the house as a question names it."""
    return fill(LACKING_FACT, {"item": item, "label": within_sentence(label)})


def asked(line: Line, asker: Asker, reason: str) -> Verdict:
    """An ask for a reason, with the question that belongs to what is asked."""
    return with_question(verdict(line, ASK, reason), line, asker["question"])


def of_the_act(answer: Verdict) -> Verdict:
    """An ask whose question is to the act and not to the house."""
    answer["act_question"] = answer["question"]
    answer["question"] = ""
    answer["lacks"] = []
    return answer


def asker_words(line: Line) -> str:
    """A line of a rider as a question quotes it."""
    return fill(
        ASKER,
        {
            "act": line["act"],
            "line": rider_line_words(line["line"]),
            "title": line["title"],
            "need": line["need"],
        },
    )


def rider_line_words(line: int) -> str:
    """The number of a rider's line as a question quotes it; empty where there is none."""
    if line > 0:
        return fill(RIDER_LINE, {"line": str(line)})
    return ""


def fact_of(value: Value, item: Item) -> Fact:
    """The house's fact as a verdict shows it."""
    return {
        "key": value["key"],
        "item": item["name"],
        "label": value["label"],
        "text": value["text"],
        "standing": value["standing"],
        "also": value["also"],
        "page": value["page"],
        "checked": value["checked"],
    }


def settled(answer: Verdict) -> Verdict:
    """A fit with something to know becomes a fit with a note."""
    if answer["verdict"] == FITS and len(answer["notes"]) > 0:
        answer["verdict"] = NOTED
    return answer


def gravity(word: Word) -> int:
    """How grave a verdict is; the gravest is told first."""
    return RANK[word]
