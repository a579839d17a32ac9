"""The circuits as a tree: what feeds what, what stands on it, what is lost on the way."""
