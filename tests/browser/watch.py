"""What must never happen on a page of ours: a breach of its own policy, an error, a file that is missing, a request elsewhere."""

_COUNT = """addEventListener("securitypolicyviolation", event => {
  (window.breaches ??= []).push(event.effectiveDirective + " " + event.blockedURI + " " + event.sample);
});"""


class Watch:
    """Follows every page of a context; `faults()` lists what went wrong so far."""

    def __init__(self, context, address: str):
        self.context, self.address, self.seen = context, address, []
        context.add_init_script(_COUNT)
        context.on("page", self._follow)

    def _follow(self, page):
        page.on("pageerror", lambda error: self.seen.append(f"error: {error}"))
        page.on("request", lambda request: self._asked(request.url))
        page.on("response", lambda answer: self.seen.append(f"{answer.status} {answer.url}") if answer.status >= 400 else None)
        page.on("console", lambda said: self.seen.append(said.text) if said.type == "error" else None)

    def _asked(self, url: str):
        if not url.startswith((self.address, "data:", "blob:")):
            self.seen.append(f"asked for {url}")

    def faults(self) -> list[str]:
        breaches = [breach for page in self.context.pages for breach in page.evaluate("window.breaches ?? []")]
        return [f"breach: {breach}" for breach in breaches] + self.seen
