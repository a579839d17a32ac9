"""
What the supports of a hung body carry: a beam on level supports that can pull and not push, and the
same with each support slack in turn.
"""

from builder.fit.verdicts import Record

LEAST_APART_M = 0.01
PLUMB_M = 0.000001
ROUNDING = 0.000000001
MOST_STEPS = 300
TIPS = "its weight does not hang between its supports, so it would tip or lift off one of them"
UNRESOLVED = "one of its supports would lift, and what the others then carry was not found"


def cases_of(loads: list[Record], places_m: list[float]) -> Record:
    """
    What each support carries, case by case in the order of the supports: level first, then each
    support of three or more slack. [kg]

    A load is ``from_m``, ``to_m`` (the same for a load at one place) and ``kg``. Without cases,
    ``why`` says what stands against them.
    """
    total_kg, centre_m = weighed(loads)
    order = sorted(range(len(places_m)), key=lambda index: places_m[index])
    ordered = [places_m[index] for index in order]
    if len(ordered) == 1:
        return {"cases": [[total_kg]], "why": ""}
    alone = standing(total_kg, centre_m, ordered)
    if alone["why"] != "":
        return {"cases": [], "why": alone["why"]}
    found = (
        [alone["carried"]]
        if len(alone["carried"]) > 0
        else beam_cases(loads, ordered, total_kg, centre_m)
    )
    if len(found) == 0:
        return {"cases": [], "why": UNRESOLVED}
    return {"cases": [in_order(case, order) for case in found], "why": ""}


def weighed(loads: list[Record]) -> list[float]:
    """The whole load and its centre. [kg], [m]"""
    total_kg, moment_kgm = 0.0, 0.0
    for load in loads:
        total_kg += load["kg"]
        moment_kgm += load["kg"] * ((load["from_m"] + load["to_m"]) / 2)
    return [total_kg, moment_kgm / total_kg if total_kg > 0 else 0.0]


def in_order(case: list[float], order: list[int]) -> list[float]:
    """A case in rising order of place, put into the order the supports were given."""
    found = [0.0] * len(order)
    for position in range(len(order)):
        found[order[position]] = case[position]
    return found


def standing(total_kg: float, centre_m: float, places_m: list[float]) -> Record:
    """
    The cases that need no beam: nothing hangs, all hangs under an outermost support, or nothing can
    hold it.
    """
    last = len(places_m) - 1
    if total_kg <= 0:
        return {"why": "", "carried": [0.0] * len(places_m)}
    if centre_m < places_m[0] - PLUMB_M or centre_m > places_m[last] + PLUMB_M:
        return {"why": TIPS, "carried": []}
    for index in (0, last):
        if abs(centre_m - places_m[index]) <= PLUMB_M:
            return {
                "why": "",
                "carried": [total_kg if each == index else 0.0 for each in range(len(places_m))],
            }
    return {"why": "", "carried": []}


def beam_cases(
    loads: list[Record], places_m: list[float], total_kg: float, centre_m: float
) -> list[list[float]]:
    """
    The level case, then each support of three or more let go where the others still hold the body;
    none where a case is not resolved.
    """
    bends = curvatures(places_m)
    pull_kg = [
        pulled(loads, places_m, bends["curvature"], support) for support in range(len(places_m))
    ]
    found = [resolved(pull_kg, bends["stiffness"], total_kg)]
    for gone in range(len(places_m) if len(places_m) > 2 else 0):
        keep = [each for each in range(len(places_m)) if each != gone]
        alone = standing(total_kg, centre_m, [places_m[each] for each in keep])
        if alone["why"] == "":
            carried = (
                alone["carried"]
                if len(alone["carried"]) > 0
                else without(pull_kg, bends["stiffness"], gone, keep, total_kg)
            )
            found.append(
                [
                    0.0 if each == gone else carried[keep.index(each)]
                    for each in range(len(places_m))
                ]
                if len(carried) > 0
                else []
            )
    return found if all(len(case) > 0 for case in found) else []


