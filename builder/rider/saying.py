"""Verdicts in words: plain text for a terminal, Markdown for an e-mail, JSON for programs. All can be read without colour."""

import json

from builder.cautions import EVERYWHERE
from builder.fit.verdicts import NOT_NEEDED, Record
from builder.render.light import harmless

MARKS = {"fits": "+", "fits, with a note": "~", "short": "X", "ask": "?", "not needed": "."}


def as_text(result: Record) -> str:
    """All verdicts by act, each on a line of its own with its reason below, then the questions."""
    lines = [f"{result['venue']}, revision {result['revision']['number']} of {result['revision']['on']}: {result['verdict'].upper()}", ""]
    for act in acts(result):
        lines.append(act["head"])
        for found in act["verdicts"]:
            lines += text_lines(found)
        lines.append("")
    lines += question_lines(result)
    return "\n".join([*lines, *result["cautions"], EVERYWHERE]) + "\n"


def as_json(result: Record) -> str:
    """The same for programs: keys sorted, lists in order."""
    return json.dumps({**result, "caution": EVERYWHERE}, sort_keys=True, ensure_ascii=False, indent=1) + "\n"


def acts(result: Record) -> list[Record]:
    """The acts with their verdicts, then the day where there is something to say of it."""
    parts = [
        {
            "head": act["act"] + (f", rider {act['revision']}" if act["revision"] else "") + f": {act['verdict'].upper()}",
            "verdicts": [found for found in result["verdicts"] if found["act"] == act["act"]],
        }
        for act in result["acts"]
    ]
    known = [act["act"] for act in result["acts"]]
    day = [found for found in result["verdicts"] if found["act"] not in known]
    return [*parts, {"head": "The day, all acts together", "verdicts": day}] if day else parts


def text_lines(found: Record) -> list[str]:
    """One verdict."""
    should = " (should)" if found["strictness"] == "should" else ""
    margin = f" [{' / '.join(part for part in found['margin'] if part)}]" if found["margin"][0] else ""
    lines = [f"  {MARKS[found['verdict']]} {found['verdict']}: {found['title']}, {found['need']}{should}{margin}"]
    if found["verdict"] != NOT_NEEDED:
        lines += [f"      {line}" for line in details(found)]
    return lines


def details(found: Record) -> list[str]:
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


def question_lines(result: Record) -> list[str]:
    """The questions by department, ready to send."""
    if not result["questions"]:
        return []
    lines = ["Questions to the house", ""]
    for group in result["questions"]:
        lines += [f"  {group['department'].capitalize()}", *(f"  - {question}" for question in group["questions"]), ""]
    return lines


def as_markdown(result: Record) -> str:
    """The same for an e-mail: one table an act, then the questions. What a rider or a house wrote is escaped."""
    safe = harmless
    parts = [f"# {safe(result['venue'])}, revision {safe(result['revision']['number'])}: {result['verdict']}"]
    for act in acts(result):
        rows = [markdown_row(found) for found in act["verdicts"]]
        parts.append("\n".join([f"## {safe(act['head'])}", "", "| verdict | asked | margin | why |", "|---|---|---|---|", *rows]))
    for group in result["questions"]:
        parts.append("\n".join([f"## Questions: {safe(group['department'])}", "", *(f"* {safe(question)}" for question in group["questions"])]))
    return "\n\n".join([*parts, *(safe(words) for words in result["cautions"]), EVERYWHERE]) + "\n"


def markdown_row(found: Record) -> str:
    """One verdict as a row."""
    asked = f"{found['title']}, {found['need']}"
    margin = " / ".join(part for part in found["margin"] if part)
    return f"| {found['verdict']} | {harmless(asked)} | {harmless(margin)} | {harmless(' '.join(details(found)))} |"
