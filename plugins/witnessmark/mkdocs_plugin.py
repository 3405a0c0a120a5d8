"""The MkDocs plugin: a few hooks around build.py. The only module that knows MkDocs."""

import os
import re
from functools import partial
from html import unescape
from pathlib import Path
from urllib.parse import unquote

from mkdocs.config import base, config_options
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files, InclusionLevel
from mkdocs.structure.nav import Navigation
from mkdocs.structure.pages import Page
from mkdocs.structure.toc import AnchorLink, TableOfContents

from .build import paper_of, paper_press, render
from .core.finding import ERROR
from .core.memory import FORGETFUL, Memory
from .pages.address import picture_url
from .pages.content_policy import with_policy
from .pages.binding import how_many, printed
from .pages.for_host import for_host, plain_contents
from .pages.forge_links import forge_of
from .pages.offline import ICONS
from .pages.notice import notice_of, under_notice, with_notice
from .pages.pdf import SIZES, NoPdf
from .pages.plain_html import plain_html
from .pages.site import SitePages
from .pages.view_sheet import Paper
from .prove import Checked, check
from .site_folder import Served, made_from, may_stand, turn_for_stick, write_keep_lists

_log = get_plugin_logger("witnessmark")
_THEME = Path(__file__).parent / "theme"
_STICK = "WITNESSMARK_STICK"                    # set where the copy is to be read from a stick
#: Features of the theme by which a page shows titles of all the others.
_SHOWS_ALL = frozenset({"navigation.tabs", "navigation.tabs.sticky", "navigation.path"})
_MAIL = re.compile(r"[A-Za-z0-9.+_-]+@[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)+")


class Options(base.Config):
    id = config_options.Optional(config_options.Type(str))
    pdf = config_options.Optional(config_options.Choice(tuple(SIZES)))
    mail = config_options.Optional(config_options.Type(str))


