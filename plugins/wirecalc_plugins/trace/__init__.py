"""A recorded current."""
