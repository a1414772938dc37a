"""A browser for tests that look at pages: Debian's Chromium, driven by playwright, started once a session.

It runs in a thread of its own, so that its event loop is in no other test's way. Nothing is fetched: pages are given
as text, and whatever they ask for beyond that is refused and remembered.
"""

import shutil
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from functools import cache
from typing import TYPE_CHECKING, Any, Literal, TypeVar

import pytest

if TYPE_CHECKING:
    from playwright.sync_api import Browser, BrowserContext, Page, Playwright

__all__ = ["Chromium", "browser", "executable"]

T = TypeVar("T")

NAMES = ("chromium", "chromium-browser", "google-chrome")

ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]

ORIGIN = "http://page.test/"
"""Where a page given as text seems to come from."""


@cache
def executable() -> str | None:
    """The system's Chromium, or None."""
    return next((found for name in NAMES if (found := shutil.which(name))), None)


class Chromium:
    """What tests ask of a browser. `asked` holds every address that the last page asked for besides its own."""

    def __init__(self) -> None:
        self.asked: list[str] = []
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="browser")
        self._playwright, self._browser = self._thread.submit(self._start).result(60)

    def _start(self) -> "tuple[Playwright, Browser]":
        from playwright.sync_api import sync_playwright

        playwright = sync_playwright().start()
        return playwright, playwright.chromium.launch(executable_path=executable(), args=ARGUMENTS)

    def close(self) -> None:
        """End the browser and its thread."""
        self._thread.submit(self._browser.close).result(30)
        self._thread.submit(self._playwright.stop).result(30)
        self._thread.shutdown()

    def on_page(
        self,
        html: str,
        look: "Callable[[Page], T]",
        *,
        width: int = 390,
        height: int = 844,
        scheme: Literal["light", "dark"] = "light",
        media: Literal["screen", "print"] = "screen",
    ) -> T:
        """What `look` finds on a page given as text, at a width in CSS pixels."""

        def task() -> T:
            context = self._browser.new_context(viewport={"width": width, "height": height}, color_scheme=scheme)
            try:
                page = context.new_page()
                page.emulate_media(media=media, color_scheme=scheme)
                self.asked = []
                page.route("**/*", self._answer(html))
                page.goto(ORIGIN)
                return look(page)
            finally:
                context.close()

        return self._thread.submit(task).result(60)

    def in_context(self, look: "Callable[[BrowserContext], T]", **options: Any) -> T:
        """What `look` finds in a browsing context of its own, with pages from wherever it goes."""

        def task() -> T:
            context = self._browser.new_context(**options)
            try:
                return look(context)
            finally:
                context.close()

        return self._thread.submit(task).result(120)

    def _answer(self, html: str) -> Callable[[Any], None]:
        def answer(route: Any) -> None:
            if route.request.url == ORIGIN:
                route.fulfill(body=html, content_type="text/html; charset=utf-8")
            else:
                self.asked.append(route.request.url)
                route.abort()

        return answer

    def evaluate(self, html: str, script: str, **view: Any) -> Any:
        """What a script of the test (a function in text) finds on a page."""
        return self.on_page(html, lambda page: page.evaluate(script), **view)

    def pdf(self, html: str) -> bytes:
        """A page as it is printed on the paper that it names."""
        return self.on_page(html, lambda page: page.pdf(prefer_css_page_size=True), media="print")

    def picture(self, html: str, **view: Any) -> bytes:
        """A page as a PNG, its whole length."""
        return self.on_page(html, lambda page: page.screenshot(full_page=True), **view)


@pytest.fixture(scope="session")
def browser() -> Iterator[Chromium]:
    """The browser, started once; where there is none the test is skipped, which fails in .ci/run."""
    if executable() is None:
        pytest.skip(f"no Chromium here ({', '.join(NAMES)})")
    chromium = Chromium()
    yield chromium
    chromium.close()
