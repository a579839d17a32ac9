# mypy: disable-error-code="arg-type,typeddict-item"
"""
A stage plot as one verdict: what stands as asked in one line, and under it each rectangle that does
not, with its own remedy or question.
"""

from typing import Any

from builder.fit.comparing import (
    age_notes,
    asked,
    in_configuration,
    item_notes,
    once,
    section_of,
    signed,
    which_configuration,
)
from builder.fit.plots.floors import floor_called, floor_under, floors_of, outline_fact
from builder.fit.plots.hits import of_word, worst
from builder.fit.plots.in_the_way import counts, hits_of, larger
from builder.fit.plots.remedies import remedy_of
from builder.fit.verdicts import (
    ASK,
    FITS,
    NOTED,
    RANK,
    SHORT,
    Record,
    settled,
    verdict,
    with_question,
    with_remedy,
)
from builder.fit.wording import both, digits
from builder.formulas.polygons import box_around, twice_area_m2
from builder.formulas.rectangles import corners_of, gap_m, rectangle

PLOT = {
    "question": (
        "What is the outline of the deck, what is in the way on it, and what does it carry?"
    ),
    "remedy": "Told below for each.",
    "who": "the show, with the house's stage manager",
}
SPREAD = (
    "Weights are taken as spread evenly over their rectangles. Whoever answers for the floor"
    " decides, on feet and castors too."
)
FEET = (
    "One foot is held against the largest single load that the house states; the footprint which"
    " that counts for decides."
)
AREA_SHARE = 1.005


def stage_plot(requirement: Record, pack: Record) -> Record:
    """The verdict on all rectangles of one act, on the one deck that takes them best."""
    section = section_of(pack, "stage")
    decks = decks_of(requirement, section)
    if len(decks) == 0 and len(decks_of({**requirement, "configuration": ""}, section)) > 0:
        return which_configuration(requirement, PLOT, pack)
    if len(decks) == 0:
        return asked(requirement, PLOT, "The pack does not describe a deck for this.")
    return laid_out(requirement, section, chosen_of(requirement, section, decks), remedied=True)


def chosen_of(requirement: Record, section: Any, decks: list[Record]) -> Record:
    """
    The deck that takes the plot best, the first among equals; what would mend it is worked out for
    that one alone.
    """
    if len(decks) == 1:
        return decks[0]
    bad = [badness(laid_out(requirement, section, deck, remedied=False)) for deck in decks]
    return decks[bad.index(min(bad))]


def decks_of(requirement: Record, section: Any) -> list[Record]:
    """The decks of the configuration asked for."""
    items = section["items"] if section is not None else []
    return [
        item
        for item in items
        if item["kind"] == "deck" and in_configuration(item, requirement["configuration"])
    ]


def deck_fact(requirement: Record, pack: Record) -> Any:
    """The outline of the first deck that is drawn, as the house's fact."""
    section = section_of(pack, "stage")
    for deck in decks_of(requirement, section):
        floor = floors_of(section, deck)[0]
        if len(floor["corners"]) > 0:
            return outline_fact(floor)
    return None


def badness(found: Record) -> int:
    """How far from fitting a whole plot is: by its verdict, then by its rectangles."""
    total = 0
    for each in found["parts"]:
        total += RANK[each["verdict"]]
    return total + 1000 * (
        RANK[NOTED]
        if found["verdict"] == SHORT and found["strictness"] == "should"
        else RANK[found["verdict"]]
    )


def laid_out(requirement: Record, section: Record, deck: Record, *, remedied: bool) -> Record:
    """The whole plot on one deck, with remedies or without."""
    ground: Record = {"section": section, "floors": floors_of(section, deck)}
    if len(ground["floors"][0]["corners"]) == 0:
        return asked(requirement, PLOT, deck["name"] + ": its outline is not drawn.")
    stands = [stand_of(wish) for wish in requirement["rectangles"] if wish["across_m"] is not None]
    parts = []
    for each in stands:
        others = [
            other for other in stands if other is not each and counts(other["wish"], each["wish"])
        ]
        parts.append(part_of(requirement, each, others, {**ground, "remedied": remedied}))
    return summed_up(requirement, [*parts, *without_place(requirement, ground)], stands, ground)


def stand_of(wish: Record) -> Record:
    """A rectangle that has its place, with its extent, worked out once."""
    rect = rect_of(wish)
    return {"wish": wish, "rect": rect, "box": box_around(corners_of(rect))}


