"""A chapter or clause number was looked up, or it says that it is from memory."""

import importlib
import pkgutil
import re
from collections.abc import Iterator

import pytest

import builder.formulas
from builder.formulas.cite import CITED, FROM_MEMORY, Citation
from builder.formulas.conductors import (
    NEC_TABLE_9_OHM_PER_KFT,
    awg_conductor,
    flexible_conductor,
    metric_aluminium,
    metric_conductor,
)
from builder.formulas.connectors import CONNECTORS
from builder.formulas.signals import LINE_LIMITS

PLACE = re.compile(
    r"^\d|\d\.\d|\b(?:ch\.|app\.|annex|appendix|chapter|clause|lessons?|part|section|standard"
    r" sheets|tables?|equations?) \(?(?:[A-Z]\b|\d)",
    re.IGNORECASE,
)
"""What names a place in a work: a chapter, a clause, a table, an equation."""

LOOKED_UP = {
    "Directive 2003/88/EC": "article 3 in the summary of the European agency for safety at work",
    "29 CFR 1910.95": "the regulation's own text: appendix A, table G-16a",
    "EN 1991-1-4:2005": (
        "Steel Buildings in Europe, Single-storey, Part 3, App. B: 4.5 (1); an open implementation"
        " that names 5.3 with its equation"
    ),
    "Hall, Rigging Math": "the primer itself, Lessons 3, 4, 6 and 9",
    "Hibbeler 2013": "the publisher's table of contents of the 13th edition",
    "IEC 60364-5-52:2009": "its Table E.52.1 as BS 7671 Table 4Aa repeats it",
    "IEC 61260-1:2014": "equations (1) to (5) as named in the source of pyfar 0.8.1",
    "IEC 61672-1:2013": (
        "table 3 in copies; equations (E.1) and (E.6) as named in open implementations"
    ),
    "IEEE 802.3-2018": "makers' sheets that name clauses 38, 40 and 52",
    "ISO 9613-1:1993": (
        "equations (3) to (5), (A.5) and (B.1) to (B.3) as named in the source of pyfar 0.8.1"
    ),
    "ISO 9613-2:1996": (
        "open implementations that name 7.3.1, table 3 and equations (7), (9) and (18); test cases"
        " of ISO/TR 17534-3:2015"
    ),
    "Kassimali 2005": "Example 13.14 and Fig. D.5 as quoted in tests of PyNiteFEA",
    "NFPA 70:2020": (
        "copies of chapter 9, tables 8 and 9, 310.16 and 400.5(A); a trade paper's code quiz for"
        " 520.53"
    ),
    "Nilsson & Riedel 2011": "a bookseller's table of contents of the 9th edition",
}
"""Where the numbers of a source were read, other than those that say they are from memory."""


def citations() -> Iterator[Citation]:
    """Every citation that a page can show."""
    for module in pkgutil.iter_modules(builder.formulas.__path__):
        importlib.import_module(f"builder.formulas.{module.name}")
    yield from CITED.values()
    yield from (
        one.citation
        for one in (
            *CONNECTORS,
            *LINE_LIMITS,
            metric_conductor(35),
            metric_aluminium(35),
            flexible_conductor(35),
        )
    )
    yield from (awg_conductor(size).citation for size in NEC_TABLE_9_OHM_PER_KFT)


@pytest.mark.law
def test_a_number_that_nobody_looked_up_says_so() -> None:
    unread = {
        f"{cited.source.key}, {cited.clause}"
        for cited in citations()
        if PLACE.search(cited.clause)
        and not cited.clause.endswith(FROM_MEMORY)
        and cited.source.key not in LOOKED_UP
    }
    assert unread == set()


@pytest.mark.law
def test_every_source_that_was_looked_up_is_cited_by_number() -> None:
    numbered = {
        cited.source.key
        for cited in citations()
        if PLACE.search(cited.clause) and not cited.clause.endswith(FROM_MEMORY)
    }
    assert numbered == set(LOOKED_UP)
