"""The house: capacities that add up, limits that can be kept, absence that stays three things."""

from datetime import date

from builder.department import Published, Surroundings
from builder.departments.house.description import House
from builder.departments.house.page import headline
from builder.departments.house.publish import offer, publish
from builder.exchange import Offers
from builder.pack import Pack, Revision
from builder.reading.reader import read
from builder.stating import Ageing

AROUND = Surroundings(Offers(), Ageing(date(2026, 6, 1), 365), "metric")
HOUSE = (
    "language: 2\nname: A\nwhat: b\ntown: c\nsetting: indoors\ntime_zone: d\n"
    "revision: {number: 1, on: 2026-01-02, by: e}\n"
)
PACK = Pack("A", Revision("1", "2026-01-02", "e", ""), (), ())


def published(text: str) -> Published:
    """What a text publishes."""
    return publish(read(HOUSE + text, file="house.yml", kind=House), AROUND)


def codes(text: str) -> list[str]:
    """The codes of the findings on a text."""
    return [finding.code for finding in published(text).findings]


def test_blocks_that_make_up_the_capacity_are_no_finding() -> None:
    assert (
        codes(
            "configurations: [{name: S, audience: seated, capacity: 10, blocks: [{name: a, places:"
            " 6}, {name: b, places: 4}]}]\n"
        )
        == []
    )


def test_blocks_that_do_not_add_up_are_told_with_both_numbers() -> None:
    """A published house said 1,501 for blocks of 600, 386 and 507, which make 1,493."""
    blocks = "blocks: [{name: a, places: 600}, {name: b, places: 386}, {name: c, places: 507}]"
    (finding,) = published(
        f"configurations:\n  - {{name: S, audience: seated, capacity: 1501, {blocks}}}\n"
    ).findings
    assert (
        finding.sentence
        == "S: the blocks add up to 1,493, the stated capacity is 1,501. Which one is right?"
    )


def test_a_noise_limit_without_weighting_or_time_cannot_be_kept() -> None:
    limit = "noise_limits: [{name: L, level: %s, metric: equivalent level, measured_at: mix%s}]\n"
    assert codes(limit % ("99 dB(A)", ", over: 60 min")) == []
    assert codes(limit % ("99 dB", ", over: 60 min")) == ["limit-incomplete"]
    assert codes(limit % ("99 dB(A)", "")) == ["limit-incomplete"]


def test_the_air_is_offered_to_sound() -> None:
    air = offer(
        read(HOUSE + "air: {temperature: 68 F, humidity: 40 %}\n", file="house.yml", kind=House)
    ).air
    assert air is not None
    assert (round(air.temperature_c, 6), air.humidity_percent) == (20.0, 40.0)


def test_the_home_page_tells_no_curfew_from_an_unknown_one_and_from_silence() -> None:
    def curfew(text: str) -> str:
        entry = next(
            entry for entry in headline(published(text).section, PACK) if entry.label == "Curfew"
        )
        return (
            entry.words
            if isinstance(entry.words, str)
            else "".join(getattr(part, "text", str(part)) for part in entry.words)
        )

    assert [curfew("curfews: none\n"), curfew("curfews: ?\n"), curfew("")] == [
        "none",
        "not known yet",
        "not stated",
    ]
    assert curfew("curfews: [{days: all, music_ends: 22:30, strictness: hard}]\n") == "22:30"
