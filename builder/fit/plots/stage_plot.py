"""
A stage plot as one verdict: what stands as asked in one line, and under it each rectangle that does
not, with its own remedy or question.
"""

from builder.fit.margins import signed
from builder.fit.notes import check_notes, item_notes, once
from builder.fit.plots.floors import floor_under, floors_of, outline_fact
from builder.fit.plots.in_the_way import can_be_in_the_way, hits_of
from builder.fit.plots.pieces import piece_answer, piece_line, plot_line, stand_of
from builder.fit.plots.placeless import answers_without_place
from builder.fit.plots.records import Floor, Ground, Stand
from builder.fit.plots.remedies import remedy_of
from builder.fit.plots.sentences import (
    ASK_PLOT,
    COUNT,
    FEET,
    GOOD_NAMES,
    LEAST_ROOM,
    NO_DECK,
    NOT_DRAWN,
    OTHER_NAMES,
    SPREAD,
    SUM,
    TOLD_BELOW,
)
from builder.fit.records import (
    Advice,
    Fact,
    FitPack,
    Item,
    PlotAsked,
    Section,
    Strictness,
    Verdict,
    Word,
)
from builder.fit.sections import items_of, section_of
from builder.fit.sentences import fill
from builder.fit.verdicts import (
    ASK,
    FITS,
    NOTED,
    RANK,
    SHORT,
    asked,
    settled,
    verdict,
    with_remedy,
)
from builder.fit.wording import both, digits
from builder.formulas.rectangles import FAR_M, gap_m

PLOT: Advice = {
    "question": ASK_PLOT,
    "remedy": TOLD_BELOW,
    "who": "the show, with the house's stage manager",
}
COUNTED: tuple[tuple[Word, str], ...] = ((SHORT, "short"), (ASK, "to ask"), (NOTED, "with a note"))


def stage_plot(requirement: PlotAsked, pack: FitPack) -> Verdict:
    """The verdict on all rectangles of one act, on the one deck that takes them best."""
    section = section_of(pack, "stage")
    decks = items_of(section, "deck")
    if section is None or len(decks) == 0:
        return asked(requirement, PLOT, NO_DECK)
    rigging = section_of(pack, "rigging")
    deck = best_deck(requirement, section, rigging, decks)
    return plot_on_deck(requirement, section, rigging, deck, remedied=True)


def best_deck(
    requirement: PlotAsked, section: Section, rigging: Section | None, decks: list[Item]
) -> Item:
    """
    The deck that takes the plot best, the first among equals; what would mend it is worked out for
    that one alone.
    """
    if len(decks) == 1:
        return decks[0]
    bad = [
        badness(plot_on_deck(requirement, section, rigging, deck, remedied=False)) for deck in decks
    ]
    return decks[bad.index(min(bad))]


def deck_fact(pack: FitPack) -> Fact | None:
    """The outline of the first deck that is drawn, as the house's fact."""
    section = section_of(pack, "stage")
    if section is None:
        return None
    for deck in items_of(section, "deck"):
        floor = floors_of(section, deck)[0]
        if len(floor["corners"]) > 0:
            return outline_fact(floor)
    return None


def badness(answer: Verdict) -> int:
    """How far from fitting a whole plot is: by its verdict, then by its rectangles."""
    total = sum(RANK[part["verdict"]] for part in answer["parts"])
    if answer["verdict"] == SHORT and answer["strictness"] == "should":
        return total + 1000 * RANK[NOTED]
    return total + 1000 * RANK[answer["verdict"]]


def plot_on_deck(
    requirement: PlotAsked,
    section: Section,
    rigging: Section | None,
    deck: Item,
    *,
    remedied: bool,
) -> Verdict:
    """The whole plot on one deck, with remedies or without."""
    ground: Ground = {
        "section": section,
        "rigging": rigging,
        "floors": floors_of(section, deck),
    }
    if len(ground["floors"][0]["corners"]) == 0:
        return asked(requirement, PLOT, fill(NOT_DRAWN, {"name": deck["name"]}))
    stands = [stand_of(wish) for wish in requirement["rectangles"] if wish["across_m"] is not None]
    parts: list[Verdict] = []
    for index in range(len(stands)):
        stand = stands[index]
        neighbours = [*stands[:index], *stands[index + 1 :]]
        others = [other for other in neighbours if can_be_in_the_way(other["wish"], stand["wish"])]
        parts.append(stand_answer(requirement, stand, others, ground, remedied=remedied))
    parts.extend(answers_without_place(requirement, ground))
    return summed_up(requirement, parts, stands, ground)


