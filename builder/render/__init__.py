"""Renderers: blocks and drawings to text. Each escapes its own, in one place."""
