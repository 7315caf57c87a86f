"""sitegen: write a beginner sewing tutorial once, have every number checked, publish it as a site.

The rooms of the package, from the ground up, are described in DEVELOPERS.md; a room imports only from
rooms below it.
"""

__version__ = "0.1.0"
