"""The MkDocs plugin: a few hooks around build.py. The only module that knows MkDocs."""

import os
import re
from hashlib import sha256
from html import escape, unescape
from pathlib import Path
from urllib.parse import unquote

from mkdocs.config import base, config_options
from mkdocs.exceptions import PluginError
from mkdocs.plugins import BasePlugin, get_plugin_logger
from mkdocs.structure.files import File, Files
from mkdocs.structure.nav import Navigation
from mkdocs.structure.toc import AnchorLink, TableOfContents

from .build import Checked, check, paper_of, paper_press, render
from .core.finding import ERROR
from .pages.address import picture_url
from .pages.content_policy import with_policy
from .pages.binding import how_many, printed
from .pages.forge_links import forge_of
from .pages.keep_list import keep_files
from .pages.offline import ICONS
from .pages.notice import with_notice
from .pages.pdf import SIZES, NoPdf
from .pages.plain_html import plain_html
from .pages.site import SitePages
from .pages.stick import data_script, for_stick

_log = get_plugin_logger("witnessmark")
_THEME = Path(__file__).parent / "theme"
_STICK = "WITNESSMARK_STICK"                    # set where the copy is to be read from a stick
_MAIL = re.compile(r"[A-Za-z0-9.+_-]+@[A-Za-z0-9-]+(\.[A-Za-z0-9-]+)+")


class Options(base.Config):
    id = config_options.Optional(config_options.Type(str))
    pdf = config_options.Optional(config_options.Choice(tuple(SIZES)))
    mail = config_options.Optional(config_options.Type(str))


class WitnessmarkPlugin(BasePlugin[Options]):
    serving = False
    last_good = None

    def on_startup(self, *, command, dirty):
        """Only `serve` goes on with a broken book. With this hook the plugin also outlives each rebuild."""
        self.serving = command == "serve"

    def on_config(self, config):
        """Puts our theme layer before the host theme's own templates."""
        os.environ.setdefault("NO_MKDOCS_2_WARNING", "1")
        config.theme.dirs.insert(0, str(_THEME))
        config.extra.setdefault("generator", False)
        config.theme["favicon"] = f"{ICONS}/icon.svg"
        if self.config.mail and not _MAIL.fullmatch(self.config.mail):
            raise PluginError(f"mail: '{self.config.mail}' is no mail address, write one such as book@shop.example")
        return config

    def on_files(self, files: Files, *, config) -> Files:
        """Swaps every source for its page; findings of severity error end the build."""
        folder = Path(config.config_file_path).parent
        checked = check(folder)
        for finding in checked.findings:
            (_log.error if finding.severity == ERROR else _log.warning)(finding.line())
        site = self._site(checked, config)
        config.extra["witnessmark_about"] = self._about = site.about
        self._pages = {}
        for file in list(files):
            if file.src_dir == config.docs_dir and not _may_stand(folder, file, checked):
                files.remove(file)
        own_home = files.get_file_from_path("index.md") is not None
        for page in site.pages:
            if page.url == "" and own_home:
                continue
            name = f"{page.url}index.md"
            file = File.generated(config, name, content="")
            file.edit_uri = page.source_path
            self._pages[name] = page
            files.append(file)
        for path, picture in checked.book.pictures.items():
            if not path.startswith("procedures/") and not picture.problem:
                files.append(File.generated(config, unquote(picture_url(path)), abs_src_path=str(folder / path)))
        for name, content in site.files.items():
            files.append(File.generated(config, name, content=content))
        _keep_addresses(files, config)
        return files

    def _site(self, checked: Checked, config) -> SitePages:
        """The site; while serving a book with errors, the last good one with the findings on every page."""
        if checked.errors and not self.serving:
            raise PluginError(f"{checked.errors} finding(s) above: mend them, then build again.")
        if checked.errors:
            return with_notice(self.last_good, checked.findings, config.site_name)
        paper = paper_of(Path(config.config_file_path).parent, checked, config.site_url, dict(os.environ), bool(self.config.pdf))
        self.last_good = render(checked, config.site_name, self.config.id or config.site_name, _edit_base(config), paper,
                                forge_of(config.repo_url, config.edit_uri), self.config.mail or "")
        if self.config.pdf:
            self.last_good.files.update(self._downloads(checked, Path(config.config_file_path).parent))
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
        ours = self._pages.get(page.file.src_uri)
        if ours is None:
            page.meta = {key: _for_host(page.meta[key]) for key in ("title", "description") if isinstance(page.meta.get(key), str)}
            return markdown
        page.meta = {"title": _for_host(ours.title), "description": _for_host(ours.description)}
        return ""

    def on_page_content(self, html: str, *, page, config, files) -> str:
        ours = self._pages.get(page.file.src_uri)
        if ours is None:
            page.title = _for_host(unescape(page.title or ""))
            _plain_contents(page.toc)
            return plain_html(html)
        page.toc = _contents(ours)
        return ours.html

    def on_post_page(self, output: str, *, page, config) -> str:
        """While serving, the host adds a script of its own that changes with every answer."""
        return output if self.serving else with_policy(output)

    def on_post_template(self, output: str, *, template_name, config) -> str:
        return with_policy(output) if template_name.endswith(".html") and not self.serving else output

    def on_post_build(self, *, config):
        """What a phone may keep, by the hash of each finished file; not while serving, where every answer is fresh."""
        if self.serving:
            return
        root = Path(config.site_dir)
        if os.environ.get(_STICK):
            _for_stick(root)
            return
        files = {path.relative_to(root).as_posix(): _hashed(path) for path in root.rglob("*") if path.is_file()}
        for name, text in keep_files(files, self._about.machines, self._about.date).items():
            (root / name).parent.mkdir(parents=True, exist_ok=True)
            (root / name).write_text(text, encoding="utf-8")

    def on_serve(self, server, *, config, builder):
        """docs_dir is watched by MkDocs; the rest of the book is not."""
        folder = Path(config.config_file_path).parent
        if (folder / "site_data").is_dir():
            server.watch(str(folder / "site_data"))
        return server


