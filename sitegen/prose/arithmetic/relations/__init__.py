"""Results that the words of one or two sentences tell, found by the numbers that stand together there.

A run of neighbouring quantities is taken whole: one length is the result, and all the other lengths, counts, shares and
doublings must have a part in the sum. The words name the relation (``each``, ``both``, ``less``, ``half``, ``at either
end``); where a named relation holds, all is well; where it nearly holds, and no other way of putting the same numbers
together explains the result, the result is wrong. In doubt nothing is said.
"""

from sitegen.prose.arithmetic.relations.judge import Contradicted, Judged, judged
from sitegen.prose.arithmetic.relations.roles import is_adjective

__all__ = ["Contradicted", "Judged", "is_adjective", "judged"]
