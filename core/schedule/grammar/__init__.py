"""The grammar of time: small functions whose docstrings are its rules.

In the docstrings a name in capitals is a role of the vocabulary, `[x]` may be left out, `x*` may
repeat, and `|` parts alternatives. Each function takes a line and an index and gives (piece, next
index) or None.
"""
