"""Where a section is taken from a scan or a drawing."""
