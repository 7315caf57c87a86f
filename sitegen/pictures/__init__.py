"""Photos for pages: upright, small enough for a phone, and without place, camera or any other hidden data.

``prepare`` takes one picture file and gives back what stands in the page, or says in plain words what is wrong with
the file; ``for_paper`` gives the one file that a printed sheet needs; ``upright_size`` tells only how large it is.
Knows nothing of tutorials, pages or where a site is written.
"""

from sitegen.pictures.photo import for_paper, prepare, recipe_of, upright_size
from sitegen.pictures.prepared import Prepared, Rendition, Trouble

__all__ = ["Prepared", "Rendition", "Trouble", "for_paper", "prepare", "recipe_of", "upright_size"]
