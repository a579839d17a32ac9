"""
Power for all departments and acts at the same time: which services and outlets could take each
load, and a place for all of them together.
"""
