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
    what="The theme named in site.yaml or in based_on neither comes with the program nor lies in the folder themes.",
    why="There are no pages without it.",
    source="The content format of this program",
    trips="--- ../../site.yaml\ntitle: Example\nauthor: Nobody\ntheme: workrom",
    passes="--- ../../site.yaml\ntitle: Example\nauthor: Nobody\ntheme: workroom",
)
found_while_reading(
    id="theme-broken",
    area="publishing",
    title="A theme that cannot be used",
    what="A theme of the author's own without theme.yaml or a page, or whose template or style sheet cannot be read.",
    why="Its pages could not be made, or would look like no theme at all.",
    source="The notation of Jinja templates; CSS Syntax Module Level 3; the content format of this program",
    trips="--- ../../site.yaml\ntitle: Example\nauthor: Nobody\ntheme: linen\n"
    "--- ../../themes/linen/theme.yaml\nname: Linen\nbased_on: workroom\n"
    "--- ../../themes/linen/templates/glossary.html\n<h1>{{ site.title }</h1>\n",
    passes="--- ../../site.yaml\ntitle: Example\nauthor: Nobody\ntheme: linen\n"
    "--- ../../themes/linen/theme.yaml\nname: Linen\nbased_on: workroom\n"
    "--- ../../themes/linen/templates/offline.html\n<h1>{{ site.title }}</h1>\n",
)
found_while_reading(
    id="look-unknown",
    area="publishing",
    title="A colour that the theme does not have",
    what="A colour in the look of site.yaml whose name the theme does not know.",
    why="Nothing would be shown in it.",
    source="The content format of this program",
    trips='--- ../../site.yaml\ntitle: Example\nauthor: Nobody\nlook: {colours: {light: {acent: "#1b4a80"}}}',
    passes='--- ../../site.yaml\ntitle: Example\nauthor: Nobody\nlook: {colours: {light: {accent: "#1b4a80"}}}',
)
found_while_reading(
    id="look-contrast",
    area="publishing",
    title="A colour that cannot be read",
    what="A colour of the author's own with too little contrast to what it is read on, or to what is read on it.",
    why="Many could not read it, and nobody could beside a lamp.",
    source="W3C, WCAG 2.2, success criteria 1.4.3 and 1.4.11: text 4.5 to 1, large text and marks 3 to 1",
    trips='--- ../../site.yaml\ntitle: Example\nauthor: Nobody\nlook: {colours: {light: {accent: "#d9a441"}}}',
    passes='--- ../../site.yaml\ntitle: Example\nauthor: Nobody\nlook: {colours: {light: {accent: "#7a2f5b"}}}',
)
found_while_reading(
    id="theme-words",
    area="publishing",
    title="Words that no page has",
    what="A text in words.yaml, or in the words of a theme, that no template asks for or whose place is never filled;"
    " a template that asks for a text which there is not.",
    why="A page would lack its words, or show them in another language.",
    source="The content format of this program",
    trips="--- ../../words.yaml\nfront: {learn: You practise, lern: You learn}\n",
    passes="--- ../../words.yaml\nfront: {learn: You practise}\n",
)
