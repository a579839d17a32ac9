"""What a rider may ask for."""

from collections.abc import Iterator

from builder.explaining.paragraph import Paragraph, plain, spelt
from builder.guide import VALUES, answer
from builder.registry import RULES
from builder.rules import Rule


def asking_explained(word: str) -> Iterator[Paragraph]:
    """Something that a rider may ask for under ``what``."""
    rules = {spelt(key): rule for key, rule in RULES.items()}
    rule = rules.get(spelt(word))
    if rule is not None:
        yield Paragraph(f"{rule.key}: a rider may ask for it", indent=0)
        yield Paragraph(f"{rule.title}. Value: {plain(VALUES[rule.kind])}.")
        yield Paragraph(f"The answer: {plain(answer(rule))}.")
        yield Paragraph("For example:")
        yield Paragraph(f"needs: [{{what: {rule.key}, {way_of(rule)}}}]", indent=4, is_example=True)


def way_of(rule: Rule) -> str:
    """How a rider asks for it, with what nobody knows yet as the amount."""
    way = rule.ways[0]
    return f"{way}: [unknown, unknown]" if way == "between" else f"{way}: unknown"
