"""Sections, leaves, contact, readings and measures. Knows no task, no file and no screen."""
