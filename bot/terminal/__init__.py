"""The conversation on standard input and output: piped for scripts, interactive for people."""
