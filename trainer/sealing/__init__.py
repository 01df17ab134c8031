"""Sealed files: sittings, results and the journal of a sitting that runs. No Qt but in `words`."""
