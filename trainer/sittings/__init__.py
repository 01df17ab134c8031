"""Sittings: composed and sealed, sat, gone through; the class that sits them."""
