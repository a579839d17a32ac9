"""``python -m builder.cli`` is the command ``housepack``."""

from builder.cli import main

main()
