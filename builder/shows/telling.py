"""Shows on the books in words, for a terminal, and as records for programs."""

from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any

from builder.cautions import EVERYWHERE
from builder.fit.counting import count_words
from builder.fit.records import Verdict
from builder.fit.sentences import COUNTED
from builder.fit.verdicts import ASK, FITS, NOT_NEEDED, NOTED, SHORT
from builder.reading.values.sentences import within_sentence
from builder.render.terminal import hung
from builder.shows.booked import CONFIRMED, Booked, Books
from builder.shows.judging import Judged, Outlook, Turned, answers

IS = {FITS: "fits", NOTED: "fits", SHORT: "is short", ASK: "is to ask", NOT_NEEDED: "is not needed"}
WOULD = {
    FITS: "fit",
    NOTED: "fit",
    SHORT: "be short",
    ASK: "be to ask",
    NOT_NEEDED: "not be needed",
}
TOGETHER = "all acts together"


def outlook_lines(outlook: Outlook) -> Iterator[str]:
    """
    One line for each show to come, what is short below it, the caution, and which have played.
    """
    yield (
        f"Shows on the books from {outlook.on} on:"
        if outlook.coming
        else f"No show is on the books from {outlook.on} on."
    )
    for judged in outlook.coming:
        yield f"  {head(judged, outlook.on)}{chosen(judged)}: {counted(judged)}"
        yield from (hung(shortage(found), 4) for found in judged.short)
    if outlook.past:
        yield hung(
            f"Played before {outlook.on}, not judged:"
            f" {', '.join(f'{show.act} ({show.plays})' for show in outlook.past)}.",
            2,
        )
    if outlook.coming:
        short = [found for judged in outlook.coming for found in judged.short]
        yield from (hung(words, 2) for words in outlook.cautions(short))


def turned_lines(turns: Sequence[Turned], outlook: Outlook, faulty: Sequence[str]) -> Iterator[str]:
    """
    The verdicts that a change turns, one a line with date and show, and which files could not be
    judged, or not whole, of those that have problems.
    """
    if turns:
        yield "Shows on the books that this changes:"
        yield from (
            hung(f"{head(turn.judged, outlook.on)}: {turn_words(turn)}", 2) for turn in turns
        )
    elif outlook.coming:
        yield "Shows on the books: no verdict changes."
    judged = {show.file for each in outlook.coming for show in each.day.shows}
    for words, files in (
        ("Not judged", [file for file in faulty if file not in judged]),
        ("Judged in part", [file for file in faulty if file in judged]),
    ):
        if files:
            yield hung(
                f"{words}, for 'housepack check' finds problems in them: {', '.join(files)}."
            )


def names_in(words: str, books: Books) -> tuple[str, ...]:
    """The acts on the books that a text names, whatever its capitals."""
    return tuple(
        dict.fromkeys(show.act for show in books.shows if show.act.casefold() in words.casefold())
    )


def named_lines(words: str, books: Books) -> Iterator[str]:
    """A warning where a text that is published names acts on the books."""
    if acts := names_in(words, books):
        yield hung(
            f"The reason names {', '.join(acts)} from your books, and the log is published. Give"
            " the order again without it if that is too early."
        )


def turn_words(turn: Turned) -> str:
    """One verdict before and after: power for sound fits now, would be short by 32 A."""
    was, now = turn.before, turn.after
    if now is None:
        return (
            f"{named(turn)} {IS[turn.found['verdict']]}{by_how_much(turn.found)} now, would no"
            " longer be told"
        )
    if was and (was["verdict"], by_how_much(was)) == (now["verdict"], by_how_much(now)):
        return (
            f"{named(turn)} still {now['verdict']}: by {answers(now) or 'nothing stated'} in place"
            f" of {answers(was) or 'nothing stated'}"
        )
    before = f"{IS[was['verdict']]}{by_how_much(was)} now, " if was else ""
    return (
        f"{named(turn)} {before}would"
        f" {WOULD[now['verdict']]}{by_how_much(now)}{explained(was, now)}"
    )


