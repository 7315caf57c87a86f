"""Pages that were opened once open again without a network, from a local server and in a real browser."""

from __future__ import annotations

import functools
import re
import shutil
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path

import pytest
from publishing.sites_of_releases import FIRST, SECOND, files, release

from sitegen.publishing.offline import service_worker, version_of

browsers = pytest.importorskip("playwright.sync_api")
CHROMIUM = shutil.which("chromium") or shutil.which("chromium-browser")
in_browser = pytest.mark.skipif(CHROMIUM is None, reason="no chromium on this machine")
PAGE = "tutorials/tee/index.html"
READY = """async () => {
    const kept = await navigator.serviceWorker.ready;
    while (!navigator.serviceWorker.controller) { await new Promise((done) => setTimeout(done, 20)); }
    return kept.active.state;
}"""
KEPT = """async () => {
    const found = [];
    for (const name of await caches.keys()) {
        for (const request of await (await caches.open(name)).keys()) { found.push([name, new URL(request.url).pathname]); }
    }
    return found;
}"""


class Quiet(SimpleHTTPRequestHandler):
    """Serves a folder without a word, and whole: two releases of a test may have the date of one second."""

    def do_GET(self) -> None:
        """Send the file, whatever the browser has."""
        del self.headers["If-Modified-Since"]
        super().do_GET()

    def log_message(self, format: str, *args: object) -> None:
        """Nothing."""


@pytest.fixture
def server(tmp_path: Path) -> Iterator[str]:
    """The address of a server for the folder ``site`` of the test."""
    with serving(tmp_path / "site") as address:
        yield address


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """The address of a server for a folder."""
    handler = functools.partial(Quiet, directory=str(folder))
    with ThreadingHTTPServer(("127.0.0.1", 0), handler) as running:
        threading.Thread(target=running.serve_forever, daemon=True).start()
        yield f"http://127.0.0.1:{running.server_address[1]}"
        running.shutdown()


@pytest.fixture
def context() -> Iterator[browsers.BrowserContext]:
    with browsers.sync_playwright() as playwright:
        running = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu", "--disable-background-networking"]
        )
        made = running.new_context()
        made.set_default_timeout(15_000)
        yield made
        running.close()


def wait_until_kept(page: browsers.Page, path: str) -> None:
    wait_until(page, f"(await found()).some(([name, kept]) => kept === {path!r})")


def wait_until(page: browsers.Page, holds: str) -> None:
    """Wait in the page until an expression holds; ``found()`` in it gives what is kept."""
    page.evaluate(
        f"""async () => {{
            const found = {KEPT};
            const end = Date.now() + 15000;
            while (!({holds})) {{
                if (Date.now() > end) {{ throw new Error("waited in vain: " + JSON.stringify(await found())); }}
                await new Promise((done) => setTimeout(done, 50));
            }}
        }}"""
    )


@in_browser
def test_opened_pages_open_without_a_network_and_others_say_why_not(
    tmp_path: Path, server: str, context: browsers.BrowserContext
) -> None:
    release(tmp_path, FIRST)
    page = context.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.on("pageerror", lambda error: said.append(str(error)))
    page.goto(f"{server}/{PAGE}")
    assert page.evaluate(READY) in ("activating", "activated")
    wait_until_kept(page, f"/{PAGE}")
    page.goto(f"{server}/")
    wait_until_kept(page, "/index.html")
    assert said == []
    context.set_offline(True)
    page.reload()
    assert page.locator("h1").inner_text() == "Test site"
    assert page.evaluate("getComputedStyle(document.body).backgroundColor") == "rgb(246, 241, 231)"
    page.goto(f"{server}/{PAGE}?size=M&units=in")
    assert page.locator("h1").inner_text() == "Test tee"
    assert page.locator("#size-2").is_checked(), "the script runs too"
    page.goto(f"{server}/changes.html")
    assert page.locator("h1").inner_text() == "This page is not kept here"


@in_browser
def test_new_release_takes_the_place_of_what_was_kept(
    tmp_path: Path, server: str, context: browsers.BrowserContext
) -> None:
    release(tmp_path, FIRST)
    page = context.new_page()
    page.goto(f"{server}/{PAGE}")
    page.evaluate(READY)
    wait_until_kept(page, f"/{PAGE}")
    (old,) = {name for name, _ in page.evaluate(KEPT)}
    release(tmp_path, SECOND, ratio="90%")
    page.goto(f"{server}/changes.html")
    wait_until(page, f"!(await caches.keys()).includes({old!r})")
    kept = page.evaluate(KEPT)
    assert len({name for name, _ in kept}) == 1
    assert f"/{PAGE}" in [path for _, path in kept]
    context.set_offline(True)
    page.goto(f"{server}/{PAGE}")
    assert "Changed since" in page.locator("details.changed").inner_text()


