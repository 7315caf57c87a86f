"""What only publishing finds out: pictures that cannot be decoded, a theme that is not there."""

from sitegen.checks.registry import found_while_reading

found_while_reading(
    id="picture-broken",
    area="publishing",
    title="A picture that cannot be shown",
    what="A file in photos that is no picture, is cut off, or is too large to be decoded safely.",
    why="Readers would see nothing, or the program would run out of memory.",
    source="What the imaging library can decode, with limits of our own",
    trips="--- photos/band.jpg\nnot a picture\n--- steps/01.yaml\ntitle: Pin\ntext: Match the marks.\n"
    "photo: {file: band.jpg, shows: The band}",
    passes="--- steps/01.yaml\ntitle: Pin\ntext: Match the marks.",
)
found_while_reading(
    id="theme-unknown",
    area="publishing",
    title="A theme that is not there",
    what="The theme named in site.yaml is none of the folders in themes.",
    why="There are no pages without it.",
    source="The content format of this program",
    trips="--- ../../site.yaml\ntitle: Example\nauthor: Nobody\ntheme: workrom",
    passes="--- ../../site.yaml\ntitle: Example\nauthor: Nobody\ntheme: workroom",
)
