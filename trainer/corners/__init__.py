"""Four corners: two faces under both edges of one leaf, live, to be explained and shown."""
