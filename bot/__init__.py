"""Everything that touches the world: messengers, the store, reminders, the terminal."""
