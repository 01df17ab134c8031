"""The first coupon, step by step: a card beside the work, which goes on as the work does."""
