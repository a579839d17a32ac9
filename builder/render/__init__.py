"""From blocks to what people read. Each renderer escapes its own text, in one place."""
