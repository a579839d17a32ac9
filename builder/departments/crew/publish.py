"""From ``crew.yml`` to the section of crew."""

from collections.abc import Iterator
from dataclasses import replace

from builder.department import Published, Surroundings
from builder.departments.crew.costs import day_figures
from builder.departments.crew.description import (
    Crew,
    DayCall,
    LeastCrew,
    Overtime,
    Pay,
    Role,
    WorkDay,
)
from builder.departments.crew.figures import at_call, least_figures, rate_figures
from builder.departments.crew.findings import findings
from builder.departments.crew.laying_out import Terms, terms_of
from builder.departments.crew.working_day import call_figures, overtime_words
from builder.exchange import CallRules
from builder.pack import Fact, Item, Section, Standing, Value, in_a_row
from builder.reading.absent import Absent, listed
from builder.reading.in_part import told_as
from builder.stating import Stater, place

WORK_AT_HEIGHT = (
    "Numbers of people for planning. Who may work at height, lift loads, drive or connect power is"
    " decided by the local law, by certificates and by the house's competent person, not by a"
    " number here."
)


def publish(crew: Crew, around: Surroundings) -> Published:
    """The facts of all people and calls, and what is worked out of them."""
    stater = around.stater(crew)
    rules = around.exchange.calls or CallRules()
    section = Section(
        key="crew",
        title="Crew",
        items=tuple(items(crew, rules, stater)),
        cautions=(WORK_AT_HEIGHT,) if crew.people not in NOT_TOLD else (),
        verified=stater.inherited,
    )
    return Published(section, tuple(findings(crew, rules, around.ageing)))


NOT_TOLD = (Absent.NOT_STATED, Absent.UNKNOWN)


def items(crew: Crew, rules: CallRules, stater: Stater) -> Iterator[Item]:
    """Everything about crew, in the order of the page."""
    yield stater.item(crew, "crew.whole", "whole", "Crew", leave_out=("note",))
    people = listed(crew.people)
    roles = stater.named(people, "crew", "role", leave_out=("pay",))
    for item, role in zip(roles, people, strict=True):
        yield replace(item, figures=(at_call(role, item.key),))
    for item, role in zip(roles, people, strict=True):
        if role.pay is not None:
            yield rate_item(role, role.pay, item.key.rpartition(".")[2], rules, stater)
    leasts = listed(crew.least)
    told = stater.counted(leasts, "crew", "least", name_key="when")
    for item, least in zip(told, leasts, strict=True):
        facts = (*item.facts, *people_facts(least, item.key))
        yield replace(item, facts=facts, figures=tuple(least_figures(least, item.key)))
    yield from stater.counted(listed(crew.operating), "crew", "operating", name_key="what")
    for count, each in enumerate(listed(crew.overtime), 1):
        yield stater.item(each, f"crew.overtime.{count}", "overtime", step_name(each))
    yield from stater.named(listed(crew.calls), "crew", "call-kind")
    terms = terms_of(crew, rules)
    days = listed(crew.days)
    for item, day in zip(stater.named(days, "crew", "day"), days, strict=True):
        yield replace(item, figures=tuple(day_figures(day, terms, item.key)))
        yield from day_calls(day, item, terms, stater)


def rate_item(role: Role, pay: Pay, last: str, rules: CallRules, stater: Stater) -> Item:
    """What one person of a role costs, under the role's own name."""
    item = stater.item(pay, f"crew.rate.{last}", "rate", role.name)
    return replace(item, figures=tuple(rate_figures(role, pay, rules, item.key)))


def step_name(each: Overtime) -> str:
    """What a step of overtime is called on the page: when it holds."""
    return overtime_words(each).partition(" ")[2].partition(" ")[2]


def people_facts(least: LeastCrew, key: str) -> Iterator[Fact]:
    """Who the least crew is, as one fact."""
    if isinstance(least.people, Absent):
        return
    parts = tuple(
        f"{told_as(each.count)} {each.who}" + (f" for {each.for_each}" if each.for_each else "")
        for each in least.people
    )
    value = Value(in_a_row(parts), parts=parts)
    yield Fact(
        f"{key}.people", "People", Standing.STATED, value, place=place(least.where("people"))
    )


def day_calls(day: WorkDay, item: Item, terms: Terms, stater: Stater) -> Iterator[Item]:
    """The calls of a day, each with what is worked out of it."""
    for count, call in enumerate(day.calls, 1):
        key = f"{item.key}.{count}"
        told = stater.item(call, key, "day-call", call_name(call))
        yield replace(told, figures=tuple(call_figures(call, day, terms, key)))


def call_name(call: DayCall) -> str:
    """A call of a day in words: who, and what for."""
    return f"{call.who}, {call.what_for}" if call.what_for else call.who
