# mypy: disable-error-code="arg-type"
"""Several acts on one day: each stage plot beside what the others leave standing on the deck."""

from builder.fit.comparing import LENGTH_TOLERANCE_M, signed
from builder.fit.plots.stage_plot import deck_fact, rect_of, sentence
from builder.fit.verdicts import ASK, FITS, SHORT, Record, verdict, with_question, with_remedy
from builder.fit.wording import both
from builder.formulas.rectangles import overlap_m, overlaps

THE_DAY = "The day"
ROOM = {
    "remedy": "Let it roll off for the other act, or move the other act's plot.",
    "who": "both acts, with the house's stage manager",
}
STAYS = "Does what stands there stay on the deck while others play?"


def plots_together(riders: list[Record], pack: Record) -> list[Record]:
    """One verdict for each act whose plot shares the day with another's."""
    plots = [
        {"rider": rider, "requirement": each}
        for rider in riders
        for each in rider["requirements"]
        if each["sort"] == "plot"
    ]
    found = []
    for plot in plots:
        others = [other for other in plots if other["rider"]["act"] != plot["rider"]["act"]]
        left = [
            {"act": other["rider"]["act"], **placed(wish)}
            for other in others
            for wish in other["requirement"]["rectangles"]
            if stays(wish)
        ]
        if len(left) > 0:
            found.append(beside_others(plot["requirement"], left, pack))
    return found


def stays(wish: Record) -> bool:
    """Whether a rectangle may stand there while others play: it does, or nobody has said."""
    return bool(wish["stays"] != "no" and not wish["lane"] and wish["strictness"] == "must")


def placed(wish: Record) -> Record:
    """
    A rectangle as it stands on the plan, worked out once; None where the rider gives it no place.
    """
    return {"wish": wish, "rect": None if wish["across_m"] is None else rect_of(wish)}


def beside_others(requirement: Record, left: list[Record], pack: Record) -> Record:
    """One act's plot beside what the other acts leave standing."""
    line = {
        **requirement,
        "act": THE_DAY,
        "title": "Stage plot of " + requirement["act"] + " beside what stays",
        "line": 0,
        "strictness": "must",
    }
    mine = [placed(wish) for wish in requirement["rectangles"] if wish["strictness"] == "must"]
    pairs = [[one, other] for one in mine for other in left if in_each_other(one, other)]
    shorts = [pair for pair in pairs if pair[1]["wish"]["stays"] == "yes"]
    asks = [
        clash(pair) + ", and nobody says whether that stays"
        for pair in pairs
        if pair[1]["wish"]["stays"] == ""
    ]
    asks = [*asks, *open_places(mine, left)]
    if len(shorts) > 0:
        found = with_remedy(
            verdict(line, SHORT, sentence([clash(pair) + ", which stays" for pair in shorts])), ROOM
        )
        most = max([overlap_m(pair[0]["rect"], pair[1]["rect"]) for pair in shorts])
        found["margin"] = signed(both("length", most), -most)
    elif len(asks) > 0:
        found = with_question(verdict(line, ASK, sentence(asks)), line, STAYS)
    else:
        found = verdict(line, FITS, "Nothing that stays, or may stay, stands in its way.")
    found["fact"] = deck_fact(requirement, pack)
    return found


def in_each_other(one: Record, other: Record) -> bool:
    """Whether two rectangles that have their places overlap."""
    return (
        one["rect"] is not None
        and other["rect"] is not None
        and overlaps(one["rect"], other["rect"], LENGTH_TOLERANCE_M)
    )


def clash(pair: list[Record]) -> str:
    """Two rectangles of two acts in each other, in words."""
    one, other = pair
    words: str = one["wish"]["name"] + " overlaps " + other["wish"]["name"] + " of " + other["act"]
    return words + " by " + both("length", overlap_m(one["rect"], other["rect"]))[0]


def open_places(mine: list[Record], left: list[Record]) -> list[str]:
    """What nobody gives a place, on either side."""
    names = [each["wish"]["name"] for each in mine if each["rect"] is None]
    names = [
        *names,
        *(each["wish"]["name"] + " of " + each["act"] for each in left if each["rect"] is None),
    ]
    return ["no place is given for " + ", ".join(names)] if len(names) > 0 and len(mine) > 0 else []
