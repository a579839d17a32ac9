"""What a department hears of the others: what it says it listens to, and no more."""

from dataclasses import replace

import pytest

from builder.exchange import Air, NotListened, Offers, heard
from builder.registry import DEPARTMENTS


def test_what_is_not_listened_to_cannot_be_read_by_mistake() -> None:
    offers = heard(Offers(air=Air(20.0, 50.0, 101.325)), {"air"})
    assert offers.air == Air(20.0, 50.0, 101.325)
    with pytest.raises(NotListened, match="'loads'"):
        _ = offers.loads


def test_surroundings_are_equal_where_all_that_is_heard_is() -> None:
    still, warm = Offers(air=Air(20.0, 50.0, 101.325)), Offers(air=Air(30.0, 50.0, 101.325))
    hung = replace(still, hang_states={"l": "works"})
    assert heard(still, {"air"}) == heard(hung, {"air"})
    assert heard(still, {"air"}) != heard(warm, {"air"})
    assert heard(still, {"air"}) != heard(still, {"air", "loads"})


def test_nobody_listens_to_what_nobody_offers() -> None:
    with pytest.raises(ValueError, match="gossip"):
        heard(Offers(), {"gossip"})
    for department in DEPARTMENTS:
        heard(Offers(), department.listens_to)
