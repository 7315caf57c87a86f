"""The languages of pages: what the program says, what themes say, and words of another language among them."""

from sitegen.publishing.languages.asked_words import asked_in, words_are_there
from sitegen.publishing.languages.foreign import finished_page, foreign, unmarked
from sitegen.publishing.languages.phrases import fill, misplaced, places_of
from sitegen.publishing.languages.speech import ENGLISH_CODE, Speech, language_name, languages, speech_in, tables_of
from sitegen.publishing.languages.words import Text, Texts, Words, fits, read_texts, words_in

__all__ = [
    "ENGLISH_CODE",
    "Speech",
    "Text",
    "Texts",
    "Words",
    "asked_in",
    "fill",
    "finished_page",
    "fits",
    "foreign",
    "language_name",
    "languages",
    "misplaced",
    "places_of",
    "read_texts",
    "speech_in",
    "tables_of",
    "unmarked",
    "words_are_there",
    "words_in",
]