def stand_answer(
    requirement: PlotAsked, stand: Stand, others: list[Stand], ground: Ground, *, remedied: bool
) -> Verdict:
    """
    The verdict on one rectangle that has its place: the first thing that is short says by how much,
    all are told.
    """
    wish = stand["wish"]
    hits = hits_of(wish, stand["rect"], others, ground)
    answer = piece_answer(piece_line(requirement, wish), hits)
    if answer["fact"] is None:
        answer["fact"] = outline_fact(ground["floors"][0])
    if answer["verdict"] == SHORT and remedied:
        return with_remedy(answer, remedy_of(wish, stand["rect"], others, ground, hits))
    return answer


def summed_up(
    requirement: PlotAsked, parts: list[Verdict], stands: list[Stand], ground: Ground
) -> Verdict:
    """
    The plot's one line over its parts.

    What fits is told by name in it; only the rest has lines of its own.
    """
    deck = ground["floors"][0]
    word, strictness = worst_of(parts)
    rest = [part for part in parts if part["verdict"] != FITS]
    count = count_words(parts, len(requirement["rectangles"]))
    reason = fill(SUM, {"deck": deck["item"]["name"], "count": count})
    answer = verdict({**plot_line(requirement), "strictness": strictness}, word, reason)
    answer["parts"] = rest
    answer["leans_on"] = once([key for part in parts for key in part["leans_on"]])
    answer["fact"] = outline_fact(deck)
    worst_parts = [part for part in rest if part["verdict"] == word]
    if word == SHORT:
        answer = with_remedy(answer, worst_parts[0] if len(rest) == 1 else PLOT)
        answer["margin"] = worst_parts[0]["margin"] if len(worst_parts) == 1 else ["", ""]
    elif word == ASK:
        answer["question"] = worst_parts[0]["question"]
        answer["act_question"] = worst_parts[0]["act_question"]
        answer["lacks"] = worst_parts[0]["lacks"]
    else:
        answer = with_least_room(answer, stands, ground["floors"])
        answer["notes"] = plot_notes(requirement, ground)
    return settled(answer)


def worst_of(parts: list[Verdict]) -> tuple[Word, Strictness]:
    """The worst verdict of what must be; where only what should be is short or open, that."""
    worst_must: Word = FITS
    worst_any: Word = FITS
    for part in parts:
        if RANK[part["verdict"]] > RANK[worst_any]:
            worst_any = part["verdict"]
        if part["strictness"] == "must" and RANK[part["verdict"]] > RANK[worst_must]:
            worst_must = part["verdict"]
    if RANK[worst_must] >= RANK[ASK]:
        return (worst_must, "must")
    return (worst_any, "should" if RANK[worst_any] >= RANK[ASK] else "must")


def count_words(parts: list[Verdict], number: int) -> str:
    """How many rectangles stand as asked, and which do not."""
    good = [part["title"] for part in parts if part["verdict"] == FITS]
    names = fill(GOOD_NAMES, {"names": ", ".join(good)}) if len(good) > 0 else ""
    rest: list[str] = []
    for word, called in COUNTED:
        titles = [part["title"] for part in parts if part["verdict"] == word]
        if len(titles) > 0:
            rest.append(fill(OTHER_NAMES, {"word": called, "names": ", ".join(titles)}))
    words = {
        "good": digits(len(good), 0),
        "number": digits(number, 0),
        "names": names,
        "rest": "".join(rest),
    }
    return fill(COUNT, words)


def with_least_room(answer: Verdict, stands: list[Stand], floors: list[Floor]) -> Verdict:
    """A plot that fits, with the least room to the edge of a floor."""
    least_m = FAR_M
    name = ""
    for stand in stands:
        floor = floor_under(stand["wish"], stand["rect"], floors)
        room_m = gap_m(stand["rect"], floor["corners"]) if floor is not None else FAR_M
        if room_m < least_m:
            least_m = room_m
            name = stand["wish"]["name"]
    words = both("length", least_m)
    answer["margin"] = signed(words, least_m)
    parts = {"reason": answer["reason"], "amount": words[0], "name": name}
    answer["reason"] = fill(LEAST_ROOM, parts)
    return answer


def plot_notes(requirement: PlotAsked, ground: Ground) -> list[str]:
    """What to know about the deck, about what stands on it, and how weights were taken."""
    notes = item_notes(ground["floors"][0]["item"])
    for item in items_of(ground["section"], "obstruction"):
        notes.extend(check_notes(item))
    notes = once(notes)
    if any(wish["weight_kg"] is not None for wish in requirement["rectangles"]):
        notes.append(SPREAD)
    if any(wish["foot_kg"] is not None for wish in requirement["rectangles"]):
        notes.append(FEET)
    return notes
