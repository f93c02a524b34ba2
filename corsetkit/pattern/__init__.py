"""The pattern as values: edges, seams, pieces, waste, and the pattern that holds them."""