@in_browser
def test_sites_of_one_host_leave_each_other_what_they_kept(tmp_path: Path, context: browsers.BrowserContext) -> None:
    with serving(tmp_path) as host:
        page = context.new_page()
        for name in ("one", "two"):
            release(tmp_path / name, FIRST)
            page.goto(f"{host}/{name}/site/{PAGE}")
            page.evaluate(READY)
            wait_until_kept(page, f"/{name}/site/{PAGE}")
        before = {name for name, _ in page.evaluate(KEPT)}
        release(tmp_path / "two", SECOND, ratio="90%")
        page.goto(f"{host}/two/site/changes.html")
        (gone,) = (name for name in before if "/two/" in name)
        wait_until(page, f"!(await caches.keys()).includes({gone!r})")
        context.set_offline(True)
        page.goto(f"{host}/one/site/{PAGE}")
        assert page.locator("h1").inner_text() == "Test tee"


@in_browser
def test_what_was_kept_under_the_former_name_is_taken_over_from_this_site_alone(
    tmp_path: Path, server: str, context: browsers.BrowserContext
) -> None:
    """Former names were alike for all sites of a host, but each cache holds the page of its site that says why not."""
    release(tmp_path, FIRST)
    page = context.new_page()
    page.goto(f"{server}/theme/icon.svg")  # asks for no worker
    page.evaluate(
        """async ([page]) => {
            for (const [name, home] of [["sitegen 0123456789abcdef", "/"], ["sitegen fedcba9876543210", "/other/"]]) {
                const kept = await caches.open(name);
                for (const path of ["offline.html", page]) { await kept.put(home + path, new Response("old")); }
            }
        }""",
        [PAGE],
    )
    page.goto(f"{server}/changes.html")
    page.evaluate(READY)
    wait_until(page, "!(await caches.keys()).includes('sitegen 0123456789abcdef')")
    kept = page.evaluate(KEPT)
    assert [path for name, path in kept if name == "sitegen fedcba9876543210"] == [
        "/other/offline.html",
        f"/other/{PAGE}",
    ]
    assert f"/{PAGE}" in [path for name, path in kept if not name.startswith("sitegen ")]


@in_browser
def test_page_is_shown_though_there_is_no_room_to_keep_it(
    tmp_path: Path, server: str, context: browsers.BrowserContext
) -> None:
    release(tmp_path, FIRST)
    page = context.new_page()
    page.goto(f"{server}/{PAGE}")
    page.evaluate(READY)
    wait_until_kept(page, f"/{PAGE}")
    context.new_cdp_session(page).send("Storage.overrideQuotaForOrigin", {"origin": server, "quotaSize": 1})
    page.goto(f"{server}/changes.html")
    assert page.locator("h1").inner_text() == "What changed"
    assert page.evaluate("navigator.serviceWorker.controller !== null")
    assert "/changes.html" not in [path for _, path in page.evaluate(KEPT)]


@in_browser
def test_page_opened_from_a_disk_asks_for_no_worker(tmp_path: Path, context: browsers.BrowserContext) -> None:
    release(tmp_path, FIRST)
    page = context.new_page()
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.goto((tmp_path / "site" / PAGE).as_uri())
    page.wait_for_load_state("networkidle")
    assert said == []
    assert page.locator('link[rel="manifest"]').count() == 0


@in_browser
def test_manifest_is_loaded_where_pages_come_from_a_server(
    tmp_path: Path, server: str, context: browsers.BrowserContext
) -> None:
    release(tmp_path, FIRST)
    page = context.new_page()
    page.goto(f"{server}/{PAGE}")
    assert page.evaluate('document.querySelector("link[rel=manifest]").href') == f"{server}/site.webmanifest"
    session = context.new_cdp_session(page)
    found = session.send("Page.getAppManifest")
    assert found["errors"] == []
    assert found["url"] == f"{server}/site.webmanifest"


def test_version_is_that_of_the_content(tmp_path: Path) -> None:
    def version() -> str:
        found = re.search(rb'VERSION = "([0-9a-f]{16})"', files(tmp_path)["service-worker.js"])
        assert found is not None
        return found[1].decode()

    release(tmp_path, FIRST)
    first = version()
    release(tmp_path, SECOND)
    assert version() == first
    release(tmp_path, SECOND, ratio="90%")
    assert version() != first


def test_version_knows_path_from_content() -> None:
    assert version_of([("a", "bc")]) != version_of([("ab", "c")])
    assert version_of([("a", "1"), ("b", "2")]) == version_of([("b", "2"), ("a", "1")])


def test_worker_has_nothing_left_to_fill_in() -> None:
    script = service_worker("0123")
    assert "$" not in script
    assert 'VERSION = "0123"' in script
