"""Several acts on one day: each stage plot beside what the others leave standing on the deck."""

from builder.fit.margins import LENGTH_TOLERANCE_M, signed
from builder.fit.plots.pieces import one_sentence, rect_of
from builder.fit.plots.records import ActPlot, Spot
from builder.fit.plots.sentences import (
    ASK_STAYS,
    BESIDE_TITLE,
    CLASH,
    LET_ROLL_OFF,
    MAY_STAY,
    NO_PLACE,
    NOTHING_IN_WAY,
    OF_ACT,
    WHICH_STAYS,
)
from builder.fit.plots.stage_plot import deck_fact
from builder.fit.records import (
    FitPack,
    Line,
    Mender,
    PlotAsked,
    RectangleAsked,
    Requirement,
    RiderAsked,
    Verdict,
)
from builder.fit.sentences import fill
from builder.fit.verdicts import (
    ASK,
    FITS,
    SHORT,
    of_the_act,
    verdict,
    with_question,
    with_remedy,
)
from builder.fit.wording import both
from builder.formulas.rectangles import overlap_m, overlaps

THE_DAY = "The day"
ROOM: Mender = {"remedy": LET_ROLL_OFF, "who": "both acts, with the house's stage manager"}
Pair = tuple[Spot, Spot]


def plots_together(riders: list[RiderAsked], acts: list[str], pack: FitPack) -> list[Verdict]:
    """One verdict for each of some acts whose plot shares the day with another's."""
    plots = act_plots(riders)
    answers: list[Verdict] = []
    for plot in plots:
        left: list[Spot] = []
        for other in plots:
            if other["act"] != plot["act"]:
                left.extend(
                    spot_of(other["act"], wish)
                    for wish in other["plot"]["rectangles"]
                    if may_stay(wish)
                )
        if plot["act"] in acts and len(left) > 0:
            answers.append(beside_others(plot["plot"], left, pack))
    return answers


def plot_in(requirement: Requirement) -> PlotAsked | None:
    """The stage plot of a requirement, on a condition or without; None where it is none."""
    if requirement["sort"] == "if" and requirement["then"]["sort"] == "plot":
        return requirement["then"]
    return requirement if requirement["sort"] == "plot" else None


def act_plots(riders: list[RiderAsked]) -> list[ActPlot]:
    """The stage plots of all acts, each with what stands there on a condition alone."""
    plots: list[ActPlot] = []
    for rider in riders:
        whole: PlotAsked | None = None
        for requirement in rider["requirements"]:
            plot = plot_in(requirement)
            if plot is not None:
                whole = plot if whole is None else with_more(whole, plot)
        if whole is not None:
            plots.append({"act": rider["act"], "plot": whole})
    return plots


def with_more(whole: PlotAsked, plot: PlotAsked) -> PlotAsked:
    """A plot with the rectangles of another that it has not."""
    more = [wish for wish in plot["rectangles"] if wish not in whole["rectangles"]]
    return {**whole, "rectangles": [*whole["rectangles"], *more]}


def may_stay(wish: RectangleAsked) -> bool:
    """Whether a rectangle may stand there while others play: it does, or nobody has said."""
    return wish["stays"] != "no" and not wish["lane"] and wish["strictness"] == "must"


def spot_of(act: str, wish: RectangleAsked) -> Spot:
    """
    A rectangle as it stands on the plan, worked out once; None where the rider gives it no place.
    """
    rect = rect_of(wish) if wish["across_m"] is not None else None
    return {"act": act, "wish": wish, "rect": rect}


def beside_others(requirement: PlotAsked, left: list[Spot], pack: FitPack) -> Verdict:
    """One act's plot beside what the other acts leave standing."""
    line: Line = {
        "act": THE_DAY,
        "line": 0,
        "department": requirement["department"],
        "title": fill(BESIDE_TITLE, {"act": requirement["act"]}),
        "need": requirement["need"],
        "strictness": "must",
    }
    mine = [
        spot_of(requirement["act"], wish)
        for wish in requirement["rectangles"]
        if wish["strictness"] == "must"
    ]
    pairs = [(one, other) for one in mine for other in left if spots_overlap(one, other)]
    answer = clash_answer(line, pairs, open_places(mine, left))
    answer["fact"] = deck_fact(pack)
    return answer


def clash_answer(line: Line, pairs: list[Pair], without_place: list[str]) -> Verdict:
    """What stands in each other's way: short where it stays, asked where nobody has said."""
    shorts = [pair for pair in pairs if pair[1]["wish"]["stays"] == "yes"]
    if len(shorts) > 0:
        words = [fill(WHICH_STAYS, {"clash": clash_words(pair)}) for pair in shorts]
        answer = with_remedy(verdict(line, SHORT, one_sentence(words)), ROOM)
        most_m = max(pair_overlap_m(pair) for pair in shorts)
        answer["margin"] = signed(both("length", most_m), -most_m)
        return answer
    asks = [
        fill(MAY_STAY, {"clash": clash_words(pair)})
        for pair in pairs
        if pair[1]["wish"]["stays"] == ""
    ]
    asks.extend(without_place)
    if len(asks) > 0:
        answer = verdict(line, ASK, one_sentence(asks))
        return of_the_act(with_question(answer, line, ASK_STAYS))
    return verdict(line, FITS, NOTHING_IN_WAY)


def spots_overlap(one: Spot, other: Spot) -> bool:
    """Whether two rectangles that have their places overlap."""
    first, second = one["rect"], other["rect"]
    if first is None or second is None:
        return False
    return overlaps(first, second, LENGTH_TOLERANCE_M)


def pair_overlap_m(pair: Pair) -> float:
    """How far two rectangles are in each other."""
    first, second = pair[0]["rect"], pair[1]["rect"]
    if first is None or second is None:
        return 0.0
    return overlap_m(first, second)


def clash_words(pair: Pair) -> str:
    """Two rectangles of two acts in each other, in words."""
    parts = {
        "one": pair[0]["wish"]["name"],
        "other": pair[1]["wish"]["name"],
        "act": pair[1]["act"],
        "amount": both("length", pair_overlap_m(pair))[0],
    }
    return fill(CLASH, parts)


def open_places(mine: list[Spot], left: list[Spot]) -> list[str]:
    """What nobody gives a place, on either side."""
    names = [spot["wish"]["name"] for spot in mine if spot["rect"] is None]
    for spot in left:
        if spot["rect"] is None:
            names.append(fill(OF_ACT, {"name": spot["wish"]["name"], "act": spot["act"]}))
    if len(names) == 0 or len(mine) == 0:
        return []
    return [fill(NO_PLACE, {"names": ", ".join(names)})]
