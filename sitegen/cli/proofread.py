"""``sitegen proofread FILE…``"""

from __future__ import annotations

import argparse
import json
import os
import sys
from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path

from sitegen.cli.screen import COULD_NOT, NOTHING_WRONG, SOMETHING_WRONG, coloured
from sitegen.findings import Collector, Finding, Place, Severity, as_text, count_line
from sitegen.prose import (
    Captions,
    Measurement,
    TextFinding,
    captions_of,
    clock,
    is_captions,
    marked_text,
    pieces_of,
    proof,
    said_in_markdown,
)
from sitegen.reading import LooseFiles


def set_up(command: argparse.ArgumentParser) -> None:
    """Tell the parser of this command what it takes."""
    command.description = (
        "Reads plain text, Markdown, WebVTT and SubRip, finds every measurement, does every sum again"
        " that is written out in words or signs, and holds inches against centimetres."
    )
    command.epilog = "Exit code: 0 nothing wrong, 1 something wrong, 2 a file could not be read."
    command.add_argument("files", metavar="FILE", nargs="+", help="a text, or - for standard input; each is read once")
    way = command.add_mutually_exclusive_group()
    way.add_argument("--json", action="store_true", help="print measurements and findings as a JSON list")
    way.add_argument("--mark", action="store_true", help="print the text with every measurement and finding marked")
    way.add_argument("--html", metavar="OUT", type=_page, help="write the marked text as one page")


def _page(name: str) -> str:
    """The name of the page to write. Raises ArgumentTypeError for what can be no file."""
    if name == "-":
        raise argparse.ArgumentTypeError("the page needs the name of a file, such as marked.html; it is not printed")
    if name.endswith(("/", os.sep)):
        raise argparse.ArgumentTypeError(f"{name} names a folder; name the file too, such as {name}marked.html")
    return name


@dataclass(frozen=True)
class _Proof:
    """One file with what was found in it."""

    file: str
    text: str
    captions: Captions | None
    measurements: tuple[Measurement, ...]
    findings: tuple[TextFinding, ...]

    def time_of(self, finding: TextFinding) -> str:
        """When a finding is said, for captions; else nothing."""
        cue = self.captions.cue_at(finding.start) if self.captions is not None else None
        return clock(cue.begins) if cue is not None else ""

    def words(self, found: Measurement | TextFinding) -> str:
        """What a person reads at a place, in one line, without the tags of captions or the signs of Markdown."""
        if self.captions is not None:
            return self.captions.words(found.start, found.end)
        return " ".join((found.text if isinstance(found, Measurement) else found.said).split())


def run(options: argparse.Namespace) -> int:
    """Proofread and print."""
    collector = Collector()
    files = LooseFiles()
    names = _each_once(options.files)
    proofs = [
        _proof(name, text)
        for name in names
        if (text := files.text(name, sys.stdin.buffer.read() if name == "-" else None, collector)) is not None
    ]
    told = [(_finding(proof, each), proof, each) for proof in proofs for each in proof.findings]
    spoken = {
        finding: proof.captions.line_around(each.start, each.end)
        for finding, proof, each in told
        if proof.captions is not None
    }
    findings = sorted(
        [*collector.findings, *(finding for finding, _, _ in told)],
        key=lambda finding: names.index(finding.place.file) if finding.place.file in names else 0,
    )
    if options.json:
        print(json.dumps([_data(proof) for proof in proofs], ensure_ascii=False, indent=2))
        _unread(collector, files)
    elif options.mark:
        for proof in proofs:
            print(marked_text(pieces_of(proof.text, proof.measurements, proof.findings)).rstrip("\n"))
        _unread(collector, files)
    else:
        text = as_text(findings, files.source_line, colour=coloured(sys.stdout), shown=spoken.get)
        if text:
            print(text)
        print(_counted(proofs, findings))
    if options.html and not _write(options.html, proofs):
        return COULD_NOT
    if collector.any_unread:
        return COULD_NOT
    return SOMETHING_WRONG if any(finding.severity is Severity.WRONG for finding in findings) else NOTHING_WRONG


