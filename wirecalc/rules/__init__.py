"""What a shop asks beyond the published limits: it only tightens."""
