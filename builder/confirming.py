"""
What whoever may has confirmed: odd values that are right, told by a line of the house's own files.

A confirmation stands on the line of the value, and quotes it. It lapses when the value changes, and
counts for no danger.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from builder.pack import Confirmed, Fact, Finding, Level, Place, Section
from builder.reading.nodes import spoken
from builder.reading.numerals import folded
from builder.reading.problems import Where, shortened
from builder.reading.references import records_within
from builder.reading.written import Confirmation, DepartmentFile, Line
from builder.stating import place

Holder = Line | DepartmentFile
GENERAL = ("implausible", "unlike-neighbours")
"""Questions that hold for any field, the more general first."""


@dataclass(frozen=True, slots=True)
class Settled:
    """Findings that still stand, and those that are confirmed."""

    open: tuple[Finding, ...]
    confirmed: tuple[Confirmed, ...]


def settled(findings: Sequence[Finding], files: Sequence[DepartmentFile]) -> Settled:
    """
    Take what is confirmed out of the findings, say of the others on which line they can be
    confirmed, and add one for each confirmation that confirms nothing.
    """
    holders = [
        record
        for file in files
        for record in records_within(file)
        if isinstance(record, Line | DepartmentFile)
    ]
    lines = line_of_each_place(holders)
    still_open: list[Finding] = []
    confirmed: list[Confirmed] = []
    on_line: dict[int, list[Finding]] = {}
    for finding in asked_once(findings):
        holder = lines.get(finding.place) if finding.place else None
        if holder is None:
            still_open.append(finding)
            continue
        on_line.setdefault(id(holder), []).append(finding)
        confirmation = confirmation_of(finding, holder)
        if confirmation is not None:
            confirmed.append(
                Confirmed(without_question(finding), confirmation.by, confirmation.on.isoformat())
            )
        elif can_be_confirmed(finding):
            still_open.append(replace(finding, confirm_on=line_in_words(holder)))
        else:
            still_open.append(finding)
    for holder in holders:
        for confirmation in holder.confirmed:
            still_open += idle(confirmation, on_line.get(id(holder), []))
    return Settled(tuple(still_open), tuple(confirmed))


def asked_once(findings: Sequence[Finding]) -> Iterator[Finding]:
    """
    Findings without the general questions about a value that a closer one is asked about: what does
    not fit beside its neighbours need not be told as unusual too.
    """
    closest: dict[Place, int] = {}
    for finding in findings:
        if finding.place is not None and finding.question:
            near = closest.get(finding.place, 0)
            closest[finding.place] = max(near, closeness(finding))
    for finding in findings:
        nearest = closest.get(finding.place, 0) if finding.place is not None else 0
        if finding.code not in GENERAL or closeness(finding) >= nearest:
            yield finding


def closeness(finding: Finding) -> int:
    """How close to its matter a question is; whatever is not general is closest."""
    return GENERAL.index(finding.code) if finding.code in GENERAL else len(GENERAL)


def odd(
    code: str,
    sentence: str,
    where: Where,
    *,
    question: str = "",
    asks_about: str,
    subject: str = "",
) -> Finding:
    """
    A finding of something that is merely odd, and can be confirmed.

    Parameters
    ----------
    code
        A heading of the page of problems.
    sentence
        What is odd, beside what.
    where
        The place of the value in question.
    question
        What else it could be, with a blank before it; empty where nobody can guess.
    asks_about
        The value in question as its author wrote it, and what it was held against: the
        confirmation lapses when either changes.
    subject
        The key of the item concerned.
    """
    return Finding(
        Level.CAUTION,
        code,
        sentence + question,
        subject,
        place(where),
        asks_about=asks_about,
        question=question,
    )


def without_question(finding: Finding) -> Finding:
    """A finding that asks no more."""
    statement = finding.sentence.removesuffix(finding.question)
    return replace(finding, sentence=statement, question="")


def can_be_confirmed(finding: Finding) -> bool:
    """Whether a finding is of a value that is merely odd."""
    return finding.level is not Level.DANGER and finding.asks_about != ""


def line_in_words(holder: Holder) -> str:
    """
    Where a confirmation of what a line says is written: `beams[3] (R3)`, or the file's own keys.
    """
    path, name = spoken(holder.path_in_file), getattr(holder, "name", "")
    if not path:
        return "the left margin, as a key of the file"
    return f"{path} ({name})" if isinstance(name, str) and name else path


def line_of_each_place(holders: Iterable[Holder]) -> Mapping[Place, Holder]:
    """The innermost line that each place of the files stands on."""
    by_file: dict[int, list[Holder]] = {}
    for holder in holders:
        by_file.setdefault(id(holder.places_in_file), []).append(holder)
    found: dict[Place, Holder] = {}
    for sharing in by_file.values():
        by_path = {holder.path_in_file: holder for holder in sharing}
        # The longest paths come last, so that a value wins its place from the group it begins.
        for path, where in sorted(sharing[0].places_in_file.items(), key=lambda item: len(item[0])):
            inner = next(
                (path[:end] for end in range(len(path), -1, -1) if path[:end] in by_path), None
            )
            spot = place(where)
            if inner is not None and spot is not None:
                found[spot] = by_path[inner]
    return found


def confirmation_of(finding: Finding, holder: Holder) -> Confirmation | None:
    """The confirmation that a finding has on its own line, None where it has none."""
    for confirmation in holder.confirmed if can_be_confirmed(finding) else ():
        if confirmation.what == finding.code and quotes(confirmation, finding):
            return confirmation
    return None


def quotes(confirmation: Confirmation, finding: Finding) -> bool:
    """Whether a confirmation quotes the value that a finding asks about."""
    value = confirmation.value
    return value is not None and folded(value) == folded(finding.asks_about)


def idle(confirmation: Confirmation, on_line: Sequence[Finding]) -> Iterator[Finding]:
    """What is wrong with a confirmation that confirms nothing on its line."""
    alike = [finding for finding in on_line if finding.code == confirmation.what]
    odd = [finding for finding in alike if can_be_confirmed(finding)]
    where = place(confirmation.where("what"))
    if any(quotes(confirmation, finding) for finding in odd):
        return
    if odd:
        yield Finding(Level.CAUTION, "confirmation-lapsed", lapsed(confirmation, odd), place=where)
    elif alike:
        yield Finding(
            Level.CAUTION, "confirmation-refused", refusal(confirmation, alike), place=where
        )
    else:
        there = " and ".join(dict.fromkeys(shortened(finding.code) for finding in on_line))
        sentence = (
            f"The confirmation of {shortened(confirmation.what)} confirms nothing: there is no such"
            f" finding here. {f'There is {there}.' if there else 'Delete it, or mend its code.'}"
        )
        yield Finding(Level.NOTE, "confirmation-idle", sentence, place=where)


def lapsed(confirmation: Confirmation, odd: Sequence[Finding]) -> str:
    """What is told where the value is no longer the one that was confirmed."""
    code = shortened(confirmation.what)
    now = " and ".join(dict.fromkeys(shortened(finding.asks_about) for finding in odd))
    if confirmation.value is None:
        return (
            f"The confirmation of {code} quotes no value, so nobody can tell whether it still"
            f" holds. Add value: {now}."
        )
    return (
        f"The confirmation of {code} was for {shortened(confirmation.value)}, and now it is {now}."
        " It counts for nothing until somebody looks again and quotes that."
    )


def refusal(confirmation: Confirmation, alike: Sequence[Finding]) -> str:
    """What is told where somebody confirms what nobody may."""
    danger = any(finding.level is Level.DANGER for finding in alike)
    why = "is a danger" if danger else "does not add up"
    return (
        f"The confirmation of {shortened(confirmation.what)} counts for nothing: that {why}, and"
        " only what is merely odd can be confirmed. Mend what the finding tells."
    )


def with_confirmations(section: Section, confirmed: Sequence[Confirmed]) -> Section:
    """A section whose confirmed facts say who confirmed them, and when."""
    words = {
        entry.finding.place: f"confirmed by {entry.by} on {entry.on}"
        for entry in confirmed
        if entry.finding.place
    }
    if not words:
        return section
    return replace(
        section,
        items=tuple(
            replace(item, facts=tuple(confirmed_fact(fact, words) for fact in item.facts))
            for item in section.items
        ),
    )


def confirmed_fact(fact: Fact, words: Mapping[Place, str]) -> Fact:
    """A fact, with who confirmed it where somebody did."""
    said = words.get(fact.place, "") if fact.place else ""
    return replace(fact, confirmed=said) if said else fact
