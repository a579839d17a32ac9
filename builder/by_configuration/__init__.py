"""
Figures in each configuration of a house: what hangs, stands or draws in some of them only counts in
those. The first that the house names is the usual one; of the others the pack tells what differs.
"""