def _for_stick(root: Path) -> None:
    for page in root.rglob("*.html"):
        page.write_text(for_stick(page.read_text(encoding="utf-8")), encoding="utf-8")
    for data in (root / "search").glob("*.json"):
        path, text = data_script(data.relative_to(root).as_posix(), data.read_text(encoding="utf-8"))
        (root / path).write_text(text, encoding="utf-8")


def _hashed(path: Path) -> tuple[str, int]:
    data = path.read_bytes()
    return sha256(data).hexdigest(), len(data)


def _may_stand(folder: Path, file: File, checked: Checked) -> bool:
    """Pages written by hand, and pictures that a source names: nothing else of what lies beside the sources is copied."""
    at = Path(file.abs_src_path).resolve()
    if not at.is_relative_to(folder.resolve()):
        return False
    picture = checked.book.pictures.get((Path(file.src_dir) / file.src_uri).relative_to(folder).as_posix())
    return file.src_uri.endswith(".md") or (picture is not None and picture.problem is None)


def _keep_addresses(files: Files, config) -> None:
    """A page written by hand never takes the address of one of ours: the last file of an address would win in silence."""
    ours = {file.dest_uri for file in files if file.generated_by}
    for file in list(files):
        if file.generated_by is None and file.src_dir == config.docs_dir and file.dest_uri in ours:
            files.remove(file)
            _log.warning(f"procedures/{file.src_uri}:1:1: warning: a page of the book stands at this address, give the file another name [stray-file]")


def _edit_base(config) -> str | None:
    """Where the sources stand in the forge's editor, ending in a slash; None without a repository."""
    if not config.repo_url or not config.edit_uri:
        return None
    return f"{config.repo_url.rstrip('/')}/{config.edit_uri.strip('/')}/"


def _for_host(text: str) -> str:
    """An author's words for the host's templates, which do not escape and even unescape: no angle bracket reaches them."""
    return escape(text.replace("<", "‹").replace(">", "›"))


def _plain_contents(links) -> None:
    """The same for the contents list of a page written by hand, whose ids may be an author's too."""
    for link in links:
        link.title = _for_host(unescape(link.title))
        link.id = re.sub(r"[^\w.:-]", "", link.id)
        _plain_contents(link.children)


def _contents(page) -> TableOfContents:
    """Headings of level 2 and 3 as the host's nested contents list."""
    roots: list[AnchorLink] = []
    for heading in page.toc:
        link = AnchorLink(_for_host(heading.title), heading.id, heading.level)
        if heading.level > 2 and roots:
            roots[-1].children.append(link)
        else:
            roots.append(link)
    return TableOfContents(roots)

