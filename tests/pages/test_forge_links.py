"""The addresses of the three forges, as their own documentation and sources give them; nothing where there is no forge.

GitHub: docs.github.com, "About automation for issues and pull requests with query parameters": /issues/new?title=New+bug+report&body=...,
a blank written as a plus. GitLab: docs.gitlab.com, "Create an issue": /-/issues/new?issue[title]=...&issue[description]=....
Forgejo and Gitea: routers/web/web.go (`/{username}/{reponame}/_edit/*`, `/src/branch/*`), routers/web/repo/issue_new.go (`title`, `body`).
`edit_uri_template`: mkdocs.org, "Configuration", and the class EditURITemplate of MkDocs, run beside ours below."""

from urllib.parse import parse_qs, quote, urlsplit

import pytest
from mkdocs.config.config_options import EditURITemplate

from witnessmark.pages.forge_links import forge_of

PATH = "procedures/type 24/a#b.yaml"
QUOTED = "procedures/type%2024/a%23b.yaml"
CASES = [
    ("github", "https://github.com/shop/book", "edit/main/", f"https://github.com/shop/book/edit/main/{QUOTED}#L12", "",
     "https://github.com/shop/book/issues/new", ("title", "body")),
    ("github", "https://forge.example/shop/book.git/", "edit/main/", f"https://forge.example/shop/book/edit/main/{QUOTED}#L12", "",
     "https://forge.example/shop/book/issues/new", ("title", "body")),
    ("github", "https://github.com/shop/book", "https://github.com/other/fork/edit/dev/books/one/", f"https://github.com/other/fork/edit/dev/books/one/{QUOTED}#L12", "",
     "https://github.com/shop/book/issues/new", ("title", "body")),
    ("gitlab", "https://gitlab.com/group/sub/book", "edit/main/", f"https://gitlab.com/group/sub/book/edit/main/{QUOTED}#L12", "",
     "https://gitlab.com/group/sub/book/-/issues/new", ("issue[title]", "issue[description]")),
    ("gitlab", "https://forge.example/group/book", "-/edit/main/", f"https://forge.example/group/book/-/edit/main/{QUOTED}#L12", "",
     "https://forge.example/group/book/-/issues/new", ("issue[title]", "issue[description]")),
    ("forgejo", "https://forge.example/shop/book", "_edit/main/", f"https://forge.example/shop/book/_edit/main/{QUOTED}",
     f"https://forge.example/shop/book/src/branch/main/{QUOTED}#L12", "https://forge.example/shop/book/issues/new", ("title", "body")),
    ("other", "https://forge.example/shop/book", "src/default/", f"https://forge.example/shop/book/src/default/{QUOTED}", "", None, None),
]


@pytest.mark.parametrize(("shape", "repo", "edit_uri", "edit", "shown", "issues", "names"), CASES, ids=[f"{case[0]} {case[2]}" for case in CASES])
def test_each_shape_leads_to_its_editor_and_its_form(shape, repo, edit_uri, edit, shown, issues, names):
    forge = forge_of(repo, edit_uri)
    assert (forge.shape, forge.edit(PATH, 12), forge.shown(PATH, 12)) == (shape, edit, shown)
    form = forge.issues()
    assert (form and form.address) == issues
    if form:
        found = urlsplit(form.filled("A & b=c", "line 1\nline #2 ?\"'<>"))
        assert parse_qs(found.query) == {names[0]: ["A & b=c"], names[1]: ["line 1\nline #2 ?\"'<>"]} and found.fragment == ""


TEMPLATES = [
    ("github", "https://github.com/shop/book", "edit/main/{path}", f"https://github.com/shop/book/edit/main/{QUOTED}#L12", True),
    ("github", "https://github.com/shop/book", "https://github.dev/shop/book/edit/main/{path}", f"https://github.dev/shop/book/edit/main/{QUOTED}#L12", True),
    ("gitlab", "https://forge.example/group/book", "-/edit/main/{path}?ref=x", f"https://forge.example/group/book/-/edit/main/{QUOTED}?ref=x#L12", True),
    ("forgejo", "https://forge.example/shop/book", "_edit/main/{path}", f"https://forge.example/shop/book/_edit/main/{QUOTED}", True),
    ("other", "https://forge.example/shop/book", "?edit={path!q}", f"https://forge.example/shop/book?edit={quote(PATH, safe='')}", False),
    ("other", "https://wiki.example/", "write/{path_noext}", f"https://wiki.example/write/{QUOTED.removesuffix('.yaml')}", False),
    ("other", None, "https://editor.example/#{path}", f"https://editor.example/#{QUOTED}", False),
    ("github", None, "https://forge.example/shop/book/edit/main/{path}", f"https://forge.example/shop/book/edit/main/{QUOTED}#L12", False),
]


@pytest.mark.parametrize(("shape", "repo", "template", "edit", "form"), TEMPLATES, ids=[case[2] for case in TEMPLATES])
def test_a_template_is_filled_as_mkdocs_fills_it_and_stands_over_the_other_setting(shape, repo, template, edit, form):
    forge = forge_of(repo, "edit/other/", template)
    assert (forge.shape, forge.edit(PATH, 12), bool(forge.issues())) == (shape, edit, form)
    plain, filler = "procedures/a/b.yaml", EditURITemplate.Template(EditURITemplate.Formatter(), template)
    assert forge.edit(plain, 12).removesuffix("#L12").endswith(filler.format(plain, plain.removesuffix(".yaml")))


@pytest.mark.parametrize("template", ["edit/main/", "{page}", "javascript:{path}", "https://forge.example/\"><script>{path}", "edit/main/{path}'x"])
def test_a_template_that_leads_nowhere_makes_no_link(template):
    assert forge_of(None if ":" in template else "https://forge.example/shop/book", None, template) is None


@pytest.mark.parametrize(("repo", "edit_uri"), [(None, "edit/main/"), ("", "edit/main/"), ("https://forge.example/shop/book", None),
                                                ("https://forge.example/shop/book", ""), ("javascript:alert(1)", "edit/main/"),
                                                ("https://forge.example/\"><script>", "edit/main/"), ("git@forge.example:shop/book", "edit/main/")])
def test_without_an_address_on_the_web_there_is_no_forge(repo, edit_uri):
    assert forge_of(repo, edit_uri) is None