def without(
    pull_kg: list[float], stiffness: list[list[float]], gone: int, keep: list[int], total_kg: float
) -> list[float]:
    """
    What the others carry with one support let go: its share goes over to them as the beam's
    stiffness has it.
    """
    share = [stiffness[each][gone] / stiffness[gone][gone] for each in keep]
    pulls = [pull_kg[keep[row]] - share[row] * pull_kg[gone] for row in range(len(keep))]
    rest = [
        [stiffness[keep[row]][each] - share[row] * stiffness[gone][each] for each in keep]
        for row in range(len(keep))
    ]
    return resolved(pulls, rest, total_kg)


def curvatures(places_m: list[float]) -> Record:
    """
    Curvature at every support for unit movement of each, by the three-moment equation, and the
    force that movement takes (times EI).
    """
    count = len(places_m)
    span = [places_m[index + 1] - places_m[index] for index in range(count - 1)]
    kink = [[0.0] * count for _ in range(count)]
    curvature = [[0.0] * count for _ in range(count)]
    for inner in range(1, count - 1):
        kink[inner][inner - 1] = 1 / span[inner - 1]
        kink[inner][inner] = -1 / span[inner - 1] - 1 / span[inner]
        kink[inner][inner + 1] = 1 / span[inner]
    for moved in range(count):
        column = three_moments(span, [kink[inner][moved] for inner in range(count)])
        for inner in range(count):
            curvature[inner][moved] = column[inner]
    stiffness = [[0.0] * count for _ in range(count)]
    for row in range(count):
        for moved in range(count):
            for inner in range(count):
                stiffness[row][moved] += (
                    kink[inner][row] * curvature[inner][moved]
                    + kink[inner][moved] * curvature[inner][row]
                ) / 2
    return {"curvature": curvature, "stiffness": stiffness}


def three_moments(span: list[float], kinks: list[float]) -> list[float]:
    """
    Curvature at each support for these kinks: the three-moment equation, swept forwards and back.
    """
    count = len(kinks)
    across, found = [0.0] * count, [0.0] * count
    for inner in range(1, count - 1):
        diagonal = (span[inner - 1] + span[inner]) / 3 - span[inner - 1] / 6 * across[inner - 1]
        across[inner] = span[inner] / 6 / diagonal
        found[inner] = (kinks[inner] - span[inner - 1] / 6 * found[inner - 1]) / diagonal
    for back in range(1, count - 1):
        inner = count - 1 - back
        found[inner] = (
            found[inner] - across[inner] * found[inner + 1] if inner < count - 2 else found[inner]
        )
    return found


def pulled(
    loads: list[Record], places_m: list[float], curvature: list[list[float]], support: int
) -> float:
    """What one support carries if it could push too: the loads times its influence line. [kg]"""
    found = 0.0
    for piece in range(len(places_m) + 1):
        line = influence(places_m, curvature, support, piece)
        origin_m = places_m[piece - 1] if piece > 0 else places_m[0]
        for load in loads:
            if load["from_m"] == load["to_m"]:
                if piece_of(load["from_m"], places_m) == piece:
                    found += load["kg"] * height(line, load["from_m"] - origin_m)
            else:
                begin_m = (
                    load["from_m"]
                    if piece == 0 or load["from_m"] > places_m[piece - 1]
                    else places_m[piece - 1]
                )
                end_m = (
                    load["to_m"]
                    if piece == len(places_m) or load["to_m"] < places_m[piece]
                    else places_m[piece]
                )
                if end_m > begin_m:
                    each_m = load["kg"] / (load["to_m"] - load["from_m"])
                    found += each_m * (
                        area(line, end_m - origin_m) - area(line, begin_m - origin_m)
                    )
    return found


def piece_of(at_m: float, places_m: list[float]) -> int:
    """
    The piece of the beam that a place is on: 0 before the first support, then the spans, then
    beyond the last.
    """
    return len([place_m for place_m in places_m if place_m <= at_m])


