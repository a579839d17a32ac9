"""One rectangle of a stage plot: where it stands, and its verdict from what was found about it."""

from builder.fit.margins import signed
from builder.fit.plots.hits import SET, of_word, worst_word
from builder.fit.plots.records import Hit, Stand
from builder.fit.plots.sentences import (
    AS_ASKED,
    ONE_SENTENCE,
)
from builder.fit.records import Line, PlotAsked, RectangleAsked, Verdict
from builder.fit.sentences import fill
from builder.fit.verdicts import ASK, FITS, NOTED, SHORT, lacks_of, verdict, with_questions
from builder.fit.wording import both
from builder.formulas.polygons import box_around
from builder.formulas.rectangles import Rectangle, corners_of, rectangle
from builder.reading.values.sentences import sentence_start


def stand_of(wish: RectangleAsked) -> Stand:
    """A rectangle that has its place, with its extent, worked out once."""
    rect = rect_of(wish)
    return {"wish": wish, "rect": rect, "box": box_around(corners_of(rect))}


def rect_of(wish: RectangleAsked) -> Rectangle:
    """A rectangle where the rider puts it; about the datum where it has no place."""
    across_m, upstage_m = wish["across_m"], wish["upstage_m"]
    return rectangle(
        across_m if across_m is not None else 0.0,
        upstage_m if upstage_m is not None and across_m is not None else 0.0,
        width_m=wish["width_m"],
        depth_m=wish["depth_m"],
        turned_deg=wish["turned_deg"],
    )


def plot_line(requirement: PlotAsked) -> Line:
    """The plot's own line of the rider."""
    return {
        "act": requirement["act"],
        "line": requirement["line"],
        "department": requirement["department"],
        "title": requirement["title"],
        "need": requirement["need"],
        "strictness": requirement["strictness"],
    }


def piece_line(requirement: PlotAsked, wish: RectangleAsked) -> Line:
    """One rectangle's line of the rider."""
    line = plot_line(requirement)
    line["title"] = wish["name"]
    line["need"] = wish["need"]
    line["line"] = wish["line"]
    line["strictness"] = wish["strictness"]
    return line


def piece_answer(line: Line, hits: list[Hit]) -> Verdict:
    """A rectangle's verdict with what was found about it."""
    worst = worst_word(hits)
    word = worst if worst is not None else FITS
    decisive = of_word(hits, word)
    reason = one_sentence([hit["words"] for hit in decisive]) if len(decisive) > 0 else AS_ASKED
    answer = verdict(line, word, reason)
    facts = [hit["fact"] for hit in decisive if hit["fact"] is not None]
    if len(facts) > 0:
        answer["fact"] = facts[0]
    set_for_it = [hit["fact"] for hit in hits if hit["sort"] == SET]
    answer["leans_on"] = [fact["key"] for fact in set_for_it if fact is not None]
    if word in (SHORT, ASK):
        beside = [*of_word(hits, ASK), *of_word(hits, NOTED)]
        answer["notes"] = [one_sentence([hit["words"]]) for hit in beside if hit["word"] != word]
    if word == SHORT:
        answer["margin"] = first_margin(decisive)
    if word == ASK:
        return with_questions(answer, line, lacks_of([hit["question"] for hit in decisive]))
    return answer


def first_margin(hits: list[Hit]) -> list[str]:
    """By how much the first thing that has an amount is short."""
    for hit in hits:
        if hit["by"] > 0:
            return signed(both(hit["measure"], hit["by"]), -hit["by"])
    return ["", ""]


def one_sentence(words: list[str]) -> str:
    """What was found, as one sentence."""
    text = "; ".join(words)
    end = "" if text.endswith(".") else "."
    return fill(ONE_SENTENCE, {"words": sentence_start(text), "end": end})
