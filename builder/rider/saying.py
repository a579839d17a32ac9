"""
Verdicts in words: plain text for a terminal, Markdown for an e-mail, JSON for programs.

All can be read without colour.
"""

import json
from functools import partial
from typing import TypedDict

from builder.cautions import EVERYWHERE
from builder.document import Bullets, Heading, Paragraph
from builder.fit.counting import count_words
from builder.fit.records import DayRow, Result, Verdict
from builder.fit.verdicts import FITS, NOT_NEEDED, RANK
from builder.render import terminal
from builder.render.light import Grid, light_markdown

MARKS = {"fits": "+", "fits, with a note": "~", "short": "X", "ask": "?", "not needed": "."}
COLUMNS = 100
folded = partial(terminal.folded, columns=COLUMNS)
TO_THE_HOUSE = "Questions to the house"
TO_THE_ACTS = "Questions to the acts"
DAY = "The day, each thing as early as it can be"


class ActPart(TypedDict):
    """An act, or the day, with its verdicts, the gravest first."""

    head: str
    verdicts: list[Verdict]


def as_text(result: Result) -> str:
    """
    What decides first: how many of each, then the verdicts of each act from short to fits with the
    house's fact below each, then the questions.
    """
    head = (
        f"{result['venue']}, revision {result['revision']['number']} of {result['revision']['on']}:"
        f" {result['verdict'].upper()}"
    )
    lines = [*folded(head), *folded(counted(result))]
    for words in (*result["not_read"], *result["judged_in"]):
        lines += folded(words)
    lines.append("")
    for act in acts(result):
        lines += folded(act["head"])
        for found in act["verdicts"]:
            lines += text_lines(found)
        lines.append("")
    lines += day_lines(result)
    lines += question_lines(result)
    for caution in (*result["cautions"], EVERYWHERE):
        lines += folded(caution)
    return "\n".join(lines) + "\n"


def counted(result: Result) -> str:
    """How many verdicts of each word, the gravest first."""
    if not result["verdicts"]:
        return "Nothing is asked."
    parts = count_words([answer["verdict"] for answer in result["verdicts"]])
    return f"{', '.join(parts)}."


def gravest_first(verdicts: list[Verdict]) -> list[Verdict]:
    """What stops a show before what fits; in the rider's order among equals."""
    return sorted(verdicts, key=lambda found: -RANK[found["verdict"]])


def as_json(result: Result) -> str:
    """The same for programs: keys sorted, lists in order."""
    return (
        json.dumps({**result, "caution": EVERYWHERE}, sort_keys=True, ensure_ascii=False, indent=1)
        + "\n"
    )


def acts(result: Result) -> list[ActPart]:
    """The acts with their verdicts, then the day where there is something to say of it."""
    parts: list[ActPart] = [
        {
            "head": (
                act["act"]
                + (f", rider {act['revision']}" if act["revision"] else "")
                + f": {act['verdict'].upper()}"
            ),
            "verdicts": gravest_first(
                [found for found in result["verdicts"] if found["act"] == act["act"]]
            ),
        }
        for act in result["acts"]
    ]
    known = [act["act"] for act in result["acts"]]
    day = [found for found in result["verdicts"] if found["act"] not in known]
    if day:
        parts.append({"head": "The day, all acts together", "verdicts": gravest_first(day)})
    return parts


def text_lines(found: Verdict, indent: str = "  ") -> list[str]:
    """One verdict, and below it its parts, set in."""
    should = " (should)" if found["strictness"] == "should" else ""
    margin = (
        f" [{' / '.join(part for part in found['margin'] if part)}]" if found["margin"][0] else ""
    )
    lines = folded(
        f"{MARKS[found['verdict']]} {found['verdict']}: {found['title']},"
        f" {found['need']}{should}{margin}",
        indent,
        "  ",
    )
    if found["verdict"] != NOT_NEEDED:
        for detail in details(found)[1 if plain(found) else 0 :]:
            lines += folded(detail, f"{indent}    ", "  ")
    return [
        *lines,
        *(line for part in parts_of(found) for line in text_lines(part, f"{indent}    ")),
    ]


