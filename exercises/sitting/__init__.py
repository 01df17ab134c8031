"""Sittings: timed sets of coupons without help, what came of them, what that says of a class."""
