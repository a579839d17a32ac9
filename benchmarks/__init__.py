"""Benchmarks that can be run again: ``python -m benchmarks``, or one of them as a module."""
