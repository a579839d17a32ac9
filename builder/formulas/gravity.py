"""How hard the earth pulls, by agreement the same everywhere."""

STANDARD_GRAVITY_M_S2 = 9.80665
"""3rd General Conference on Weights and Measures, 1901; also the newtons of a kilogram's weight."""
