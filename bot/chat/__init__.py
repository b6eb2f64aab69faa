"""The conversation: one file per topic, the same on every messenger."""