def explained(was: Verdict | None, now: Verdict) -> str:
    """
    What else to say of a verdict as it would be: that it has a note, or why it is short or to ask.
    """
    if was and (was["verdict"], now["verdict"]) == (FITS, NOTED):
        return f", with a note: {now['notes'][0].rstrip('.')}" if now["notes"] else ", with a note"
    why = now["verdict"] in (SHORT, ASK) and not now["reason"].startswith("Short by")
    return f" ({now['reason'].rstrip('.')})" if why else ""


def named(turn: Turned) -> str:
    """What was asked; with how much of it where the show asks for several things of that name."""
    title = turn.found["title"]
    several = sum(found["title"] == title for found in turn.judged.verdicts) > 1
    words = f"{title}, {turn.found['need']}," if several else title
    return within_sentence(words)


def by_how_much(found: Verdict) -> str:
    """By how much a verdict is short, empty where that has no number."""
    margin = found["margin"][0].lstrip("−+")
    return f" by {margin}" if found["verdict"] == SHORT and margin else ""


def shortage(found: Verdict) -> str:
    """By how much something is short, what it is, and why where that has no number."""
    should = " (should)" if found["strictness"] == "should" else ""
    by = by_how_much(found)
    return (
        f"short{should}{by}: {found['title']},"
        f" {found['need']}{'' if by else ': ' + found['reason'].rstrip('.')}"
    )


def head(judged: Judged, on: date) -> str:
    """
    Date and act, and how firm the date is where it is not.

    The year is told where it is another than that of ``on``.
    """
    who = judged.show.act if judged.show else TOGETHER
    hold = "" if judged.day.booking == CONFIRMED else f", {judged.day.booking}"
    return f"{spoken(judged.day.plays, on)}, {who}{hold}"


def chosen(judged: Judged) -> str:
    """
    The space that a show is judged in, and the configuration, where its rider leaves that open.
    """
    if judged.show is None:
        return ""
    is_open = not judged.show.asks["configuration"]
    places = [place for place in (judged.space, judged.configuration if is_open else "") if place]
    return f", in {', '.join(places)}" if places else ""


def spoken(day: date, on: date) -> str:
    """A date as people say it: Saturday 5 December."""
    return f"{day:%A} {day.day} {day:%B}{'' if day.year == on.year else f' {day.year}'}"


def counted(judged: Judged) -> str:
    """How many verdicts of each word, the worst first."""
    if not judged.verdicts:
        return f"its rider asks nothing{in_part(judged)}"
    words = [found["verdict"] for found in judged.verdicts if found["verdict"] != NOT_NEEDED]
    told = ", ".join(count_words(words)) or "nothing is needed of the house"
    return f"{told}{in_part(judged)}"


def in_part(judged: Judged) -> str:
    """That not all of a show's rider can be read; empty where it can."""
    lines = len(judged.show.asks["not_read"]) if judged.show else 0
    return f"; {lines} line{'' if lines == 1 else 's'} of its rider not judged" if lines else ""


def outlook_record(outlook: Outlook) -> dict[str, Any]:
    """The same for programs."""
    return {
        "from": outlook.on.isoformat(),
        "coming": [judged_record(judged) for judged in outlook.coming],
        "past": [past_record(show) for show in outlook.past],
        "caution": EVERYWHERE,
    }


def past_record(show: Booked) -> dict[str, str]:
    """A show that has played, for programs."""
    return {"file": show.file, "act": show.act, "plays": show.plays.isoformat()}


def judged_record(judged: Judged) -> dict[str, Any]:
    """One show, or the day, for programs. ``file`` and ``act`` are empty for the day."""
    return {
        "file": judged.show.file if judged.show else "",
        "act": judged.show.act if judged.show else "",
        "plays": judged.day.plays.isoformat(),
        "booking": judged.day.booking,
        "space": judged.space,
        "configuration": judged.configuration,
        "together_with": [show.act for show in judged.day.shows if show is not judged.show],
        "verdict": judged.verdict,
        "not_read": len(judged.show.asks["not_read"]) if judged.show else 0,
        "counts": {
            word: sum(found["verdict"] == word for found in judged.verdicts) for word in COUNTED
        },
        "short": [short_record(found) for found in judged.short],
    }


def short_record(found: Verdict) -> dict[str, Any]:
    """What is short, for programs."""
    return {
        name: found[name]
        for name in ("title", "need", "strictness", "margin", "reason", "remedy", "who", "line")
    }