class WitnessmarkPlugin(BasePlugin[Options]):
    serving = False
    memory: Memory = FORGETFUL

    def on_startup(self, *, command, dirty):
        """Only `serve` goes on with a broken book. With this hook the plugin also outlives each rebuild."""
        self.serving = command == "serve"
        self.memory = Memory() if self.serving else FORGETFUL
        self.last_good, self._served, self._shell, self._env = None, None, None, None

    def on_config(self, config):
        """Puts our theme layer before the host theme's own templates."""
        os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
        config.theme.dirs.insert(0, str(_THEME))
        config.extra.setdefault("generator", False)
        config.theme["favicon"] = f"{ICONS}/icon.svg"
        if self.config.mail and not _MAIL.fullmatch(self.config.mail):
            raise PluginError(f"mail: '{self.config.mail}' is no mail address, write one such as book@shop.example")
        if self.serving:
            settings = Path(config.config_file_path).read_text(encoding="utf-8")
            of_others = "INHERIT" in settings or set(config.plugins) != {"witnessmark"} or config.hooks or config.theme.custom_dir
            self._served = None if of_others else self._served or Served(config.site_dir)
            config.site_dir = self._served.begin() if self._served else config.site_dir
            if self._env and settings == self._settings:
                config.theme.get_env = lambda: self._env        # it has the host's templates compiled
            self._settings = settings
        return config

    def on_files(self, files: Files, *, config) -> Files:
        """Swaps every source for its page; findings of severity error end the build."""
        folder = Path(config.config_file_path).absolute().parent
        checked = check(folder, self.memory)
        for finding in checked.findings:
            (_log.error if finding.severity == ERROR else _log.warning)(finding.line())
        site = self._site(checked, config)
        config.extra["witnessmark_about"] = self._about = site.about
        self._pages = {}
        for file in list(files):
            if file.src_dir == config.docs_dir and not may_stand(folder, file.abs_src_path, checked.book.pictures):
                files.remove(file)
        own_home = files.get_file_from_path("index.md") is not None
        for page in site.pages:
            if page.url == "" and own_home:
                continue
            name = f"{page.url}index.md"
            file = File.generated(config, name, content="")
            file.edit_uri = page.source_path
            _Ready(None, file, config).ours = page
            self._pages[name] = page
            files.append(file)
        for path, picture in checked.book.pictures.items():
            if not path.startswith("procedures/") and not picture.problem:
                files.append(File.generated(config, unquote(picture_url(path)), abs_src_path=str(folder / path)))
        self._files = site.files
        for name, content in site.files.items():
            files.append(File.generated(config, name, content=content))
        _keep_addresses(files, config)
        return files

    def _site(self, checked: Checked, config) -> SitePages:
        """The site; while serving a book with errors, the last good one with the findings on every page."""
        if checked.errors and not self.serving:
            raise PluginError(f"{checked.errors} finding(s) above: mend them, then build again.")
        self._notice = notice_of(checked.findings) if checked.errors and self.last_good and self._served and self._served.whole else ""
        if checked.errors:
            return self.last_good if self._notice else with_notice(self.last_good, checked.findings, config.site_name)
        # A sheet bears the day of what git holds: while an author writes, git is not asked again and again, and no sheet has a day.
        folder, pdf = Path(config.config_file_path).absolute().parent, bool(self.config.pdf)
        paper = Paper(config.site_url or "", "", pdf) if self.serving else paper_of(folder, checked, config.site_url, dict(os.environ), pdf)
        forge = forge_of(config.repo_url, config.edit_uri, str(config.edit_uri_template or ""))
        self.last_good = render(checked, config.site_name, self.config.id or config.site_name, forge, paper, self.config.mail or "", self.memory)
        if pdf:
            self.last_good.files.update(self._downloads(checked, folder))
        return self.last_good

    def _downloads(self, checked: Checked, folder: Path) -> dict[str, bytes]:
        """The sheets as PDF, where the setting asks for them; without the extra the build ends and says what is missing."""
        found, total = {}, how_many(self.last_good)
        try:
            for done, one in enumerate(printed(self.last_good, paper_press(folder, checked, self.last_good, self.config.pdf)), 1):
                found[one.url] = one.data
                if done % 20 == 0 or done == total:
                    _log.info(f"PDF: {done} of {total}")
        except NoPdf as problem:
            raise PluginError(f"{problem}. Or take `pdf` out of mkdocs.yml.") from None
        return found

    def on_nav(self, nav: Navigation, *, config, files) -> Navigation:
        """The menu's few links: the head of each branch, our own pages by their titles."""
        config.extra["witnessmark_menu"] = [entry for entry in map(self._head, nav.items) if entry]
        return nav

    def on_env(self, env, *, config, files):
        """While serving, what stands in the site already is neither set nor written again: for the host it is then no part of this build."""
        if not self._served:
            return env
        self._every = files.documentation_pages()
        titles = [(file.page.title, file.url) for file in self._every] if _SHOWS_ALL.intersection(config.theme.get("features") or ()) else []
        shell = self._settings, self._about, config.extra["witnessmark_menu"], titles
        if shell != self._shell:
            self._shell = shell
        if env is not self._env:
            self._env, listed = env, [name for name in env.loader.list_templates() if "/." not in f"/{name}"]
            env.loader.list_templates = lambda: listed      # else the host looks through ten thousand hidden icons for its files each time
        for file in list(files):
            if self._served.stands(file.dest_uri, self._source(file)):
                file.inclusion = InclusionLevel.EXCLUDED
        return env

    def _source(self, file: File) -> object:
        """What a file of the site is made from; a page written by hand is always set."""
        if file.src_uri in self._pages:
            beside = [(page.title, page.url) if page else None for page in (file.page.previous_page, file.page.next_page)]
            return self._shell, self._pages[file.src_uri], beside
        if file.src_uri in self._files:
            return self._files[file.src_uri]
        return object() if file.is_documentation_page() or not file.abs_src_path else made_from(file.abs_src_path)

    def on_template_context(self, context, *, template_name, config):
        return {**context, "pages": self._every} if self._served else context

    def _head(self, item) -> tuple[str, str] | None:
        """Title and address of a branch of the menu, or of a single page."""
        pages = [item] if item.is_page else [child for child in getattr(item, "children", ()) or () if child.is_page]
        if not pages:
            return None
        head = min(pages, key=lambda page: len(page.file.src_uri))
        ours = self._pages.get(head.file.src_uri)
        title = ours.title if ours and ours.url else unescape(item.title or head.title or "Home")
        return title, head.url or "."

    def on_page_markdown(self, markdown: str, *, page, config, files):
        if not isinstance(page, _Ready):
            page.meta = {key: for_host(page.meta[key]) for key in ("title", "description") if isinstance(page.meta.get(key), str)}
        return markdown

    def on_page_content(self, html: str, *, page, config, files) -> str:
        if isinstance(page, _Ready):
            return html
        page.title = for_host(unescape(page.title or ""))
        plain_contents(page.toc)
        return plain_html(html)

    def on_post_page(self, output: str, *, page, config) -> str:
        """While serving, the host adds a script of its own that changes with every answer."""
        return output if self.serving else with_policy(output)

    def on_post_template(self, output: str, *, template_name, config) -> str:
        return with_policy(output) if template_name.endswith(".html") and not self.serving else output

    def on_post_build(self, *, config):
        """What a phone may keep; not while serving, where every answer is fresh."""
        if self._served:
            self._served.move_in()
            if self._notice:
                self._served.cover([file.dest_uri for file in self._every], partial(under_notice, notice=self._notice))
            self._every = ()
        elif os.environ.get(_STICK) and not self.serving:
            turn_for_stick(Path(config.site_dir))
        elif not self.serving:
            write_keep_lists(Path(config.site_dir), self._about)

    def on_serve(self, server, *, config, builder):
        """docs_dir is watched by MkDocs; the rest of the book is not."""
        folder = Path(config.config_file_path).absolute().parent
        if (folder / "site_data").is_dir():
            server.watch(str(folder / "site_data"))
        return server


class _Ready(Page):
    """A page whose body is ready in `ours`: the host has nothing to turn from Markdown."""

    def read_source(self, config) -> None:
        self.markdown, self.meta = "", {"title": for_host(self.ours.title), "description": for_host(self.ours.description)}

    def render(self, config, files) -> None:
        self.content, self.toc = self.ours.html, _contents(self.ours)


def _keep_addresses(files: Files, config) -> None:
    """A page written by hand never takes the address of one of ours: the last file of an address would win in silence."""
    ours = {file.dest_uri for file in files if file.generated_by}
    for file in list(files):
        if file.generated_by is None and file.src_dir == config.docs_dir and file.dest_uri in ours:
            files.remove(file)
            _log.warning(f"procedures/{file.src_uri}:1:1: warning: a page of the book stands at this address, give the file another name [stray-file]")


def _contents(page) -> TableOfContents:
    """Headings of level 2 and 3 as the host's nested contents list."""
    roots: list[AnchorLink] = []
    for heading in page.toc:
        link = AnchorLink(for_host(heading.title), heading.id, heading.level)
        (roots[-1].children if heading.level > 2 and roots else roots).append(link)
    return TableOfContents(roots)

