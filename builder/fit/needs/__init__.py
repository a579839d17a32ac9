"""A need of a rider that a rule of the pack answers: which facts, and what they make of it."""
