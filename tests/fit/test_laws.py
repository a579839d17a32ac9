"""Laws that hold for every rider and pack."""

from hypothesis import given
from hypothesis import strategies as st

from builder.fit.interpreter import fit
from tests.fit.sample import Record, asks, item, pack, rider, value

lengths = st.one_of(st.none(), st.floats(0, 40, allow_nan=False))
standings = st.sampled_from(["stated", "unknown", "none", "not stated"])
wishes = st.floats(0, 40, allow_nan=False)


def deck(name: str, length_m: float | None, standing: str) -> Record:
    """A deck whose width is known, or not."""
    known = length_m if standing == "stated" else None
    return item(
        "deck",
        name,
        usable_width=value(
            "x" if known is not None else "",
            known,
            standing if known is not None or standing != "stated" else "unknown",
        ),
    )


decks = st.lists(st.builds(deck, st.just("Deck"), lengths, standings), max_size=4)
counts = st.lists(
    st.builds(
        lambda n: item(
            "riser",
            "R",
            rolling=value("yes"),
            count=value("x", n) if n is not None else value(standing="unknown"),
        ),
        st.one_of(st.none(), st.integers(0, 9).map(float)),
    ),
    max_size=4,
)


def word(requirement: Record, stage: list[Record]) -> str:
    """The verdict's word."""
    return str(fit(pack(stage=stage), [rider(requirement)])["verdicts"][0]["verdict"])


def fitting(verdict: str) -> bool:
    """Whether a word is a fit."""
    return verdict.startswith("fits")


@given(wishes, wishes, decks)
def test_asking_less_never_turns_a_fit_into_a_short(
    one_m: float, other_m: float, house: list[Record]
) -> None:
    less, more = sorted((one_m, other_m))
    if fitting(word(asks("stage width", low=more), house)):
        assert fitting(word(asks("stage width", low=less), house))


@given(wishes, decks, decks)
def test_a_house_that_adds_something_never_turns_a_fit_into_a_short(
    wish_m: float, house: list[Record], added: list[Record]
) -> None:
    if fitting(word(asks("stage width", low=wish_m), house)):
        assert fitting(word(asks("stage width", low=wish_m), [*house, *added]))


@given(st.integers(0, 20).map(float), counts, counts)
def test_the_same_holds_for_sums(wish: float, house: list[Record], added: list[Record]) -> None:
    requirement = asks("rolling risers", low=wish)
    if fitting(word(requirement, house)):
        assert fitting(word(requirement, [*house, *added]))
        assert fitting(word(asks("rolling risers", low=max(0.0, wish - 1)), house))


@given(wishes, st.lists(st.sampled_from(["unknown", "not stated"]), max_size=4))
def test_unknown_never_yields_fits_or_short(wish_m: float, unknown: list[str]) -> None:
    house = [item("deck", "Deck", usable_width=value(standing=standing)) for standing in unknown]
    assert word(asks("stage width", low=wish_m), house) == "ask"


@given(
    st.lists(st.integers(1, 120).map(float), min_size=1, max_size=5),
    st.lists(st.integers(0, 150).map(float), min_size=1, max_size=4),
)
def test_loads_that_are_placed_never_exceed_what_is_free(
    wants_a: list[float], frees_a: list[float]
) -> None:
    power = [
        item("service", f"S{index}", free__L1=value("x", free), rating=value("x", free))
        for index, free in enumerate(frees_a)
    ]
    blank = {
        "sort": "power",
        "use": "x",
        "count": 1.0,
        "phases": "three",
        "system": "",
        "connector": "",
        "within_m": None,
        "of": "",
        "apart": False,
        "more": None,
    }
    result = fit(
        pack(power=power), [rider(*({**asks("x"), **blank, "current_a": want} for want in wants_a))]
    )
    used: dict[str, float] = {}
    for want, found in zip(wants_a, result["verdicts"], strict=True):
        if fitting(found["verdict"]):
            used[found["fact"]["item"]] = used.get(found["fact"]["item"], 0.0) + want
    assert all(total <= frees_a[int(name[1:])] for name, total in used.items())


@given(
    st.lists(st.integers(1, 120).map(float), min_size=1, max_size=4),
    st.lists(st.integers(0, 150).map(float), min_size=1, max_size=3),
    st.data(),
)
def test_a_set_of_loads_that_all_fit_still_fits_when_one_asks_less(
    wants_a: list[float], frees_a: list[float], data: st.DataObject
) -> None:
    power = [
        item("service", f"S{index}", free__L1=value("x", free), rating=value("x", free))
        for index, free in enumerate(frees_a)
    ]
    blank = {
        "sort": "power",
        "use": "x",
        "count": 1.0,
        "phases": "three",
        "system": "",
        "connector": "",
        "within_m": None,
        "of": "",
        "apart": False,
        "more": None,
    }

    def whole(wants: list[float]) -> str:
        return str(
            fit(
                pack(power=power),
                [rider(*({**asks("x"), **blank, "current_a": want} for want in wants))],
            )["verdict"]
        )

    if fitting(whole(wants_a)):
        index = data.draw(st.integers(0, len(wants_a) - 1))
        assert fitting(
            whole([want / 2 if each == index else want for each, want in enumerate(wants_a)])
        )
