"""
Does this show fit this house: published facts and a show's requirements in, verdicts out.

The modules here have twins in JavaScript, so they keep to what both languages do alike: plain
records, text and floats; where a verdict hangs on a number only + - * / and a stated tolerance;
numbers in words by integer arithmetic; a stated order. They import nothing but each other.
"""
