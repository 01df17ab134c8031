"""Results of sittings: a class in tables and pictures, one learner's paper, who is ready."""
