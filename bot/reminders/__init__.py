"""Reminders: claimed, delivered, settled; and the clock that wakes at the next due time."""
