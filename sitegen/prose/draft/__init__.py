"""The draft of a content folder from what was said in a video. Changes no word and adds none."""

from sitegen.prose.draft.files import Drafted, drafted, empty_folder

__all__ = ["Drafted", "drafted", "empty_folder"]
