"""Money, rules, weather, documents and what is hired: as data, and told on the house's page."""

import pytest

from builder.pack import Item, Level, Standing
from builder.reading.problems import Refused
from tests.departments.test_house import codes, published

FINE = "fine: {amount: £500, grace: 5 min, step: 5 min}"


def item(text: str, key: str) -> Item:
    """An item of what a text publishes."""
    return next(item for item in published(text).section.items if item.key == key)


def test_a_curfew_tells_grace_step_and_amount_and_may_leave_open_how_hard_it_is() -> None:
    curfew = item(f"curfews: [{{days: Thursday, music_ends: 22:00, {FINE}}}]\n", "house.curfew.1")
    assert [curfew.text(f"fine.{key}") for key in ("amount", "grace", "step")] == [
        "£500",
        "5 min",
        "5 min",
    ]
    assert curfew.fact("strictness") is None


def test_a_limit_that_nobody_says_how_to_measure_is_told_as_incomplete() -> None:
    text = "noise_limits: [{name: Mill, level: 65 dB(A), metric: unknown, distance: 310 m}]\n"
    (finding,) = published(text).findings
    assert (finding.level, finding.code) == (Level.CAUTION, "limit-incomplete")
    assert "does not say how it is measured." in finding.sentence


def test_peaks_are_counted_in_a_window_with_a_fine_for_each() -> None:
    text = (
        "noise_limits: [{name: P, level: 110 dB(C), metric: peak level, counted: {more_than: 6,"
        " within: 20 min}, fine: {amount: £200, for_each: each peak}}]\n"
    )
    assert codes(text) == []
    limit = item(text, "house.noise.1")
    assert (limit.text("counted.more_than"), limit.text("counted.within")) == ("6", "20 min")
    assert limit.text("fine.for_each") == "each peak"


def test_capacities_that_are_in_circulation_stand_beside_the_one_that_holds() -> None:
    others = "other_figures: [{says: 4999, by: the licence of 2019}, {says: 6000, by: a paper}]"
    text = f"configurations: [{{name: S, audience: standing, capacity: 4500, {others}}}]\n"
    configuration = item(text, "house.configuration.s")
    assert configuration.number("capacity") == 4500
    assert configuration.text("other_figures") == "4,999, the licence of 2019; 6,000, a paper"


def test_rules_rates_and_documents_are_lines_with_whom_they_bind_and_what_they_cost() -> None:
    rule = item(
        "rules: [{rule: No smoking., kind: smoking, binds: all, days: [Friday], fine: {amount:"
        " unknown}}]\n",
        "house.rule.1",
    )
    assert (rule.text("kind"), rule.text("days")) == ("smoking", "Friday")
    amount = rule.fact("fine.amount")
    assert amount is not None
    assert amount.standing is Standing.UNKNOWN
    rate = item(
        "rates: [{what: Hands, amount: £17, per: hour, least: 4 h, surcharge: {from: 00:00, times:"
        " 2}}]\n",
        "house.rate.1",
    )
    assert (rate.text("amount"), rate.number("least"), rate.text("surcharge.times")) == (
        "£17",
        4 * 3600,
        "2.0",
    )


def test_what_is_hired_names_a_document_that_is_there() -> None:
    hired = "hired: [{name: Roof, departments: [rigging], sheet: Roof sheet, make: unknown}]\n"
    document = "documents: [{name: Roof sheet, kind: maker's sheet, dated: 2022}]\n"
    assert item(hired + document, "house.hired.roof").text("sheet") == "Roof sheet"
    assert item(hired + document, "house.document.roof-sheet").text("dated") == "2022"


def test_weather_tells_lightning_and_who_judges() -> None:
    text = "weather: {rain: the show goes on, lightning_within: 10 km, judged_by: [Chief, Owner]}\n"
    weather = item(text, "house.weather")
    assert (weather.text("judged_by"), weather.number("lightning_within")) == (
        "Chief, Owner",
        10_000,
    )


def test_an_amount_that_is_no_number_is_refused_with_its_line() -> None:
    with pytest.raises(Refused) as refused:
        published("rates: [{what: Hands, amount: 17 quid}]\n")
    (problem,) = refused.value.problems
    assert problem.code == "money-unreadable"


SEATED = """
configurations:
  - name: Seated
    audience: seated
    capacity: %s
    blocks:
      - {name: orchestra, places: 704}
      - {name: loge, places: %s, numbered: no, boxes: A to H}
    wheelchair_at: [{row: K, first: 1, last: 4}, {row: K, first: 31, last: 34}]
"""


def test_blocks_tell_boxes_and_seats_and_their_sum_waits_for_what_nobody_counted() -> None:
    unknown = SEATED % (1188, "unknown")
    seated = item(unknown, "house.configuration.seated")
    assert seated.text("blocks") == (
        "orchestra 704, loge not known yet (boxes A to H, seats without numbers)"
    )
    assert seated.text("wheelchair_at") == "row K, 1 to 4; row K, 31 to 34"
    assert codes(unknown) == []
    assert codes(SEATED % (800, 96)) == []
    assert codes(SEATED % (801, 96)) == ["sum-differs"]


@pytest.mark.parametrize(
    "written", ["", "first_month: May", "days: [Monday], last_month: May", "from: 17:00"]
)
def test_what_comes_back_says_on_which_days_or_in_which_months(written: str) -> None:
    with pytest.raises(Refused) as refused:
        published(f"regularly: [{{what: the band{written and ', ' + written}}}]\n")
    assert [problem.code for problem in refused.value.problems] == ["regular-when"]


def test_a_rule_that_counts_peaks_may_not_know_its_level() -> None:
    text = (
        "noise_limits: [{name: Street, level: unknown, metric: unknown,"
        " counted: {more_than: 4, within: 10 min}, fine: {amount: $250, each_further: $100}}]\n"
    )
    (finding,) = published(text).findings
    assert finding.sentence == (
        "The noise limit 'Street' does not say how it is measured or at which level. Nobody can"
        " keep it as it stands."
    )
    assert item(text, "house.noise.1").text("fine.each_further") == "$100"
