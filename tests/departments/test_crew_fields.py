"""
What published packs, and people who read them, say of crew, each with the key that holds it. Read
from packs that houses publish and from riders (common practice, no source): union or not, minimum
calls, meals, overtime, turnaround, heads of department, who runs what, loaders, riggers, rates with
their date, ordering deadlines, the least crew by event; staff by role, certificates, volunteers.
"""

from typing import Any, get_args

import pytest

from builder.departments.crew.description import Crew
from builder.departments.house.description import House
from builder.reading.written import Written

FIELDS = (
    ("union or not, and which local", "house.yml crew.agreement"),
    ("who sends the crew", "crew.yml people.from_whom"),
    ("shortest call, load-in and load-out", "house.yml crew.shortest_call"),
    ("shortest call of a performance, a rehearsal, a recall", "crew.yml calls.shortest"),
    ("shortest time charged for one role", "crew.yml people.pay.least"),
    ("longest day of one crew", "house.yml crew.longest_call"),
    ("after how long a meal is due", "house.yml crew.meal_after"),
    ("how long a meal break is", "house.yml crew.meal_break"),
    ("whether a meal is paid", "house.yml crew.meal_paid"),
    ("a missed meal by a factor", "crew.yml meal_missed.times"),
    ("a missed meal by an amount a head", "crew.yml meal_missed.amount"),
    ("short breaks", "house.yml crew.short_break"),
    ("after how long a short break is due", "house.yml crew.short_break_after"),
    ("overtime after so many hours", "crew.yml overtime.after"),
    ("overtime by its factor", "crew.yml overtime.times"),
    ("premium hours of the night", "crew.yml overtime.from"),
    ("premium hours end", "crew.yml overtime.until"),
    ("premium days", "crew.yml overtime.days"),
    ("turnaround", "house.yml crew.turnaround"),
    ("least heads of department", "crew.yml least.people.count"),
    ("least crew by event or by what is done", "crew.yml least.kind"),
    ("who pays the least crew", "crew.yml least.paid_by"),
    ("ratio of riggers up and down", "crew.yml least.people.for_each"),
    ("who may run house gear", "crew.yml operating.by"),
    ("whether visitors may run it", "crew.yml operating.visitors"),
    ("what they must hold to run it", "crew.yml operating.asks"),
    ("loaders apart from hands", "crew.yml people.apart"),
    ("rate and currency", "crew.yml people.pay.amount"),
    ("unit of the rate", "crew.yml people.pay.per"),
    ("date of the rate", "crew.yml people.pay.since"),
    ("end of the rate", "crew.yml people.pay.until"),
    ("tax on the rate", "crew.yml people.pay.tax"),
    ("ordering deadline", "house.yml crew.ordered_by"),
    ("ordering deadline of one role", "crew.yml people.ordered_by"),
    ("whom to order from", "crew.yml ordered_from"),
    ("cancelling a call", "crew.yml cancelled_by"),
    ("staff by role", "crew.yml people.name"),
    ("what they can do", "crew.yml people.skill"),
    ("how many come with the house", "crew.yml people.there"),
    ("whether these are in the rent", "crew.yml people.there_terms"),
    ("how many can be called", "crew.yml people.to_call"),
    ("when they are there", "crew.yml people.works"),
    ("certificates of forklift drivers and riggers", "crew.yml people.holds"),
    ("volunteers", "crew.yml people.volunteers"),
    ("a usual day's calls", "crew.yml days.calls.count"),
    ("a fee of the house on top of labour, in percent", ""),
)
"""What is published, and its key; an empty one where there is none."""
FILES: dict[str, type[Written]] = {"crew.yml": Crew, "house.yml": House}


def record_in(annotation: Any) -> type[Written] | None:
    """The record that a field holds, by itself, in a list, or where it may be absent."""
    if isinstance(annotation, type):
        return annotation if issubclass(annotation, Written) else None
    return next((found for part in get_args(annotation) if (found := record_in(part))), None)


def is_key(home: str) -> bool:
    """Whether a file's description has a key."""
    file, path = home.split(" ")
    record: type[Written] | None = FILES[file]
    for key in path.split("."):
        spoken = {
            field.alias or name: field
            for name, field in (record.model_fields if record else {}).items()
        }
        if key not in spoken:
            return False
        record = record_in(spoken[key].annotation)
    return True


@pytest.mark.parametrize(("what", "home"), [each for each in FIELDS if each[1]])
def test_each_published_field_has_its_key(what: str, home: str) -> None:
    assert is_key(home), what


def test_at_least_95_percent_of_what_is_published_is_typed() -> None:
    typed = [what for what, home in FIELDS if home and is_key(home)]
    assert len(typed) / len(FIELDS) >= 0.95
    assert not is_key("crew.yml people.nothing")
