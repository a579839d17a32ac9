"""
What can be seen from the text alone without refusing it.

Two units that disagree, a value that is implausible for its field, placeholders, a condition hidden
in prose, an old check or a future one.
"""

import re
from collections.abc import Iterable
from datetime import date

from builder.reading.dated import Dated
from builder.reading.fields import Reviewed, mark_of, values_of
from builder.reading.in_part import Between
from builder.reading.measures import shown
from builder.reading.otherwise import otherwise, otherwise_counted
from builder.reading.problems import shortened
from builder.reading.prose import closed, parts, sides
from builder.reading.quantities import Quantity, disagreement
from builder.reading.references import records_within
from builder.reading.remarks import Remark, excerpt, spaced
from builder.reading.written import Plausible, Rated, Verification, Written

PLACEHOLDERS = re.compile(
    r"\b(tbc|tbd|tba|todo|fixme|xxx+|lorem ipsum|n/k|to be (?:confirmed|advised|announced))\b",
    re.IGNORECASE,
)
# What somebody else wrote, such as an older sheet. A lone ' within words is an apostrophe.
ESTIMATES = ("about", "within", "set from", "set to")
QUOTED = re.compile(
    r""""[^"]*"|“[^”]*”|„[^“”]*[“”]|«[^»]*»|(?<!\w)'[^']*'(?!\w)|(?<!\w)‘[^’]*’(?!\w)"""
)
HIDDEN_CONDITION = re.compile(
    r"\b(broken|faulty|defective|not working|out of order|out of action|out of use"
    r"|being (?:repaired|replaced|renewed|refurbished)|(?:awaiting|under) repair|removed)\b"
    r"|\b\d+ (?:of them )?working\b",
    re.IGNORECASE,
)


def review(description: Written, *, on: date, stale_after_days: int) -> tuple[Remark, ...]:
    """Everything the text of one file gives cause to look at again, as of a day."""
    remarks: list[Remark] = []
    for record in records_within(description):
        if isinstance(record, Verification):
            remarks += ageing(record, on=on, stale_after_days=stale_after_days)
        remarks += estimated(record)
        for reviewed in values_of(record):
            if isinstance(reviewed.value, str):
                remarks += [*unfinished(reviewed), *closed(reviewed, on)]
                remarks += [*sides(reviewed), *parts(reviewed)]
            elif plain_number(reviewed.value) is not None:
                remarks += [*disagreeing(reviewed), *implausible(reviewed)]
    return tuple(remarks)


def estimated(record: Written) -> Iterable[Remark]:
    """A rating or a limit that somebody only estimates, or writes as if it could be chosen."""
    for name, field in type(record).model_fields.items():
        value, key = getattr(record, name), field.alias or name
        is_estimate = isinstance(value, Between) and value.manner in ESTIMATES
        if is_estimate and mark_of(field, Rated) is not None:
            sentence = (
                f"{spaced(key)} says {shortened(value.value)}. What may be carried stands on a"
                " plate, in a letter or on a maker's sheet: look it up. Until then only the lower"
                " end counts for a show."
            )
            yield Remark("caution", "rating-estimated", sentence, record.where(key))


def disagreeing(reviewed: Reviewed) -> Iterable[Remark]:
    """A quantity written in two units that do not say the same."""
    value = reviewed.value
    if not isinstance(value, Quantity) or disagreement(value) is None or value.second is None:
        return ()
    first, second = (shown(type(value), si)[0] for si in (value.si, value.second))
    sentence = (
        f"{spaced(reviewed.key)} says {shortened(value.text)}, but that is {first} against"
        f" {second}. Which one is right?"
    )
    return (Remark("caution", "units-disagree", sentence, reviewed.where),)


def implausible(reviewed: Reviewed) -> Iterable[Remark]:
    """A quantity outside the range its field usually has."""
    value, bounds = reviewed.value, mark_of(reviewed.field, Plausible)
    number = plain_number(value)
    if bounds is None or number is None or bounds.holds(number):
        return ()
    if isinstance(value, Quantity):
        text = value.text
        low, high = (shown(type(value), si)[0] for si in (bounds.low, bounds.high))
        question = otherwise(value, bounds.holds)
    else:
        text = f"{number:,g}"
        low, high = f"{bounds.low:,g}", f"{bounds.high:,g}"
        question = otherwise_counted(number, bounds.holds)
    usual = f"are {high} or less" if bounds.low == 0 else f"lie between {low} and {high}"
    sentence = f"{spaced(reviewed.key)} is {shortened(text)}. That is unusual here: most {usual}."
    return (
        Remark(
            "caution",
            "implausible",
            sentence + question,
            reviewed.where,
            asks_about=text,
            question=question,
        ),
    )


def plain_number(value: object) -> float | None:
    """What a quantity or a count is in SI or by itself; None for anything else."""
    if isinstance(value, Quantity):
        return value.si
    return value if isinstance(value, int | float) else None


def unfinished(reviewed: Reviewed) -> Iterable[Remark]:
    """Placeholder text, a question in prose, a condition in prose."""
    value = reviewed.value
    if not isinstance(value, str):
        return
    quoted = f"{spaced(reviewed.key)} says {shortened(value)}."
    if PLACEHOLDERS.search(in_own_words(value)):
        yield Remark(
            "caution",
            "placeholder",
            f"{quoted} If nobody knows yet, write 'unknown' so that it shows as a task.",
            reviewed.where,
        )
    elif value.rstrip().endswith("?"):
        yield Remark(
            "note",
            "question-in-prose",
            f"{quoted} If nobody knows yet, write 'unknown' in the field it is about.",
            reviewed.where,
            asks_about=excerpt(value),
        )
    if HIDDEN_CONDITION.search(value) and getattr(reviewed.record, "condition", "") == "in service":
        advice = (
            "Write it under condition (limited, or out of service), so that counts and figures"
            " know it."
        )
        yield Remark(
            "caution",
            "condition-in-prose",
            f"{quoted} {advice}",
            reviewed.where,
            asks_about=excerpt(value),
        )


def in_own_words(text: str) -> str:
    """A text without what it quotes; all of it where it is nothing but a quotation."""
    own = QUOTED.sub("", text)
    return own if any(char.isalnum() for char in own) else text


def on_or_in(checked: Dated) -> str:
    """On a day, or in a month or year."""
    return f"on {checked}" if checked.is_day else f"in {checked}"


def ageing(verification: Verification, *, on: date, stale_after_days: int) -> Iterable[Remark]:
    """A check older than the house's own limit, or dated after the revision."""
    oldest_days = (on - verification.on.first).days
    if oldest_days < 0:
        when = on_or_in(verification.on)
        sentence = f"Checked {when}, which is after this revision ({on}). Is the date right?"
        return (Remark("caution", "verified-later", sentence, verification.where("on")),)
    if oldest_days > stale_after_days:
        perhaps = "" if verification.on.is_day else "perhaps "
        sentence = (
            f"Last checked {on_or_in(verification.on)}, {perhaps}{oldest_days} days before this"
            f" revision. The house's own limit is {stale_after_days} days."
        )
        return (Remark("caution", "stale", sentence, verification.where("on")),)
    return ()
