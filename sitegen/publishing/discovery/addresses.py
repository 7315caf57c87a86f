"""Absolute addresses of the site's pages and files, in ASCII as RFC 3986 has them."""

from __future__ import annotations

from urllib.parse import quote, urlsplit

from sitegen.publishing.views import FRONT_PAGE

_SAFE = "/:@!$&'()*+,;=-._~"


def absolute(address: str, path: str) -> str:
    """Where a file of the site is found, by the site's own address; the front page is the address itself.

    ``path`` is from the folder of the site and may end in an anchor; that of a language may lead out to the whole site.
    """
    parts = urlsplit(address)
    while path.startswith("../"):
        parts, path = parts._replace(path=parts.path.rstrip("/").rpartition("/")[0]), path.removeprefix("../")
    host = (parts.hostname or "").encode("idna").decode("ascii")
    port = f":{parts.port}" if parts.port is not None else ""
    file, mark, anchor = path.partition("#")
    below = "" if file == FRONT_PAGE else quote(file, safe=_SAFE)
    home = quote(parts.path.rstrip("/"), safe=f"{_SAFE}%")  # an author may have escaped it already
    return f"{parts.scheme}://{host}{port}{home}/{below}{mark}{quote(anchor, safe=_SAFE)}"


def home_on_host(address: str) -> str:
    """The path of the site on its host, with a slash at both ends: ``/`` or ``/sewing/``."""
    return urlsplit(absolute(address, FRONT_PAGE)).path


def at_root_of_host(address: str) -> bool:
    """Whether the site has its host to itself, so that what must lie at the root of a host can be its file."""
    return not urlsplit(address).path.strip("/")
