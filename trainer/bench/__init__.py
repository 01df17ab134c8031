"""The bench: the screen where a leaf is handled on a coupon."""
