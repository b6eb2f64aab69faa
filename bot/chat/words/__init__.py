"""Every word that a keeper reads, a file a topic; nothing elsewhere makes sentences."""
