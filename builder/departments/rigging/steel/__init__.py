"""The steel overhead: where it is, which limit holds where, what is left."""