def rect_of(wish: Record) -> Record:
    """A rectangle where the rider puts it; about the datum where it has no place."""
    across_m, upstage_m = (
        (0.0, 0.0) if wish["across_m"] is None else (wish["across_m"], wish["upstage_m"])
    )
    return rectangle(
        across_m,
        upstage_m,
        width_m=wish["width_m"],
        depth_m=wish["depth_m"],
        turned_deg=wish["turned_deg"],
    )


def line_of(requirement: Record, wish: Record) -> Record:
    """One rectangle's line of the rider."""
    return {
        **requirement,
        "title": wish["name"],
        "need": wish["need"],
        "line": wish["line"],
        "strictness": wish["strictness"],
    }


def part_of(requirement: Record, stand: Record, others: list[Record], ground: Record) -> Record:
    """
    The verdict on one rectangle that has its place: the first thing that is short says by how much,
    all are told.
    """
    wish = stand["wish"]
    hits = hits_of(wish, stand["rect"], others, ground)
    word = worst(hits)
    found = told(line_of(requirement, wish), word if word != "" else FITS, hits)
    if found["fact"] is None:
        found["fact"] = outline_fact(ground["floors"][0])
    if word == SHORT and ground["remedied"]:
        remedy = remedy_of(wish, stand["rect"], others, ground, hits)
        return with_remedy(found, {"remedy": remedy[0], "who": remedy[1]})
    return found


def told(line: Record, word: str, hits: list[Record]) -> Record:
    """A rectangle's verdict with what was found about it."""
    said = of_word(hits, word)
    others = [each for each in [*of_word(hits, ASK), *of_word(hits, NOTED)] if each["word"] != word]
    found = verdict(
        line,
        word,
        sentence([each["words"] for each in said]) if len(said) > 0 else "It stands as asked.",
    )
    found["notes"] = [
        sentence([each["words"]]) for each in (others if word in (SHORT, ASK) else [])
    ]
    found["fact"] = next((each["fact"] for each in said if each["fact"] is not None), None)
    measured = [each for each in said if each["by"] > 0]
    if word == SHORT and len(measured) > 0:
        found["margin"] = signed(
            both(measured[0]["measure"], measured[0]["by"]), -measured[0]["by"]
        )
    if word == ASK:
        found = with_question(found, line, " ".join(once([each["question"] for each in said])))
    return found


def sentence(words: list[str]) -> str:
    """What was found, as one sentence."""
    text = "; ".join(words)
    return text[:1].upper() + text[1:] + ("" if text[-1:] == "." else ".")


def without_place(requirement: Record, ground: Record) -> list[Record]:
    """
    What can be said of rectangles that have no place: each that is too large for its floor, and one
    question for the rest.
    """
    found, open_ones = [], []
    for wish in requirement["rectangles"]:
        if wish["across_m"] is None:
            floor = floor_called(ground["floors"], wish["on"])
            hits = larger(rect_of(wish), floor) if floor is not None else []
            if len(hits) > 0:
                turned = larger(rect_of({**wish, "turned_deg": wish["turned_deg"] + 90}), floor)
                remedy = (
                    "Turn it by a quarter."
                    if len(turned) == 0
                    else "Make it smaller, or leave it off this stage."
                )
                found.append(
                    with_remedy(
                        told(line_of(requirement, wish), SHORT, hits),
                        {"remedy": remedy, "who": "the show"},
                    )
                )
            else:
                open_ones.append(wish)
    return [*found, *(placeless(requirement, open_ones, ground) if len(open_ones) > 0 else [])]


def placeless(requirement: Record, wishes: list[Record], ground: Record) -> list[Record]:
    """
    One line for all rectangles without a place: short where the whole plot has more floor than the
    deck, else a question.
    """
    names = ", ".join(wish["name"] for wish in wishes)
    must = any(wish["strictness"] == "must" for wish in wishes)
    line = {
        **requirement,
        "title": digits(len(wishes), 0) + " without a place",
        "need": names,
        "line": wishes[0]["line"],
    }
    line["strictness"] = "must" if must else "should"
    deck = ground["floors"][0]
    wanted_m2, deck_m2 = (
        floor_wanted_m2(requirement["rectangles"], must),
        abs(twice_area_m2(deck["corners"])) / 2,
    )
    words = (
        both("area", wanted_m2)[0] + " are asked on the deck, which has " + both("area", deck_m2)[0]
    )
    if wanted_m2 > deck_m2 * AREA_SHARE:
        found = with_remedy(
            verdict(line, SHORT, "Together " + words + "."),
            {"remedy": "Leave some of it off this stage.", "who": "the show"},
        )
        found["margin"] = signed(both("area", wanted_m2 - deck_m2), deck_m2 - wanted_m2)
    else:
        sizes = "; ".join(wish["name"] + ", " + wish["need"] for wish in wishes)
        found = verdict(
            line,
            ASK,
            "The rider gives no place; only sizes were looked at. Together " + words + ".",
        )
        found = with_question(found, {**line, "need": sizes}, "Where on the stage can these stand?")
    found["fact"] = outline_fact(deck)
    return [found]


