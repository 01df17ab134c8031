"""The reference: every limit, formula and definition to look up, with where it comes from."""
