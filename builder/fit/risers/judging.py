"""Risers of wanted sizes against the pieces in stock: all that one act asks, at the same time."""

from typing import TypedDict

from builder.fit.needs.composed import gravest_of_parts
from builder.fit.notes import age_notes, item_notes, once
from builder.fit.records import (
    Advice,
    Asker,
    Item,
    Line,
    RiserAsked,
    RisersAsked,
    Section,
    Verdict,
    Word,
)
from builder.fit.risers.sentences import (
    ALL_RISERS,
    ASK_RISERS,
    AT_HEIGHT,
    EACH,
    HIRE_RISERS,
    HOW_LARGE,
    JOINED,
    LARGER,
    NO_PIECES,
    NO_SIZE,
    NONE_DOES,
    ONE_PIECE,
    OPEN_STOCK,
    PIECES,
    TITLE,
    TOO_MANY_LEFT,
)
from builder.fit.sections import items_of
from builder.fit.sentences import SHOW_BRINGS_IT, fill
from builder.fit.values import is_said, least_of, most_of, number_of, text_of, value_of
from builder.fit.verdicts import (
    ASK,
    FITS,
    NOT_NEEDED,
    SHORT,
    asked,
    fact_of,
    of_the_act,
    settled,
    verdict,
    with_remedy,
)
from builder.fit.wording import both, digits
from builder.formulas.riser_pieces import TOLERANCE_M, Laid, laid, shared_out

RISERS: Advice = {"question": ASK_RISERS, "remedy": HIRE_RISERS, "who": "hire"}
SIZE: Asker = {"question": HOW_LARGE}
MOST_STEPS = 5000
PLENTY = 100000
"""Stands for a number of pieces that nobody knows."""
DOES_NOT = -1


class Stock(TypedDict):
    """Pieces of the house, with how many there are at least and at most."""

    item: Item
    least: int
    most: int


def risers_built(need: RisersAsked, section: Section | None) -> Verdict:
    """The verdict on all risers of an act, each told."""
    if need["carried"] == "show":
        return verdict(need, NOT_NEEDED, SHOW_BRINGS_IT)
    pieces = [item for item in items_of(section, "riser") if is_for_use(item)]
    if len(pieces) == 0:
        return asked(need, RISERS, NO_PIECES)
    told = [one for one in need["risers"] if one["width_m"] > 0 and one["depth_m"] > 0]
    sizeless = [
        of_the_act(asked(line_of(need, one), SIZE, NO_SIZE))
        for one in need["risers"]
        if one["width_m"] == 0 or one["depth_m"] == 0
    ]
    return whole_of(need, [*of_sizes(need, told, pieces), *sizeless])


def of_sizes(need: RisersAsked, told: list[RiserAsked], pieces: list[Item]) -> list[Verdict]:
    """The verdicts on the risers whose size the rider tells."""
    stock = [stock_of(item) for item in pieces]
    surely = [[pieces_of(one, each, ()) for each in stock] for one in told]
    perhaps = [[pieces_of(one, each, (ASK,)) for each in stock] for one in told]
    steps = [MOST_STEPS]
    kinds = shared_out(surely, [each["least"] for each in stock], steps)
    if kinds is not None:
        return [built(need, one, stock[kind]) for one, kind in zip(told, kinds, strict=True)]
    could = shared_out(perhaps, [each["most"] for each in stock], steps)
    open_too = could is not None or steps[0] < 0
    return [
        not_all(need, one, doing, could_do, stock, open_too=open_too)
        for one, doing, could_do in zip(told, surely, perhaps, strict=True)
    ]


def whole_of(need: RisersAsked, parts: list[Verdict]) -> Verdict:
    """The gravest of the risers, with all of them told."""
    answer = gravest_of_parts(need, parts)
    if answer["verdict"] == SHORT:
        return with_remedy(answer, RISERS)
    if answer["verdict"] != ASK:
        answer["reason"] = ALL_RISERS
    return answer


def is_for_use(item: Item) -> bool:
    """Whether pieces work and visitors may use them."""
    return item["condition"] != "out of service" and item["terms"] != "not for visitors"


def stock_of(item: Item) -> Stock:
    """Pieces with how many there are."""
    least, most = least_of(value_of(item, "count")), most_of(value_of(item, "count"))
    return {
        "item": item,
        "least": 0 if least is None else int(least),
        "most": PLENTY if most is None else int(most),
    }