def floor_wanted_m2(wishes: list[Record], must: bool) -> float:
    """The floor that the plot takes of the deck; lanes may cross, so they are left out."""
    total = 0.0
    for wish in wishes:
        asks_deck = wish["on"] == "deck" or (wish["on"] == "" and wish["across_m"] is None)
        if asks_deck and not wish["lane"] and (wish["strictness"] == "must" or not must):
            total += wish["width_m"] * wish["depth_m"]
    return total


def summed_up(
    requirement: Record, parts: list[Record], stands: list[Record], ground: Record
) -> Record:
    """
    The plot's one line over its parts.

    What fits is told by name in it; only the rest has lines of its own.
    """
    deck = ground["floors"][0]
    word, strictness = overall(parts)
    rest = [each for each in parts if each["verdict"] != FITS]
    found = verdict(
        {**requirement, "strictness": strictness},
        word,
        deck["item"]["name"] + ": " + counted(parts, len(requirement["rectangles"])),
    )
    found["parts"] = rest
    found["fact"] = outline_fact(deck)
    worst_parts = [each for each in rest if each["verdict"] == word]
    if word == SHORT:
        one = worst_parts[0]
        found = with_remedy(found, one if len(rest) == 1 else PLOT)
        found["margin"] = one["margin"] if len(worst_parts) == 1 else ["", ""]
    elif word == ASK:
        found["question"] = worst_parts[0]["question"]
    else:
        found = with_room(found, stands, ground)
        found["notes"] = notes_of(requirement, deck["item"])
    return settled(found)


def overall(parts: list[Record]) -> list[str]:
    """The worst verdict of what must be; where only what should be is short or open, that."""
    worst_must, worst_any = FITS, FITS
    for each in parts:
        if RANK[each["verdict"]] > RANK[worst_any]:
            worst_any = each["verdict"]
        if each["strictness"] == "must" and RANK[each["verdict"]] > RANK[worst_must]:
            worst_must = each["verdict"]
    if RANK[worst_must] >= RANK[ASK]:
        return [worst_must, "must"]
    return [worst_any, "should" if RANK[worst_any] >= RANK[ASK] else "must"]


def counted(parts: list[Record], number: int) -> str:
    """How many rectangles stand as asked, and which do not."""
    good = [each["title"] for each in parts if each["verdict"] == FITS]
    words = (
        digits(len(good), 0)
        + " of "
        + digits(number, 0)
        + " as asked"
        + (": " + ", ".join(good) if len(good) > 0 else "")
    )
    for word, said in ((SHORT, "short"), (ASK, "to ask"), (NOTED, "with a note")):
        names = [each["title"] for each in parts if each["verdict"] == word]
        words += "; " + said + ": " + ", ".join(names) if len(names) > 0 else ""
    return words + "."


def with_room(found: Record, stands: list[Record], ground: Record) -> Record:
    """A plot that fits, with the least room to the edge of a floor."""
    least, name = 1000000.0, ""
    for stand in stands:
        floor = floor_under(stand["wish"], stand["rect"], ground["floors"])
        gap = gap_m(stand["rect"], floor["corners"])
        if gap < least:
            least, name = gap, stand["wish"]["name"]
    words = both("length", least)
    found["margin"] = signed(words, least)
    found["reason"] += " The least room to an edge is " + words[0] + ", at " + name + "."
    return found


def notes_of(requirement: Record, deck: Record) -> list[str]:
    """What to know about the deck, its check, and how weights were taken."""
    notes = [
        *item_notes(deck),
        *age_notes({"standing": "stated", "checked": deck["checked"], "stale": deck["stale"]}),
    ]
    for key, words in (("weight_kg", SPREAD), ("foot_kg", FEET)):
        if any(wish[key] is not None for wish in requirement["rectangles"]):
            notes.append(words)
    return notes
