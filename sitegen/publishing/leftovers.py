"""What stands beside a site while it is being replaced, and what a run that was stopped left there."""

from __future__ import annotations

import os
import re
import secrets
import stat
from enum import Enum
from pathlib import Path

from sitegen.publishing.exchange import put_back
from sitegen.publishing.manifest import PART_NAME, Manifest, read_manifest
from sitegen.publishing.not_replaced import NotReplaced, named, plain_words, shown
from sitegen.publishing.old_site import remove_old


class Beside(Enum):
    """Why a folder stands beside the site; part of its name."""

    BUILDING = "building"
    BEFORE = "before"
    """An old site that stepped aside, where the system cannot exchange two folders in one act."""


def fresh_name(target: Path, why: Beside) -> Path:
    """A path beside the site that no folder has."""
    return target.with_name(f".{target.name}.{why.value}-{secrets.token_hex(8)}")


def clear_leftovers(target: Path) -> list[str]:
    """Take away what runs that were stopped left beside the site; gives back what the author should know of it.

    If a run was stopped in the moment in which nothing stood at the target, the old site is put back first. Call it
    only while holding the lock: then no run is at work on these folders. A folder with such a name that sitegen did
    not make stays. Raises NotReplaced when the old site cannot be put back.
    """
    try:
        folders = {why: _folders(target, why) for why in Beside}
        for aside in folders[Beside.BEFORE]:
            if not os.path.lexists(target) and _is_whole(aside):
                put_back(aside, target)
    except OSError as error:
        raise NotReplaced(
            f"{shown(target)} was not replaced: what an earlier run left beside it cannot be put right: "
            f"{plain_words(error)}."
        ) from None
    return [note for why in Beside for folder in folders[why] if folder.is_dir() for note in clear(folder, target)]


def clear(folder: Path, target: Path) -> list[str]:
    """Take away one folder beside the site, as far as it is sitegen's; gives back what the author should know."""
    try:
        manifest = read_manifest(folder)
        if manifest is None:
            if not set(os.listdir(folder)) <= {PART_NAME}:
                return []
            manifest = Manifest(complete=False)  # stopped before anything was written, or an empty folder
        kept = remove_old(folder, target, manifest)
    except NotReplaced as refusal:
        return [refusal.reason]
    except OSError as error:
        return [f"{shown(folder)} was left by an earlier run and could not be taken away: {plain_words(error)}."]
    return kept_note(folder, kept)


def kept_note(folder: Path, kept: list[str]) -> list[str]:
    """What to tell the author about files that were not deleted because nobody knows them."""
    if not kept:
        return []
    return [
        f"{shown(folder)} holds what could not be taken away, or what changed while the site was being published: "
        f"{named(sorted(kept))}. Look at it, keep what you need, then delete the folder."
    ]


def _folders(target: Path, why: Beside) -> list[Path]:
    name = re.compile(re.escape(f".{target.name}.{why.value}-") + "[0-9a-f]{16}")
    with os.scandir(target.parent) as beside:
        found = sorted(item.name for item in beside if name.fullmatch(item.name))
    folders = [target.with_name(item) for item in found]
    return [folder for folder in folders if stat.S_ISDIR(folder.lstat().st_mode)]


def _is_whole(folder: Path) -> bool:
    try:
        manifest = read_manifest(folder)
    except NotReplaced:
        return False
    return manifest is not None and manifest.complete