def parts_of(found: Verdict) -> list[Verdict]:
    """The parts of a verdict, the gravest first; a fact that stands above is not told again."""
    return [
        {**part, "fact": None} if part["fact"] == found["fact"] else part
        for part in gravest_first(found["parts"])
    ]


def plain(found: Verdict) -> bool:
    """Whether a fit's reason only says its margin again."""
    return bool(
        found["verdict"] == FITS
        and found["fact"]
        and found["margin"][0]
        and found["reason"] == f"{found['margin'][0].lstrip('+')} to spare."
    )


def details(found: Verdict) -> list[str]:
    """Reason, fact, notes and remedy of a verdict."""
    fact = found["fact"]
    lines = [found["reason"]]
    if fact:
        also = f" ({fact['also']})" if fact["also"] else ""
        shown = f"{fact['text']}{also}" if fact["text"] else fact["standing"]
        checked = f"; checked {fact['checked']}" if fact["checked"] else ""
        lines.append(f"House: {fact['item']}, {fact['label']}: {shown} [{fact['key']}]{checked}")
    lines += [f"Note: {note}" for note in found["notes"]]
    if found["remedy"]:
        lines.append(f"Remedy: {found['remedy']} Who could: {found['who']}.")
    return lines


def day_lines(result: Result) -> list[str]:
    """The day as a table in columns."""
    if not result["day"]:
        return []
    rows = [("start", "end", "long", "what", "whose"), *(day_cells(row) for row in result["day"])]
    widths = [max(len(row[column]) for row in rows) for column in range(5)]
    lines = [
        "  ".join(f"{cell:{width}}" for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in rows
    ]
    last = " " * (sum(widths[:4]) + 8)
    return [DAY, "", *(part for line in lines for part in folded(line, "  ", last)), ""]


def day_cells(row: DayRow) -> tuple[str, str, str, str, str]:
    """A row of the day: start, end, how long, what, whose."""
    return row["start"], row["end"], row["long"], row["what"], row["whose"]


def question_lines(result: Result) -> list[str]:
    """The questions to the house by department, then those to the acts, ready to send."""
    house = [
        (group["department"].capitalize(), group["questions"]) for group in result["questions"]
    ]
    acts = [(group["act"], group["questions"]) for group in result["act_questions"]]
    return [*group_lines(TO_THE_HOUSE, house), *group_lines(TO_THE_ACTS, acts)]


def group_lines(head: str, groups: list[tuple[str, list[str]]]) -> list[str]:
    """Questions in groups under a head; nothing where there are none."""
    if not groups:
        return []
    lines = [head, ""]
    for name, questions in groups:
        lines += folded(name, "  ", "  ")
        for question in questions:
            lines += folded(f"- {question}", "  ", "  ")
        lines.append("")
    return lines


def as_markdown(result: Result) -> str:
    """
    The same for an e-mail: one table an act, then the questions.

    What a rider or a house wrote is escaped.
    """
    blocks: list[Heading | Paragraph | Bullets | Grid] = [
        Heading(
            1, f"{result['venue']}, revision {result['revision']['number']}: {result['verdict']}"
        ),
        *map(Paragraph, (*result["not_read"], *result["judged_in"])),
    ]
    for act in acts(result):
        rows = [row for whole in act["verdicts"] for row in rows_of(whole)]
        blocks += [Heading(2, act["head"]), Grid(("verdict", "asked", "margin", "why"), rows)]
    if result["day"]:
        columns = ("start", "end", "long", "what", "whose")
        blocks += [Heading(2, DAY), Grid(columns, [day_cells(row) for row in result["day"]])]
    for group in result["questions"]:
        head = f"{TO_THE_HOUSE}: {group['department']}"
        blocks += [Heading(2, head), Bullets(group["questions"])]
    for asked in result["act_questions"]:
        blocks += [Heading(2, f"{TO_THE_ACTS}: {asked['act']}"), Bullets(asked["questions"])]
    return light_markdown([*blocks, *map(Paragraph, (*result["cautions"], EVERYWHERE))])


def rows_of(found: Verdict) -> list[tuple[str, ...]]:
    """One verdict and its parts as rows of a table."""
    return [
        (
            each["verdict"],
            f"{each['title']}, {each['need']}",
            " / ".join(part for part in each["margin"] if part),
            " ".join(details(each)),
        )
        for each in (found, *parts_of(found))
    ]
