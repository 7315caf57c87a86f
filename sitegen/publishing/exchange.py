"""Two acts that the operating system must do for us: one run at a time, and a new folder in place of an old one."""

from __future__ import annotations

import ctypes
import errno
import os
import stat
import sys
from contextlib import suppress
from pathlib import Path

from sitegen.publishing.not_replaced import NotReplaced, plain_words, shown

if sys.platform == "win32":
    import msvcrt
else:
    import fcntl

_LINUX_HERE = -100  # AT_FDCWD: paths count from the working folder
_LINUX_EXCHANGE = 2  # RENAME_EXCHANGE, renameat2(2)
_MACOS_SWAP = 2  # RENAME_SWAP, renamex_np(2)
_CANNOT = {errno.ENOSYS, errno.EINVAL, errno.ENOTSUP, errno.EOPNOTSUPP, errno.EPERM}
"""A kernel or a disk that cannot exchange two folders says one of these."""


def put_in_place(new: Path, target: Path, aside: Path) -> Path | None:
    """Put a new folder where another may stand; gives back where the other stands then. Raises OSError.

    Where the system can exchange two folders (Linux, macOS) there is no moment without a whole site. Elsewhere
    the old folder steps ``aside`` first, and for that moment nothing stands at the target; ``put_back`` mends it
    if the run ends just then.
    """
    if not os.path.lexists(target):
        os.rename(new, target)
        return None
    if exchanged(new, target):
        return new
    os.rename(target, aside)
    try:
        os.rename(new, target)
    except BaseException:
        os.rename(aside, target)
        raise
    return aside


def put_back(aside: Path, target: Path) -> None:
    """Put a folder that had stepped aside back to its place, where nothing stands. Raises OSError."""
    os.rename(aside, target)


def exchanged(one: Path, other: Path) -> bool:
    """Whether two folders have changed places in one act; False where the system cannot do that. Raises OSError."""
    try:
        number = _exchange(os.fsencode(one), os.fsencode(other))
    except AttributeError:  # a C library without the function
        return False
    if number in _CANNOT:
        return False
    if number:
        raise OSError(number, os.strerror(number), str(other))
    return True


if sys.platform == "win32":

    def _exchange(one: bytes, other: bytes) -> int:
        return errno.ENOSYS

elif sys.platform == "darwin":

    def _exchange(one: bytes, other: bytes) -> int:
        swap = ctypes.CDLL(None, use_errno=True).renamex_np
        swap.argtypes = (ctypes.c_char_p, ctypes.c_char_p, ctypes.c_uint)
        return ctypes.get_errno() if swap(one, other, _MACOS_SWAP) else 0

else:

    def _exchange(one: bytes, other: bytes) -> int:
        swap = ctypes.CDLL(None, use_errno=True).renameat2
        swap.argtypes = (ctypes.c_int, ctypes.c_char_p, ctypes.c_int, ctypes.c_char_p, ctypes.c_uint)
        return ctypes.get_errno() if swap(_LINUX_HERE, one, _LINUX_HERE, other, _LINUX_EXCHANGE) else 0


class Lock:
    """The lock on one target: an empty file beside it, held while a run publishes and gone afterwards.

    The system lets go of it when a run ends, however it ends, so a killed run locks nobody out.
    """

    def __init__(self, place: Path, target: Path) -> None:
        self._place = place
        self._target = target
        self._handle = -1

    def take(self) -> None:
        """Hold the lock. Raises NotReplaced when another run holds it or the file cannot be made."""
        try:
            while not self._is_taken():
                pass  # the run before took its lock file away just as this one opened it
        except OSError as error:
            raise NotReplaced(
                f"The site cannot be written to {shown(self._target)}: no lock file can be made in "
                f"{shown(self._place.parent)}: {plain_words(error)}."
            ) from None

    def release(self) -> None:
        """Let go, and take the lock file away. While it is held nobody else can hold a file of that name."""
        # A lock file that cannot be taken away is empty and held by nobody: the next run uses it.
        if sys.platform == "win32":
            os.close(self._handle)
            with suppress(OSError):
                self._place.unlink()
        else:
            with suppress(OSError):
                self._place.unlink()
            os.close(self._handle)

    def _is_taken(self) -> bool:
        flags = os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0)
        handle = os.open(self._place, flags, 0o666)
        try:
            opened = os.fstat(handle)
            if not stat.S_ISREG(opened.st_mode) or opened.st_size:
                raise NotReplaced(
                    f"{shown(self._place)} is in the way: sitegen needs this name for its lock file, and what stands "
                    "there is not one. Move it away."
                )
            self._lock(handle)
            standing = _status(self._place)
            taken = standing is not None and os.path.samestat(standing, opened)
        except BaseException:
            os.close(handle)
            raise
        if taken:
            self._handle = handle
        else:
            os.close(handle)
        return taken

    def _lock(self, handle: int) -> None:
        try:
            if sys.platform == "win32":
                msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
            else:
                fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError as error:
            if error.errno not in (errno.EACCES, errno.EAGAIN, errno.EDEADLK):
                raise
            raise NotReplaced(
                f"Another run is publishing to {shown(self._target)}. Wait until it is done, then publish again."
            ) from None


def _status(place: Path) -> os.stat_result | None:
    try:
        return place.lstat()
    except FileNotFoundError:
        return None
