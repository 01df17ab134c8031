"""The drill: practice at a learner's own edge, on the bench."""