def influence(
    places_m: list[float], curvature: list[list[float]], support: int, piece: int
) -> list[float]:
    """
    One piece of a support's influence line as the coefficients of a cubic, counted from the piece's
    own support.
    """
    last = len(places_m) - 1
    left = piece - 1 if piece > 0 else 0
    left = last - 1 if left > last - 1 else left
    span_m = places_m[left + 1] - places_m[left]
    first, second = curvature[left][support], curvature[left + 1][support]
    here, there = (1.0 if left == support else 0.0), (1.0 if left + 1 == support else 0.0)
    rise = (there - here) / span_m
    if piece == last + 1:
        return [there, rise + span_m * (first + 2 * second) / 6, 0.0, 0.0]
    slope = rise - span_m * (2 * first + second) / 6
    return (
        [here, slope, 0.0, 0.0]
        if piece == 0
        else [here, slope, first / 2, (second - first) / (6 * span_m)]
    )


def height(line: list[float], t_m: float) -> float:
    """A cubic at a place."""
    return ((line[3] * t_m + line[2]) * t_m + line[1]) * t_m + line[0]


def area(line: list[float], t_m: float) -> float:
    """The integral of a cubic from its origin to a place."""
    return (((line[3] / 4 * t_m + line[2] / 3) * t_m + line[1] / 2) * t_m + line[0]) * t_m


def resolved(pull_kg: list[float], stiffness: list[list[float]], total_kg: float) -> list[float]:
    """
    What supports carry that cannot push: those are let go for which the others hold the body clear
    of them. Empty where that is not found.

    Supports that push are let go, and those that the body would pass through are taken up again,
    until none does. What is carried is the same for every set that ends so.
    """
    if all(kg >= 0 for kg in pull_kg):
        return pull_kg
    count = len(pull_kg)
    free: list[int] = []
    for step in range(MOST_STEPS):
        state = let_go(pull_kg, stiffness, free)
        wrong = amiss(state, stiffness, free, total_kg)
        if len(wrong) == 0:
            return [kg if kg > 0 else 0.0 for kg in state["carried"]]
        # All at once is quick and may go round in circles; one at a time, always the last, ends
        # (Murty's rule, from memory).
        wrong = wrong if step < 2 * count else [last_of(wrong)]
        free = [index for index in range(count) if (index in free) != (index in wrong)]
    return []


def last_of(indexes: list[int]) -> int:
    """The largest of some indexes."""
    found = indexes[0]
    for index in indexes:
        found = index if index > found else found
    return found


def let_go(pull_kg: list[float], stiffness: list[list[float]], free: list[int]) -> Record:
    """
    How far the body rises over the supports that are let go, and what the others carry.

    Without an answer, both are empty.
    """
    rise = solved(
        [[stiffness[row][each] for each in free] for row in free], [-pull_kg[row] for row in free]
    )
    carried = [0.0] * len(pull_kg)
    for row in range(len(pull_kg)):
        if row not in free:
            kg = pull_kg[row]
            for position in range(len(rise)):
                kg += stiffness[row][free[position]] * rise[position]
            carried[row] = kg
    return {"rise": rise, "carried": carried}


def amiss(
    state: Record, stiffness: list[list[float]], free: list[int], total_kg: float
) -> list[int]:
    """
    The supports that push, and those let go that the body passes through; all that are let go where
    there is no answer.
    """
    if len(state["rise"]) < len(free):
        return free
    least_kg = -ROUNDING * total_kg
    passed = [
        free[at]
        for at in range(len(free))
        if state["rise"][at] * stiffness[free[at]][free[at]] < least_kg
    ]
    return [
        *passed,
        *[
            row
            for row in range(len(state["carried"]))
            if row not in free and state["carried"][row] < least_kg
        ],
    ]


def solved(matrix: list[list[float]], right: list[float]) -> list[float]:
    """A symmetric system by elimination; empty where it has no single answer."""
    count = len(right)
    rows = [[*matrix[index], right[index]] for index in range(count)]
    for pivot in range(count):
        if rows[pivot][pivot] <= ROUNDING * matrix[pivot][pivot]:
            return []
        for below in range(pivot + 1, count):
            factor = rows[below][pivot] / rows[pivot][pivot]
            for column in range(pivot, count + 1):
                rows[below][column] -= factor * rows[pivot][column]
    found = [0.0] * count
    for back in range(count):
        index = count - 1 - back
        value = rows[index][count]
        for column in range(index + 1, count):
            value -= rows[index][column] * found[column]
        found[index] = value / rows[index][index]
    return found
