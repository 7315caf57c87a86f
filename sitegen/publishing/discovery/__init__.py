"""What pages and files tell to search engines, feed readers, link previews and phones, by open conventions."""

from sitegen.publishing.discovery.addresses import absolute, at_root_of_host, home_on_host
from sitegen.publishing.discovery.feed import FEED, FeedEntry, feed
from sitegen.publishing.discovery.head import NO_HEAD, Head, HeadImage, page_head
from sitegen.publishing.discovery.site_map import ROBOTS, SITE_MAP, robots, site_map
from sitegen.publishing.discovery.structured import how_to, term_set, website
from sitegen.publishing.discovery.web_manifest import WEB_MANIFEST, web_manifest

__all__ = [
    "FEED",
    "NO_HEAD",
    "ROBOTS",
    "SITE_MAP",
    "WEB_MANIFEST",
    "FeedEntry",
    "Head",
    "HeadImage",
    "absolute",
    "at_root_of_host",
    "feed",
    "home_on_host",
    "how_to",
    "page_head",
    "robots",
    "site_map",
    "term_set",
    "web_manifest",
    "website",
]
