"""``sitegen publish`` killed at many moments: the previous site stays complete, and the next run clears up."""

from __future__ import annotations

import hashlib
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from content import EXAMPLE

pytestmark = pytest.mark.skipif(os.name == "nt", reason="there is no SIGKILL on Windows")
MOMENTS = 8


def command(target: Path, *, draft: bool) -> list[str]:
    return [
        sys.executable,
        "-m",
        "sitegen",
        "publish",
        str(EXAMPLE),
        "--to",
        str(target),
        *(["--draft"] if draft else []),
    ]


def fingerprint(site: Path) -> str:
    digest = hashlib.blake2b()
    for path in sorted(site.rglob("*")):
        if path.is_file():
            digest.update(str(path.relative_to(site)).encode() + b"\0" + path.read_bytes())
    return digest.hexdigest()


def test_previous_or_new_site_is_complete_after_a_kill_at_any_moment(tmp_path: Path) -> None:
    site = tmp_path / "site"
    subprocess.run(command(site, draft=False), check=True, capture_output=True)
    began = time.monotonic()
    # The runs that are killed find the pictures of the old site, so one like them tells how long they take.
    subprocess.run(command(site, draft=False), check=True, capture_output=True)
    took = time.monotonic() - began
    old = fingerprint(site)
    for draft in (False, True):  # a draft over a release keeps the release's record of numbers
        subprocess.run(command(tmp_path / "other", draft=draft), check=True, capture_output=True)
    new = fingerprint(tmp_path / "other")
    killed = 0
    for moment in range(MOMENTS):
        run = subprocess.Popen(command(site, draft=True), stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(took * (moment + 1) / (MOMENTS + 1))
        if run.poll() is None:
            run.send_signal(signal.SIGKILL)
            killed += 1
        run.wait()
        state = fingerprint(site)
        assert state in (old, new), f"a mixture after a kill at moment {moment}"
        if state == new:
            subprocess.run(command(site, draft=False), check=True, capture_output=True)
    assert killed >= MOMENTS // 2
    subprocess.run(command(site, draft=False), check=True, capture_output=True)
    assert fingerprint(site) == old
    assert [path.name for path in tmp_path.iterdir() if path.name not in ("site", "other")] == []
    manifest = json.loads((site / ".sitegen.json").read_text(encoding="utf-8"))
    assert manifest
