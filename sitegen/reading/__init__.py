"""Files of an author's folder as texts, lists and tables, each with its place. This room knows nothing of sewing.

``ContentFolder`` is the only door to those files: no file outside of the folder is ever read. ``LooseFiles`` reads
what a user names on the command line. YAML and spreadsheet
files become nodes; what a node means is for the rooms above. No value is read as a number, date or yes and no.
Whatever bytes a file holds, nothing is raised: what is wrong is said to the collector, with its place and its cure.
"""

from sitegen.reading.folder import ContentFolder
from sitegen.reading.loose import LooseFiles
from sitegen.reading.nodes import Empty, Entry, Mapping, Node, Scalar, Sequence, Table

__all__ = ["ContentFolder", "Empty", "Entry", "LooseFiles", "Mapping", "Node", "Scalar", "Sequence", "Table"]
