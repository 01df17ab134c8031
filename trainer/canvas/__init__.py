"""The one canvas: a frozen scene in, gestures in millimetres out."""
