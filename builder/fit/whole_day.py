"""What the acts of a day come to together: what adds up, the deck, and the clock."""

from builder.fit.arrangements.in_doubt import has_doubts
from builder.fit.arrangements.in_place import judged_in_place
from builder.fit.arrangements.records import Evening
from builder.fit.arrangements.telling import changeover_asked
from builder.fit.arrangements.views import has_choices, view_of
from builder.fit.clock.day import the_day
from builder.fit.clock.records import DayAnswer
from builder.fit.closed.told import may_be_closed
from builder.fit.needs.comparing import compared
from builder.fit.needs.twice import asks_twice
from builder.fit.needs.within import has_composed
from builder.fit.plots.together import plots_together
from builder.fit.records import FitPack, RiderAsked, Verdict
from builder.fit.requirements import rule_of
from builder.fit.show_day import day_requirements, stays_on_deck
from builder.fit.verdicts import RANK

PLANNED = ("hang", "trim", "plot")


def add_day(day: DayAnswer, riders: list[RiderAsked], evening: Evening, pack: FitPack) -> None:
    """Add what the acts of a day come to together on an evening."""
    sums = [
        judged_in_place(place, pack, lambda view: day_sums(riders, view))
        for place in evening["places"]
    ]
    day["verdicts"] = [*changeover_asked(riders, evening), *gravest_of(sums)]
    for index in range(len(evening["places"])):
        acts = acts_in(riders, evening, index)
        place = evening["places"][index]
        day["verdicts"].extend(
            judged_in_place(place, pack, lambda view: beside_others(riders, acts, view))  # noqa: B023
        )
    if has_clock(riders):
        clock = the_day(riders, view_of(pack, evening["places"][0]["configuration"]))
        day["verdicts"].extend(clock["verdicts"])
        day["rows"] = clock["rows"]


def day_sums(riders: list[RiderAsked], view: FitPack) -> list[Verdict]:
    """What adds up over the day."""
    return [
        compared(need, rule_of(need["what"], view), view) for need in day_requirements(riders, view)
    ]


def gravest_of(runs: list[list[Verdict]]) -> list[Verdict]:
    """Of the same verdicts in several places, each in the place where it is the gravest."""
    gravest = runs[0]
    for run in runs:
        gravest = [
            other if RANK[other["verdict"]] > RANK[one["verdict"]] else one
            for one, other in zip(gravest, run, strict=True)
        ]
    return gravest


def beside_others(riders: list[RiderAsked], acts: list[str], view: FitPack) -> list[Verdict]:
    """What some acts find on deck of the others'."""
    return [
        *stays_on_deck(riders, acts, view),
        *(plots_together(riders, acts, view) if has_plan(riders) else []),
    ]


def acts_in(riders: list[RiderAsked], evening: Evening, index: int) -> list[str]:
    """The acts that play in one of an evening's places."""
    return [rider["act"] for rider, own in zip(riders, evening["own"], strict=True) if own == index]


def has_plan(riders: list[RiderAsked]) -> bool:
    """Whether a show comes with a hang plan or a stage plot."""
    return any(
        need["sort"] in PLANNED or (need["sort"] == "if" and need["then"]["sort"] in PLANNED)
        for rider in riders
        for need in rider["requirements"]
    )


def has_work(riders: list[RiderAsked]) -> bool:
    """Whether a show asks for crew, or for something to be done."""
    return any(
        need["sort"] == "call" or need["sort"] == "task"
        for rider in riders
        for need in rider["requirements"]
    )


def has_clock(riders: list[RiderAsked]) -> bool:
    """Whether a show tells of its day."""
    return any(rider["clock"] is not None for rider in riders)


def has_spaces(pack: FitPack) -> bool:
    """Whether a house has several stages."""
    return len(pack["spaces"]) > 0


def needs_more(riders: list[RiderAsked], pack: FitPack) -> bool:
    """
    Whether a show comes with a plan or with its day's clock, asks for crew, one thing twice or what
    is made of other needs, or the house may be closed on its date, does not know whether something
    of it works, or chooses some value, or has several stages.

    A page loads the rules of these only then, so nothing else may call them.
    """
    asks_more = has_plan(riders) or has_clock(riders) or any(asks_twice(rider) for rider in riders)
    asks_more = asks_more or has_composed(riders) or has_work(riders)
    asks_more = asks_more or may_be_closed(pack) or has_spaces(pack)
    return asks_more or has_doubts(pack) or has_choices(pack)
