"""
Rectangles of a stage plot that have no place: each that is too large for its floor, and one line
for the rest.
"""

from builder.fit.margins import signed
from builder.fit.plots.floors import ON_DECK, floor_called, outline_fact
from builder.fit.plots.in_the_way import size_hits
from builder.fit.plots.pieces import piece_answer, piece_line, plot_line, rect_of
from builder.fit.plots.records import Floor, Ground
from builder.fit.plots.sentences import (
    AREAS,
    ASK_WHERE,
    LEAVE_SOME,
    NAME_AND_NEED,
    ONLY_SIZES,
    SMALLER,
    TOO_MUCH,
    TURN_ONLY,
    WITHOUT_PLACE,
)
from builder.fit.records import Line, Mender, PlotAsked, RectangleAsked, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, SHORT, of_the_act, verdict, with_question, with_remedy
from builder.fit.wording import both, digits
from builder.formulas.polygons import twice_area_m2

AREA_SHARE = 1.005
LESS_ON_STAGE: Mender = {"remedy": LEAVE_SOME, "who": "the show"}


def answers_without_place(requirement: PlotAsked, ground: Ground) -> list[Verdict]:
    """
    What can be said of rectangles that have no place: each that is too large for its floor, and one
    question for the rest.
    """
    answers: list[Verdict] = []
    rest: list[RectangleAsked] = []
    for wish in requirement["rectangles"]:
        if wish["across_m"] is None:
            floor = floor_called(ground["floors"], wish["on"])
            if floor is not None and len(size_hits(rect_of(wish), floor)) > 0:
                answers.append(too_large(requirement, wish, floor))
            else:
                rest.append(wish)
    if len(rest) > 0:
        answers.append(answer_for_the_rest(requirement, rest, ground["floors"][0]))
    return answers


def too_large(requirement: PlotAsked, wish: RectangleAsked, floor: Floor) -> Verdict:
    """A rectangle that is larger than its floor, turned or not."""
    turned: RectangleAsked = {**wish, "turned_deg": wish["turned_deg"] + 90}
    fits_turned = len(size_hits(rect_of(turned), floor)) == 0
    answer = piece_answer(piece_line(requirement, wish), size_hits(rect_of(wish), floor))
    answer["remedy"] = TURN_ONLY if fits_turned else SMALLER
    answer["who"] = "the show"
    return answer


def answer_for_the_rest(
    requirement: PlotAsked, wishes: list[RectangleAsked], deck: Floor
) -> Verdict:
    """
    One line for all rectangles without a place: short where the whole plot has more floor than the
    deck, else a question.
    """
    must = any(wish["strictness"] == "must" for wish in wishes)
    line = plot_line(requirement)
    line["title"] = fill(WITHOUT_PLACE, {"count": digits(len(wishes), 0)})
    line["need"] = ", ".join(wish["name"] for wish in wishes)
    line["line"] = wishes[0]["line"]
    line["strictness"] = "must" if must else "should"
    wanted_m2 = floor_wanted_m2(requirement["rectangles"], must)
    deck_m2 = abs(twice_area_m2(deck["corners"])) / 2
    areas = {
        "areas": fill(
            AREAS, {"wanted": both("area", wanted_m2)[0], "deck": both("area", deck_m2)[0]}
        )
    }
    if wanted_m2 > deck_m2 * AREA_SHARE:
        answer = with_remedy(verdict(line, SHORT, fill(TOO_MUCH, areas)), LESS_ON_STAGE)
        answer["margin"] = signed(both("area", wanted_m2 - deck_m2), deck_m2 - wanted_m2)
    else:
        answer = verdict(line, ASK, fill(ONLY_SIZES, areas))
        sizes = [fill(NAME_AND_NEED, {"name": w["name"], "need": w["need"]}) for w in wishes]
        own: Line = {**line, "need": "; ".join(sizes)}
        answer = of_the_act(with_question(answer, own, ASK_WHERE))
    answer["fact"] = outline_fact(deck)
    return answer


def floor_wanted_m2(wishes: list[RectangleAsked], must: bool) -> float:
    """The floor that the plot takes of the deck; lanes may cross, so they are left out."""
    total_m2 = 0.0
    for wish in wishes:
        asks_deck = wish["on"] == ON_DECK or (wish["on"] == "" and wish["across_m"] is None)
        if asks_deck and not wish["lane"] and (wish["strictness"] == "must" or not must):
            total_m2 += wish["width_m"] * wish["depth_m"]
    return total_m2
