"""The pieces cut along the steps' lines: their edges, the parts of the block they were, and their seams."""