def pieces_of(one: RiserAsked, stock: Stock, too: tuple[Word, ...]) -> int:
    """
    How many pieces of a kind all risers of a line take; below 0 where the kind does not do. What is
    open does only if that is among ``too``.
    """
    word = does(one, stock["item"])
    if word != FITS and word not in too:
        return DOES_NOT
    size = size_of(one, stock["item"])
    return 1 if size is None else size["pieces"] * int(one["count"])


def does(one: RiserAsked, item: Item) -> Word:
    """Whether pieces of a kind are known to make a riser, whatever their number."""
    words = [rolls(one, item), is_as_high(one, item)]
    if size_of(one, item) is None:
        words.append(ASK)
    if SHORT in words:
        return SHORT
    return ASK if ASK in words else FITS


def rolls(one: RiserAsked, item: Item) -> Word:
    """Whether pieces roll where that is asked."""
    if not one["rolling"]:
        return FITS
    if not is_said(item, "rolling"):
        return ASK
    return FITS if text_of(item, "rolling") == "yes" else SHORT


def is_as_high(one: RiserAsked, item: Item) -> Word:
    """Whether pieces can be set to the height that is asked."""
    height_m, value = one["height_m"], value_of(item, "heights")
    if height_m is None:
        return FITS
    if value is None or len(value["settings"]) == 0:
        return ASK
    is_there = any(abs(each - height_m) <= TOLERANCE_M for each in value["settings"])
    return FITS if is_there else SHORT


def size_of(one: RiserAsked, item: Item) -> Laid | None:
    """How pieces make one riser of a line; None where nobody knows their size."""
    width_m, depth_m = number_of(item, "width"), number_of(item, "depth")
    if width_m is None or depth_m is None or width_m <= 0 or depth_m <= 0:
        return None
    return laid(one["width_m"], one["depth_m"], width_m, depth_m)


def line_of(need: RisersAsked, one: RiserAsked) -> Line:
    """One riser as what is asked."""
    return {
        "act": need["act"],
        "line": one["line"],
        "department": need["department"],
        "title": fill(TITLE, {"use": one["use"]}),
        "need": one["need"],
        "strictness": one["strictness"],
    }


def built(need: RisersAsked, one: RiserAsked, stock: Stock) -> Verdict:
    """A riser that has its pieces: of what, and how large it is then."""
    item = stock["item"]
    size = size_of(one, item)
    if size is None:
        return asked(line_of(need, one), RISERS, OPEN_STOCK)
    answer = verdict(line_of(need, one), FITS, built_words(one, item, size))
    answer["fact"] = fact_of(item["values"]["count"], item)
    notes = [*item_notes(item), *age_notes(value_of(item, "width"))]
    is_larger = (
        size["width_m"] - one["width_m"] > TOLERANCE_M
        or size["depth_m"] - one["depth_m"] > TOLERANCE_M
    )
    if is_larger:
        notes.append(LARGER)
    if one["rolling"] and size["pieces"] > 1:
        notes.append(JOINED)
    answer["notes"] = once(notes)
    return settled(answer)


def built_words(one: RiserAsked, item: Item, size: Laid) -> str:
    """Of which pieces a riser is made, and how large it is."""
    parts = {
        "pieces": digits(size["pieces"], 0),
        "name": item["name"],
        "width": both("length", size["width_m"])[0],
        "depth": both("length", size["depth_m"])[0],
    }
    words = fill(ONE_PIECE if size["pieces"] == 1 else PIECES, parts)
    if one["count"] > 1:
        words = fill(EACH, {"count": digits(one["count"], 0), "words": words})
    if one["height_m"] is None:
        return words
    height = both("length", one["height_m"])[0]
    return fill(AT_HEIGHT, {"words": words.rstrip("."), "height": height})


def not_all(
    need: RisersAsked,
    one: RiserAsked,
    surely: list[int],
    perhaps: list[int],
    stock: list[Stock],
    *,
    open_too: bool,
) -> Verdict:
    """
    One riser where not all can surely be built: as it would be by itself, and asked or short beside
    the others.
    """
    line = line_of(need, one)
    alone = shared_out([surely], [each["least"] for each in stock], [MOST_STEPS])
    could = shared_out([perhaps], [each["most"] for each in stock], [MOST_STEPS])
    if could is None:
        return with_remedy(verdict(line, SHORT, NONE_DOES), RISERS)
    if open_too or alone is None:
        return asked(line, RISERS, OPEN_STOCK)
    return with_remedy(verdict(line, SHORT, TOO_MANY_LEFT), RISERS)
