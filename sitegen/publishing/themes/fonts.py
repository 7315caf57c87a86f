"""Lists of fonts by the name of their kind. Every font is one that systems bring with them: nothing is fetched."""

from __future__ import annotations

FONTS = {
    "serif": (
        '"Iowan Old Style", Charter, "Bitstream Charter", "Sitka Text", "Noto Serif", Cambria, "Liberation Serif", '
        "serif"
    ),
    "old-style": '"Palatino Linotype", Palatino, "Book Antiqua", "URW Palladio L", P052, "Liberation Serif", serif',
    "slab": 'Rockwell, "Rockwell Nova", "Roboto Slab", "DejaVu Serif", "Sitka Small", serif',
    "sans": 'system-ui, -apple-system, "Segoe UI", Roboto, "Noto Sans", "Liberation Sans", sans-serif',
    "humanist": 'Seravek, "Gill Sans Nova", Optima, Candara, "Noto Sans", "DejaVu Sans", sans-serif',
    "rounded": 'ui-rounded, "Hiragino Maru Gothic ProN", Nunito, "Arial Rounded MT Bold", Calibri, sans-serif',
    "mono": 'ui-monospace, "Cascadia Mono", Menlo, Consolas, "Liberation Mono", "DejaVu Sans Mono", monospace',
}
"""In the notation of CSS; a browser takes the first that it has."""
