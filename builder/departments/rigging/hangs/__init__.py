"""What hangs: bodies on supports, reactions, trims."""
