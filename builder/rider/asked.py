"""From a rider as written to plain requirements in SI, or to problems with their lines."""

import difflib
from collections.abc import Iterable, Iterator, Mapping
from typing import Any, cast

from builder.fit.clock.times import of_the_show
from builder.fit.records import Requirement, RiderAsked
from builder.fit.wording import clock as clock_words
from builder.reading.numerals import Unreadable
from builder.reading.problems import Problem, Refused
from builder.reading.quantities import (
    Across,
    Angle,
    Area,
    Current,
    Depth,
    Duration,
    Length,
    Level,
    LoadPerArea,
    LoadPerLength,
    Mass,
    Quantity,
)
from builder.reading.reader import read
from builder.reading.references import records_within
from builder.reading.words import count as whole_number
from builder.reading.words import yes_no
from builder.rider.description import Alternative, Clock, Load, Need, Rider
from builder.rider.hanging import Hang
from builder.rider.hangs import hang_record, said
from builder.rider.plot import plot_complaints, plot_need, plot_record
from builder.rider.timing import timing_of
from builder.rules import BETWEEN, Rule

Record = dict[str, Any]
QUANTITIES: Mapping[str, type[Quantity]] = {
    "length": Length,
    "mass": Mass,
    "load": LoadPerArea,
    "mass per length": LoadPerLength,
    "area": Area,
    "current": Current,
    "level": Level,
    "duration": Duration,
    "angle": Angle,
}
WORDED = ("permission", "yes")


def rider_of(text: str, *, file: str, rules: Mapping[str, Rule]) -> RiderAsked:
    """
    A rider's text as the plain record that the check takes.

    Raises
    ------
    Refused
        With every problem in the text.
    """
    return asked_of(read(text, file=file, kind=Rider), rules)


def asked_of(rider: Rider, rules: Mapping[str, Rule]) -> RiderAsked:
    """
    A rider that was read as the plain record that the check takes.

    Raises
    ------
    Refused
        With every line that no rule answers, and every value that cannot be.
    """
    asking = Asking(rider, rules)
    requirements = list(asking.requirements())
    if asking.problems:
        raise Refused(asking.problems)
    issue = rider.revision
    return {
        "act": rider.act,
        "revision": f"{issue.number} of {issue.on.isoformat()}" if issue else "",
        "stays_m": rider.stays_on_deck.si if rider.stays_on_deck else None,
        "clock": timing_of(rider.clock, asking.weekday(rider.clock)) if rider.clock else None,
        "requirements": cast(list[Requirement], requirements),
    }


def is_unknown(text: str) -> bool:
    """Whether an amount says that nobody knows it yet; ``?`` was the word before."""
    return text.lower() in ("unknown", "?")


def refuse_negative(quantity: Quantity) -> float:
    """
    The SI value of a quantity that cannot be below zero. Lengths are read by the same rule as
    positions, which can.

    Raises
    ------
    Unreadable
        `number-out-of-range`.
    """
    if quantity.si < 0 and not isinstance(quantity, Level | Across | Depth | Angle):
        raise Unreadable("is below zero", "number-out-of-range", "write it without the minus")
    return quantity.si


def acts_differ(riders: Iterable[RiderAsked]) -> None:
    """
    Refuse two riders of one name: their verdicts could not be told apart.

    Raises
    ------
    ValueError
        If two riders name the same act.
    """
    names = [rider["act"] for rider in riders]
    twice = sorted({name for name in names if names.count(name) > 1})
    if twice:
        raise ValueError(f"riders must name different acts, got {', '.join(twice)} twice")


def one_date(riders: Iterable[Rider]) -> None:
    """
    Refuse riders of several dates: they make no show day. A rider without a date goes with any.

    Raises
    ------
    ValueError
        If two riders play on different dates.
    """
    dates = sorted({rider.plays.isoformat() for rider in riders if rider.plays})
    if len(dates) > 1:
        raise ValueError(
            f"riders must play on one date, got {', '.join(dates)}; check each date by itself"
        )


