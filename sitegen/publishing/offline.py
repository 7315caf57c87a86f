"""What keeps the pages that were once opened, so that they open without a network: a service worker (W3C).

It works where pages come from a server; pages opened from a disk need none. Its version is that of the content of the
whole site: a new release brings a new worker, which takes what had been kept anew and drops the old copies.
"""

from __future__ import annotations

import json
from collections.abc import Iterable
from hashlib import blake2b
from string import Template

from sitegen.publishing.packed import packed_script
from sitegen.publishing.themes import STYLE_SHEET
from sitegen.publishing.views import FRONT_PAGE, THEME_FOLDER

SERVICE_WORKER = "service-worker.js"
OFFLINE_PAGE = "offline.html"
_ALWAYS = (OFFLINE_PAGE, f"{THEME_FOLDER}/{STYLE_SHEET}", f"{THEME_FOLDER}/script.js", f"{THEME_FOLDER}/icon.svg")
"""What is kept from the start, so that the page which says that a page was not kept can be shown."""

_WORKER = Template(
    """
// Keeps what was once opened. The network comes first, so that what is read is new.
"use strict";
const VERSION = "$version";
const ALWAYS = $always;
const NAMED_BY_CONTENT = /^(?:pictures|drawings)\\//;
const HOME = new URL("./", self.location).href;
// All sites of a host share one store: the names of caches tell whose they are. An address has no space.
const OURS = "sitegen:" + HOME + " ";
const KEPT = OURS + VERSION;
const FORMER = "sitegen ";

// A page is one page whatever is chosen on it, and a folder is its page.
function plain(address) {
  const url = new URL(address);
  url.search = "";
  url.hash = "";
  if (url.pathname.endsWith("/")) { url.pathname += "$front"; }
  return url.href;
}
function mine(address) {
  return address.startsWith(HOME);
}
function named(address) {
  return NAMED_BY_CONTENT.test(address.slice(HOME.length));
}
async function keep(address, answer) {
  if (answer.ok && answer.type === "basic" && !answer.redirected) {
    const kept = await caches.open(KEPT);
    await kept.put(plain(address), answer);
  }
}
async function fetched(address) {
  await keep(address, await fetch(address, { cache: named(address) ? "default" : "reload" }));
}
async function known(address) {
  const kept = await caches.open(KEPT);
  return kept.match(plain(address));
}
// A cache with a former name, which does not tell whose it is, holds the first page of ALWAYS from its own site.
async function ours(name) {
  if (name.startsWith(OURS)) { return true; }
  return name.startsWith(FORMER) && Boolean(await (await caches.open(name)).match(HOME + ALWAYS[0]));
}
async function before() {
  const found = [];
  for (const name of await caches.keys()) {
    if (name !== KEPT && await ours(name)) { found.push(name); }
  }
  return found;
}

// All that an older release had kept is taken anew. If the network fails, the older one goes on.
async function takeOver() {
  const addresses = new Set(ALWAYS.map((path) => HOME + path));
  for (const name of await before()) {
    const older = await caches.open(name);
    for (const request of await older.keys()) {
      if (mine(request.url)) { addresses.add(request.url); }
    }
  }
  for (const address of addresses) { await fetched(address); }
}
// A store that is full or broken keeps nothing, but must not stand in the way of the network.
function orNothing(promise) {
  return promise.catch(() => undefined);
}
async function answer(event) {
  const request = event.request;
  if (named(request.url)) {
    const here = await orNothing(known(request.url));
    if (here) { return here; }
  }
  let fresh;
  try {
    fresh = await fetch(request);
  } catch (unreachable) {
    const here = await orNothing(known(request.url));
    if (here) { return here; }
    const instead = request.mode === "navigate" ? await orNothing(known(HOME + ALWAYS[0])) : null;
    return instead || Response.error();
  }
  event.waitUntil(orNothing(keep(request.url, fresh.clone())));
  return fresh;
}

self.addEventListener("install", (event) => {
  event.waitUntil(takeOver().then(() => self.skipWaiting()));
});
self.addEventListener("activate", (event) => {
  const cleared = before().then((names) => Promise.all(names.map((name) => caches.delete(name))));
  event.waitUntil(cleared.then(() => self.clients.claim()));
});
self.addEventListener("fetch", (event) => {
  if (event.request.method === "GET" && mine(event.request.url)) { event.respondWith(answer(event)); }
});
// What a page had loaded before the worker was there.
self.addEventListener("message", (event) => {
  const told = Array.isArray(event.data) ? event.data : [];
  const addresses = told.filter((each) => typeof each === "string" && mine(each));
  event.waitUntil(Promise.all(addresses.map(async (address) => {
    if (!(await known(address))) { await fetched(address); }
  })));
});
"""
)


def service_worker(version: str) -> str:
    """The script of the worker for a release of this version."""
    filled = _WORKER.substitute(version=version, always=json.dumps(_ALWAYS), front=FRONT_PAGE)
    return packed_script(filled)


def version_of(digests: Iterable[tuple[str, str]]) -> str:
    """One digest of the whole site from the path and the digest of each file."""
    whole = blake2b(digest_size=8)
    for path, digest in sorted(digests):
        whole.update(f"{path}\0{digest}\0".encode())
    return whole.hexdigest()
