"""The kinds of picture, each a module with its input, ``describe`` and ``draw``."""
