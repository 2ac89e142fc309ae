"""A function and the texts for its inputs become one finding."""
