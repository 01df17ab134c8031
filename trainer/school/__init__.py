"""A class over several machines: who is in it, what they handed in, and the school's server."""
