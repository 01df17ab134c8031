"""The logbook: every attempt kept, and what they say of a learner. No Qt but in its screen."""
