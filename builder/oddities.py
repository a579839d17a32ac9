"""
Rules that hold for any kind of thing: two on one spot, one fact told differently in two files, a
value far from its neighbours that would be like them in another unit.

Departments say what to look at; each rule is here once.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from builder.confirming import odd
from builder.exchange import Statement
from builder.pack import Finding, Level
from builder.reading.amounts import Amount
from builder.reading.measures import System, shown
from builder.reading.otherwise import otherwise
from builder.reading.problems import Where
from builder.reading.quantities import Length, Quantity, apart
from builder.reading.references import spelling
from builder.reading.values.sentences import sentence_start
from builder.stating import place

ONE_SPOT_M = 0.01
"""Two things nearer than this are at one place: a tape is read to a centimetre at best."""
MOST_COMPARED = 100
"""With so many others a thing is compared: more at one place, or of one fact, tell nothing new."""
UNLIKE = 2.0
"""From this many times its neighbours on, or so many times less, a value is asked about."""
BESIDE_M = 1.0
"""
A panel hangs beside the spot that its place is measured at: half a metre at each end is not held
against a path.
"""
ALIKE = 1.05
"""Read in another unit, it must come within this many times of its neighbours to be asked."""


@dataclass(frozen=True, slots=True)
class Standing:
    """
    A thing at a spot. ``kind`` is what it is in words, ``name`` what it is called; ``height_m`` is
    None where nobody says. [m]
    """

    kind: str
    name: str
    across_m: float
    depth_m: float
    height_m: float | None
    where: Where
    spot_in_words: str
    subject: str = ""


@dataclass(frozen=True, slots=True)
class Named:
    """A quantity and what it is of, such as `the trim of Front truss`."""

    name: str
    quantity: Quantity
    where: Where
    subject: str = ""


def on_one_spot(things: Iterable[Standing]) -> Iterator[Finding]:
    """
    Things of one kind that are at one place, where only one can be: mostly a line was copied, or a
    side is written wrong. Each is told beside the first that is there.
    """
    cells: dict[tuple[str, int, int], list[Standing]] = {}
    for thing in things:
        column, row = round(thing.across_m / ONE_SPOT_M), round(thing.depth_m / ONE_SPOT_M)
        near_by = (
            other
            for x in (column - 1, column, column + 1)
            for y in (row - 1, row, row + 1)
            for other in cells.get((thing.kind, x, y), ())[:MOST_COMPARED]
        )
        first = next((other for other in near_by if one_place(other, thing)), None)
        cells.setdefault((thing.kind, column, row), []).append(thing)
        if first is not None:
            name = sentence_start(first.name)
            yield odd(
                "one-spot",
                f"{name} and {thing.name} are at one spot, {thing.spot_in_words}.",
                thing.where,
                question=" Was a line copied, or is a side, SL or SR, US or DS, written wrong?",
                asks_about=f"{thing.spot_in_words}, as {first.name}",
                subject=thing.subject,
            )


def one_place(first: Standing, second: Standing) -> bool:
    """Whether two things are at one place, as far as anybody says."""
    pairs = [(first.across_m, second.across_m), (first.depth_m, second.depth_m)]
    if first.height_m is not None and second.height_m is not None:
        pairs.append((first.height_m, second.height_m))
    return all(abs(one - other) < ONE_SPOT_M for one, other in pairs)


def told_differently(statements: Sequence[Statement]) -> Iterator[Finding]:
    """
    A fact that two files state, and no two of their statements agree.

    It is told where it is stated the fewest times, in the later of two files that state it alike
    often.
    """
    by_fact: dict[tuple[str, str], dict[str, list[Statement]]] = {}
    for statement in statements:
        key = (statement.fact, spelling(statement.thing))
        stated = by_fact.setdefault(key, {}).setdefault(statement.where.file, [])
        if len(stated) < MOST_COMPARED:
            stated.append(statement)
    for by_file in by_fact.values():
        *others, here = sorted(by_file.values(), key=len, reverse=True)
        for other in others:
            if not any(agree(one, another) for one in here for another in other):
                yield differing(here, other)


def differing(here: Sequence[Statement], other: Sequence[Statement]) -> Finding:
    """One fact in two files that do not agree."""
    first, ours, theirs = here[0], values_in_words(here), values_in_words(other)
    fact = f"the {first.fact} {first.thing}".strip()
    return odd(
        "told-differently",
        f"{first.where.file} says that {fact} is {ours}, and {other[0].where.file} says {theirs}.",
        first.where,
        question=" Which one is right?",
        asks_about=f"{ours} beside {theirs}",
    )


def values_in_words(statements: Sequence[Statement]) -> str:
    """The values of some statements, each once."""
    return " or ".join(dict.fromkeys(statement.text for statement in statements))


def agree(first: Statement, second: Statement) -> bool:
    """Whether two statements can both be true."""
    within = max(first.within, second.within, 0.005)
    if isinstance(first.value, Quantity) and isinstance(second.value, Quantity):
        return apart(amount(first.value), amount(second.value), within) is None
    return first.value == second.value


def amount(quantity: Quantity) -> Amount:
    """
    The first wording of a quantity, with how finely it was written. A height is compared by its
    size: what one file calls the deck's height is a floor so far down in another.
    """
    read = quantity.amounts(quantity.text)[0]
    return Amount(abs(read.si), read.step_si, read.unit)


def path_under_straight(
    path: Named, ends: tuple[str, str], straight_m: float, system: System
) -> Iterator[Finding]:
    """A cable's way that is shorter than the straight line between its ends."""
    if path.quantity.si >= straight_m - BESIDE_M:
        return
    far = shown(Length, straight_m, None, system)[0]
    yield Finding(
        Level.CAUTION,
        "path-under-straight",
        f"{path.name}: a path of {path.quantity.text} is stated, but {ends[0]} and {ends[1]} are"
        f" {far} apart in a straight line. Measure the cable's own way, not the distance.",
        path.subject,
        place(path.where),
    )


