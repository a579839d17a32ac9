"""
The day's clock: curfew and load-in against the house's hours, and the day from load-in to the last
truck.

Begin at ``day``.
"""
