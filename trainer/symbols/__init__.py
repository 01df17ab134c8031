"""Weld symbols, drawn as the open standards draw them."""
