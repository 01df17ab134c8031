"""What a learner's calls say of them: curves, agreement, and where the next coupon should lie."""
