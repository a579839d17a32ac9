"""Codes of problems and findings, by the page that explains them."""

import re
from collections.abc import Iterator, Mapping

from builder.explaining.paragraph import Paragraph, plain, spelt

FINDING = "*Finding.* "


def codes(problems: str) -> Mapping[str, str]:
    """What the page says of each code."""
    parts = re.split(r"^## +(.+?) *$", problems, flags=re.MULTILINE)[1:]
    return dict(zip(parts[::2], (part.strip() for part in parts[1::2]), strict=True))


def code_explained(word: str, problems: str) -> Iterator[Paragraph]:
    """The code of a problem or a finding, as its page explains it."""
    told = {spelt(code): (code, text) for code, text in codes(problems).items()}
    if spelt(word) not in told:
        return
    code, text = told[spelt(word)]
    kind = "a finding" if text.startswith(FINDING) else "a problem"
    yield Paragraph(f"{code}: {kind}", indent=0)
    for paragraph in text.removeprefix(FINDING).split("\n\n"):
        yield Paragraph(plain(paragraph))
