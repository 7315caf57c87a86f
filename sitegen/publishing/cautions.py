"""The usual caution for each tool, in a sentence or two. None of them says that anything is safe.

Sources: 4-H sewing-contest safety guide (cutter, iron, pins, shears); school laboratory rules (machine);
16 CFR 1501 (small parts); 16 CFR 1120 and EN 14682 as explained by Tukes (cords); 16 CFR 1615, 1616 (sleepwear).
"""

from __future__ import annotations

from sitegen.publishing.views import Caution
from sitegen.quantities import ENGLISH, English

_TEXTS = {
    "pins": "Keep pins in a cushion, never in the mouth, and take each out before the needle reaches it.",
    "iron": "Rest the iron on its heel with the cord out of the way, keep face and fingers out of the steam, and unplug"
    " it when you leave.",
    "rotary cutter": "Close the guard whenever the cutter is put down. Cut away from yourself, on a mat, along a ruler"
    " held with the fingers behind its edge.",
    "scissors": "Close them when they are not in use, pass them handle first, and let them fall if they fall.",
    "sewing machine": "Keep fingers out of the path of the needle. Switch the machine off before you change"
    " needle or foot.",
    "needles": "Count your needles before and after, and put broken ones in a closed box.",
    "small parts": "Small children put loose parts in their mouths. Follow the law of your place on small parts, and"
    " test every fastening with a firm pull.",
    "cords": "Cords at hood or neck have killed children. The law of many places forbids them and limits cords at the"
    " waist: look yours up before you add one.",
    "sleepwear": "The law of many places asks children's sleepwear to fit closely or to resist flame: look yours up.",
}


def caution(name: str, language: English = ENGLISH) -> Caution:
    """The caution of this name; a text of the author's own stands as it is."""
    if name in _TEXTS:
        return Caution(language.say(name.capitalize()), language.say(_TEXTS[name]))
    return Caution(language.say("Take care"), language.own(name))
