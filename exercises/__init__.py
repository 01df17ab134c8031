"""Coupons, trays, rules, the right call, grades and handling. Knows geometry and no Qt."""
