from witnessmark.pages.content_policy import PLAIN, policy, with_policy

PAGE = '<!doctype html><head><meta charset="utf-8"><title>x</title></head><body>{}</body>'


def test_each_script_is_let_in_by_its_own_hash_and_data_by_none():
    # The hash is the one printed for this very script in the W3C's Content Security Policy Level 2, "Hash usage for script
    # elements" (from memory).
    html = PAGE.format("<script>alert('Hello, world.');</script><script type=\"application/json\">{}</script><script src='a.js'></script>")
    assert policy(html) == PLAIN.replace("script-src 'self'", "script-src 'self' 'sha256-qznLcsROx4GACP2dm0UCKCzCG+HiZ1guq6ZZDob/Tng='")


def test_it_stands_before_the_first_script():
    html = with_policy(PAGE.format("<script>1</script>"))
    assert html.index("Content-Security-Policy") < html.index("<title>") < html.index("<script>")


def test_a_style_on_an_element_is_let_in_only_where_there_is_one():
    assert "style-src-attr" not in policy(PAGE.format("<p>style=</p>"))
    assert policy(PAGE.format('<td style="text-align: left">')).endswith("style-src-attr 'unsafe-inline'")
