"""Sound's drawings."""
