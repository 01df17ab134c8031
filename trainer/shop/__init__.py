"""The coupon shop: where an instructor makes coupons, and lays them into trays."""