def _each_once(names: Sequence[str]) -> list[str]:
    """The names without those that lead to a file once more, however they are written."""
    found: dict[str, str] = {}
    for name in names:
        try:
            whole = name if name == "-" else os.path.realpath(name)
        except (OSError, ValueError):  # no file can have such a name, which is told when it is read
            whole = name
        found.setdefault(whole, name)
    return list(found.values())


def _counted(proofs: Sequence[_Proof], findings: Sequence[Finding]) -> str:
    """The last line: how much was read, what was found in it, and how many files could not be read."""
    unread = len({finding.place.file for finding in findings if finding.unread})
    measured = sum(len(proof.measurements) for proof in proofs)
    looked_at = f"{_count(len(proofs), 'file')}, {_count(measured, 'measurement')}"
    counted = count_line([finding for finding in findings if not finding.unread], looked_at=looked_at)
    lines = [counted] if proofs else []
    return "\n".join([*lines, *([f"{_count(unread, 'file')} could not be read."] if unread else [])])


def _proof(name: str, text: str) -> _Proof:
    captions = captions_of(text) if is_captions(text) else None
    said = captions.said if captions is not None else said_in_markdown(text)
    found = proof(said, lines_of=text)
    measurements, findings = found.measurements, found.findings
    if captions is not None:
        measurements = tuple(replace(each, end=captions.behind_letter(each.end)) for each in measurements)
        findings = tuple(replace(each, end=captions.behind_letter(each.end)) for each in findings)
    return _Proof(name, text, captions, measurements, findings)


def _unread(collector: Collector, files: LooseFiles) -> None:
    if collector.findings:
        print(as_text(collector.findings, files.source_line), file=sys.stderr)


def _finding(proof: _Proof, found: TextFinding) -> Finding:
    time = proof.time_of(found)
    first_line = found.said.split("\n", 1)[0]
    place = Place(proof.file, found.line, found.column, found.column + len(first_line))
    message = f"At {time}: {found.message}" if time else found.message
    return Finding(found.check, found.severity, place, message, proof.words(found), found.should_be, found.working)


def _data(proof: _Proof) -> dict[str, object]:
    """One file as data; these keys are stable."""
    return {
        "file": proof.file,
        "measurements": [
            {
                "text": proof.words(each),
                "start": each.start,
                "end": each.end,
                "line": each.line,
                "column": each.column,
                "kind": each.kind.value,
                "low_mm": _plain(each.low_mm),
                "high_mm": _plain(each.high_mm),
            }
            for each in proof.measurements
        ],
        "findings": [
            {
                "check": each.check,
                "severity": each.severity.value,
                "start": each.start,
                "end": each.end,
                "line": each.line,
                "column": each.column,
                **({"time": proof.time_of(each)} if proof.captions is not None else {}),
                "said": proof.words(each),
                "should_be": each.should_be or None,
                "working": list(each.working),
                "message": each.message,
            }
            for each in proof.findings
        ],
    }


def _plain(value: Fraction | None) -> int | float | None:
    """A number for JSON: whole where it is whole."""
    if value is None:
        return None
    return value.numerator if value.denominator == 1 else float(value)


def _write(out: str, proofs: list[_Proof]) -> bool:
    # Only a page needs these, and loading them takes longer than proofreading a draft.
    from sitegen.classes import NotWritten, sealed_page, write_own
    from sitegen.publishing import MarkedText, marked_page

    marked = [
        MarkedText(proof.file, pieces_of(proof.text, proof.measurements, proof.findings), proof.findings)
        for proof in proofs
    ]
    try:
        write_own(Path(out), sealed_page(marked_page(marked)))
    except NotWritten as reason:
        print(f"sitegen: the page was not written. {reason}", file=sys.stderr)
        return False
    print(f"The marked text is in {out}.")
    return True


def _count(number: int, word: str) -> str:
    return f"{number} {word}{'' if number == 1 else 's'}"
