"""What tank water is, what it will do, and what can be done to it.

Pure functions over plain floats in stated units. Every argument that is a `float` may also be a
numpy array of float64: the result is then an array, by the same formula.
"""