def unlike_neighbours(values: Sequence[Named], what: str) -> Iterator[Finding]:
    """
    Values of one kind that are far from the middle of all others, and would be near it in another
    unit or with another decimal point.

    Two others or more that are alike among themselves say what is usual. One other, or others that
    differ as much, say less: then the other reading must come near their middle. What one line
    says twice, such as a beam at both ends, is told once.
    """
    ordered = sorted(values, key=lambda named: named.quantity.si)
    told: set[tuple[str, str]] = set()
    for index, named in enumerate(ordered):
        middle = middle_without(ordered, index)
        if middle <= 0 or not far_from(named.quantity.si, middle):
            continue
        least, greatest = ends_without(ordered, index)
        alike = len(ordered) > 2 and greatest.si <= UNLIKE * least.si
        low, high = (least.si, greatest.si) if alike else (middle, middle)
        question = read_between(named.quantity, low / ALIKE, high * ALIKE)
        if question and (named.name, named.quantity.text) not in told:
            told.add((named.name, named.quantity.text))
            yield unlike(named, question, (least, greatest), what)


def unlike(named: Named, question: str, others: tuple[Quantity, Quantity], what: str) -> Finding:
    """A value that is unlike others, told between the least and the greatest of them."""
    least, greatest = (other.text for other in others)
    between = f"at {least}" if least == greatest else f"between {least} and {greatest}"
    return odd(
        "unlike-neighbours",
        f"{named.name} is {named.quantity.text}, and {what} lie {between}.",
        named.where,
        question=question,
        asks_about=named.quantity.text,
        subject=named.subject,
    )


def ends_without(ordered: Sequence[Named], index: int) -> tuple[Quantity, Quantity]:
    """The least and the greatest of rising values without one of them."""
    last = len(ordered) - 1
    least, greatest = ordered[index == 0], ordered[last - (index == last)]
    return least.quantity, greatest.quantity


def middle_without(ordered: Sequence[Named], index: int) -> float:
    """The median of rising values without one of them; 0 where there is no other."""
    count = len(ordered) - 1
    if count < 1:
        return 0.0
    low, high = (count - 1) // 2, count // 2
    low, high = low + (low >= index), high + (high >= index)
    return (ordered[low].quantity.si + ordered[high].quantity.si) / 2


def read_between(quantity: Quantity, low: float, high: float) -> str:
    """What a quantity would have to be to lie between two values."""
    return otherwise(quantity, lambda si: low <= si <= high)


def far_from(value: float, middle: float) -> bool:
    """Whether a value is more than twice another, or less than half."""
    return value > 0 and not middle / UNLIKE < value < middle * UNLIKE
