"""What is true of water and of words about it: pure functions and values.

Nothing here reads a clock, a file outside the package, a network or a database; 'now' is an
argument wherever it matters.
"""