class Asking:
    """One rider on its way to requirements; collects what is wrong on the way."""

    def __init__(self, rider: Rider, rules: Mapping[str, Rule]) -> None:
        self.rider = rider
        self.rules = rules
        self.problems: list[Problem] = []

    def requirements(self) -> Iterator[Record]:
        """Every requirement, in the rider's order of sections."""
        self.below_zero()
        for need in self.rider.needs:
            yield from self.need(need)
        for load in self.rider.power:
            yield self.load(load)
        for hang in self.rider.hangs:
            yield from self.hang(hang)
        yield from self.plot()
        yield from self.trucks()
        yield from self.clock()
        yield from self.level()
        for index, words in enumerate(self.rider.questions):
            line = self.rider.where("questions", index).line
            yield self.blank(line, "question", "other", "A question", words, words=words)

    def below_zero(self) -> None:
        """Note every quantity outside ``needs`` that is below zero."""
        for record in records_within(self.rider):
            for key, value in record.written():
                if isinstance(value, Quantity):
                    try:
                        refuse_negative(value)
                    except Unreadable as wrong:
                        self.wrong(record, key, value.text, wrong.reason, wrong.code, wrong.advice)

    def blank(
        self, line: int, sort: str, department: str, title: str, need: str, **more: object
    ) -> Record:
        """A requirement with what every one has."""
        return {
            "act": self.rider.act,
            "line": line,
            "sort": sort,
            "department": department,
            "title": title,
            "need": need,
            "strictness": "must",
            "carried": "house",
            "configuration": self.rider.configuration or "",
            **more,
        }

    def need(self, need: Need) -> Iterator[Record]:
        """A line of ``needs``."""
        if need.any_of and need.what:
            self.wrong(
                need,
                "any of",
                "",
                "stands beside what",
                "need-unclear",
                "write either what, or any of with a list",
            )
        elif need.any_of:
            parts = [found for each in need.any_of if (found := self.ruled(each, need))]
            if parts:
                title = " or ".join(part["title"].lower() for part in parts)
                words = " or ".join(part["need"] for part in parts)
                yield {
                    **parts[0],
                    "sort": "any",
                    "title": title[:1].upper() + title[1:],
                    "need": words,
                    "line": need.where().line,
                    "any": parts,
                }
        elif need.what is None:
            self.wrong(
                need,
                "what",
                "",
                "is missing here",
                "missing-key",
                "write what is needed, or any of with a list",
            )
        elif found := self.ruled(need, need):
            yield found

    def ruled(self, line: Need | Alternative, need: Need) -> Record | None:
        """A requirement that a rule answers, or None where the line has a problem."""
        rule = self.rules.get(" ".join((line.what or "").lower().split()))
        if rule is None:
            near = difflib.get_close_matches(
                (line.what or "").lower(), list(self.rules), n=1, cutoff=0.6
            )
            advice = (
                f"did you mean '{near[0]}'?"
                if near
                else (
                    "the guide to riders lists what can be asked; put anything else under questions"
                )
            )
            self.wrong(
                line,
                "what",
                line.what or "",
                "is nothing that can be checked",
                "need-unknown",
                advice,
            )
            return None
        ways = [
            way
            for way, value in (
                ("at least", line.at_least),
                ("at most", line.at_most),
                ("between", line.between),
                ("is", line.is_),
            )
            if value
        ]
        if len(ways) > 1:
            advice = (
                "write between for the least and the most"
                if BETWEEN in rule.ways
                else f"write one of: {', '.join(rule.ways)}"
            )
            self.wrong(
                line, "what", line.what or "", f"says {' and '.join(ways)}", "need-unclear", advice
            )
            return None
        if len(ways) != 1 or ways[0] not in rule.ways:
            self.wrong(
                line,
                "what",
                line.what or "",
                "does not say how much",
                "need-unclear",
                f"write one of: {', '.join(rule.ways)}",
            )
            return None
        return self.valued(line, need, rule, ways[0])

    def valued(self, line: Need | Alternative, need: Need, rule: Rule, way: str) -> Record | None:
        """The requirement with its value in SI."""
        texts = (
            list(line.between)
            if line.between
            else [line.at_least or line.at_most or line.is_ or ""]
        )
        record = self.blank(
            line.where().line,
            "rule",
            rule.department,
            rule.title,
            " to ".join(texts) if way == "between" else f"{way} {texts[0]}",
        )
        if way == "is" and texts[0].lower() in ("yes", "no", "true", "false"):
            record["need"] = "yes" if yes_no(texts[0]) else "no"
        values = [self.number(line, rule, way, text) for text in texts]
        if None in values:
            return None
        low, high = values[0], values[-1]
        unknown = any(is_unknown(text) for text in texts)
        in_order = not (isinstance(low, float) and isinstance(high, float)) or low <= high
        if way == "between" and not unknown and not in_order:
            self.wrong(
                line,
                "between",
                texts[0],
                "is more than the second",
                "need-unclear",
                "write the least first",
            )
            return None
        record |= {
            "what": rule.key,
            "way": "unknown" if unknown else way,
            "low": low if isinstance(low, float) else 0.0,
            "high": high if isinstance(high, float) else 0.0,
            "words": low if isinstance(low, str) else "",
            "strictness": need.strictness,
            "carried": need.carried_by,
        }
        return record

    def number(
        self, line: Need | Alternative, rule: Rule, way: str, text: str
    ) -> float | str | None:
        """A value in SI, a yes or no, or None where it cannot be read."""
        try:
            if is_unknown(text):
                return 0.0
            if rule.kind in WORDED:
                return "yes" if yes_no(text) else "no"
            if rule.kind == "count":
                return float(whole_number(text))
            return refuse_negative(QUANTITIES[rule.kind].parse(text))
        except Unreadable as unreadable:
            self.wrong(line, way, text, unreadable.reason, unreadable.code, unreadable.advice)
            return None

    def load(self, load: Load) -> Record:
        """A load of ``power``."""
        parts = [
            (
                f"{load.count} × {load.current.text}"
                if load.phases == "single"
                else f"{load.current.text} on each of three phases"
            )
        ]
        parts += [
            load.system or "",
            load.connector or "",
            "apart from dimmers" if load.apart_from_dimmers else "",
        ]
        parts += [
            (
                f"within {load.within.text} of {load.of or ''}".strip()
                if load.within
                else f"at {load.of}"
                if load.of
                else ""
            )
        ]
        if load.phases == "three" and load.count != 1:
            advice = "add phases: single, or write a line for each feed of three phases"
            self.wrong(
                load,
                "count",
                str(load.count),
                "counts single-phase circuits, and this load is on three phases",
                "need-unclear",
                advice,
            )
        if load.within and not load.of:
            self.wrong(
                load,
                "within",
                load.within.text,
                "does not say of what",
                "need-unclear",
                "add of: with a place of the house",
            )
        return self.blank(
            load.where().line,
            "power",
            "power",
            f"Power for {load.for_}",
            ", ".join(part for part in parts if part),
            strictness=load.strictness,
            carried=load.carried_by,
            current_a=load.current.si,
            count=float(load.count),
            phases=load.phases,
            system=load.system or "",
            connector=load.connector or "",
            within_m=load.within.si if load.within else None,
            of=load.of or "",
            apart=load.apart_from_dimmers,
            use=load.for_,
        )

    def hang(self, hang: Hang) -> Iterator[Record]:
        """A hang, and how high it should go."""
        record, line = hang_record(hang), hang.where().line
        if any(hang.name == other.name for other in self.rider.hangs if other is not hang):
            self.wrong(
                hang,
                "name",
                hang.name,
                "is the name of two hangs",
                "need-unclear",
                "give each a name of its own",
            )
        yield self.blank(
            line,
            "hang",
            "rigging",
            f"Hang: {hang.name}",
            said(hang, record),
            strictness=hang.strictness,
            **record,
        )
        if hang.trim:
            below_m = hang.below_steel.m if hang.below_steel else None
            yield self.blank(
                hang.where("trim").line,
                "trim",
                "rigging",
                f"Trim of {hang.name}",
                f"underside at {hang.trim.text}",
                strictness=hang.strictness,
                trim_m=hang.trim.m,
                below_m=below_m,
            )

    def plot(self) -> Iterator[Record]:
        """The stage plot, as one requirement."""
        if not self.rider.plot:
            return
        for record, key, value, reason, advice in plot_complaints(self.rider):
            self.wrong(record, key, value, reason, "need-unclear", advice)
        yield self.blank(
            self.rider.where("plot").line,
            "plot",
            "stage",
            "Stage plot",
            plot_need(self.rider),
            rectangles=plot_record(self.rider),
        )

    def trucks(self) -> Iterator[Record]:
        """The trucks and the largest case."""
        trucks = self.rider.trucks
        if trucks is None:
            return
        case = trucks.largest_case
        sizes = [("long", trucks.length), ("high", trucks.height), ("gross", trucks.weight)]
        case_sizes = (
            [("wide", case.width), ("high", case.height), ("heavy", case.weight)] if case else []
        )
        words = [f"{trucks.count}", *(f"{size.text} {name}" for name, size in sizes if size)]
        said = ", ".join(words)
        if any(size for _, size in case_sizes):
            said += "; largest case " + ", ".join(
                f"{size.text} {name}" for name, size in case_sizes if size
            )
        values = {
            "length": trucks.length,
            "height": trucks.height,
            "weight": trucks.weight,
            "case_width": case.width if case else None,
            "case_height": case.height if case else None,
            "case_weight": case.weight if case else None,
        }
        numbers = {name: value.si if value else None for name, value in values.items()}
        yield self.blank(
            trucks.where().line,
            "trucks",
            "access",
            "Trucks and the largest case",
            said,
            strictness=trucks.strictness,
            count=float(trucks.count),
            **numbers,
        )

    def clock(self) -> Iterator[Record]:
        """Load-in and the end of the show."""
        clock = self.rider.clock
        if clock is None:
            return
        weekday = self.weekday(clock)
        day = weekday.lower()
        if clock.load_in:
            yield self.blank(
                clock.where("load in").line,
                "load in",
                "house",
                "Load-in",
                f"from {clock.load_in.text}",
                time_s=clock.load_in.si,
                day=day,
            )
        if clock.ends:
            said = f"ends at {clock.ends.text}" + (f" on a {weekday}" if weekday else "")
            yield self.blank(
                clock.where("ends").line,
                "ends",
                "house",
                "End of the show",
                said,
                time_s=clock.ends.si,
                day=day,
            )
        elif clock.on_stage and clock.set_:
            end_s = of_the_show(clock.on_stage.si) + clock.set_.si
            said = f"ends at {clock_words(end_s)}, from {clock.on_stage.text} for {clock.set_.text}"
            said += f" on a {weekday}" if weekday else ""
            yield self.blank(
                clock.where("on stage").line,
                "ends",
                "house",
                "End of the show",
                said,
                time_s=end_s,
                day=day,
            )
        parts = clock.changeover_parts
        if parts and parts.lines_a_minute == 0:
            self.wrong(
                parts,
                "lines a minute",
                "0",
                "is no rate",
                "number-out-of-range",
                "write how many lines your crew checks in a minute",
            )

    def weekday(self, clock: Clock) -> str:
        """The day of the week: as written, or that of the date, which must not be another."""
        by_date = f"{self.rider.plays:%A}" if self.rider.plays else ""
        if clock.day and by_date and clock.day != by_date:
            reason = f"is not the day of the week of {self.rider.plays}, which is a {by_date}"
            self.wrong(
                clock,
                "day",
                clock.day,
                reason,
                "day-differs",
                "mend the one that is wrong, or leave the day out",
            )
        return clock.day or by_date

    def level(self) -> Iterator[Record]:
        """The level that the show expects."""
        level = self.rider.level
        if level is None:
            return
        parts = [
            level.at.text,
            level.metric or "",
            f"over {level.over.text}" if level.over else "",
            f"at the {level.place}" if level.place else "",
        ]
        yield self.blank(
            level.where().line,
            "level",
            "house",
            "Level of the show",
            ", ".join(part for part in parts if part),
            strictness=level.strictness,
            level_db=level.at.si,
            weighting=level.at.weighting or "",
            metric=level.metric or "",
            over_s=level.over.si if level.over else None,
            place=level.place or "",
        )

    def wrong(self, line: Any, key: str, value: str, reason: str, code: str, advice: str) -> None:
        """Note a problem at a line of the rider."""
        self.problems.append(Problem(line.where(key), key, value, reason, code, advice))
