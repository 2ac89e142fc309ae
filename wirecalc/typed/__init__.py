"""A text that a person typed in; a plain value or a refusal out."""
