"""The program: five commands and records without Qt, and the screens of the window."""
