"""How the trainer looks: colours, type, spacing, icons. Qt only; no numpy, no geometry."""
