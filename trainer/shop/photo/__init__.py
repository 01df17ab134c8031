"""From a photo: a section out of a picture of a cut and etched weld."""
