"""What a reader must find on the page of a procedure, on the tiny book."""

import re
from dataclasses import replace
from html.parser import HTMLParser

from tiny_book import GAP, PRESS_FORCE, STEPS, figure, page, procedure, quantity, says, site, step


def words(html: str) -> str:
    """The text a reader sees, on one line."""
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def after(html: str, mark: str) -> str:
    return html[html.index(mark):]


def test_the_page_in_whole(golden):
    golden("pages/procedure.html", page())


def test_each_variant_has_its_own_figure_beside_its_name():
    assert "A 15 long ton (149 kN) B 18 long ton (179 kN)" in words(after(page(), 'id="spec-press-force"'))


def test_a_ceiling_that_the_hub_decides_is_named_by_the_hub():
    assert "never more than hub A 18 long ton (179 kN) hub B 22 long ton (219 kN)" in words(page())


def test_a_figure_kept_for_the_record_is_struck_through_and_says_so():
    struck = re.search(r"<s>(.*?)</s> <strong>(.*?)</strong>", page())
    assert "30 long ton" in struck[1] and struck[2] == "kept for the record, do not use"


def test_a_kept_figure_never_reaches_a_sentence():
    assert "30 long ton" not in after(page(), 'id="steps"').split('id="left-loose"')[0]


def test_a_figure_in_doubt_prints_no_number():
    html = after(page(), 'id="spec-old-taper"').split("</tbody>")[0]
    assert "DO NOT USE" in html and "Two drawings differ." in html and "1:12" not in html


def test_an_unknown_figure_says_not_to_guess_and_who_is_to_find_it():
    assert "NOT KNOWN, DO NOT GUESS" in words(page()) and "To be found by: Measure three hubs." in words(page())


def test_a_correction_says_what_changed_and_what_it_means_for_work_done():
    assert "Was 20 long tons. Is now 18 long tons. Why A hub cracked." in words(page())
    assert "Work already done: inspect it." in words(page())


def test_a_caution_stands_whole_before_its_step():
    html = page()
    step_at = html.index('id="step-press"')
    box, do = html.index("It bursts.", step_at), html.index("Press to", step_at)
    assert step_at < html.index("DANGER", step_at) < box < html.index("Set up the guard.", step_at) < do


def test_no_caution_figure_or_step_is_folded_away():
    assert "<details" not in page() and "hidden" not in page().replace("aria-hidden", "")


def test_a_step_for_one_variant_says_so():
    assert "Only B 3 Leave the tab unbent." in words(page())


def test_an_empty_list_says_none():
    assert "Supplies None Parts 2 Tab washer, 6B-7789, use once, never refit" in words(page())


def test_a_refused_press_says_why_and_what_would_do():
    assert "REFUSED the last mark may lie over the ceiling. Instead: use the frame press." in words(page())


def test_every_donor_row_names_the_machine_and_the_part():
    donors = words(after(page(), "wm-donors").split("</table>")[0])
    assert "A with hub B Stop at 1,500 psi" in donors and "B with hub A REFUSED" in donors


def test_old_ids_still_lead_to_the_figure_and_the_step():
    assert 'id="spec-FC-PRESS"' in page() and 'id="step-wipe"' in page()


def test_every_figure_shown_says_which_spec_role_and_variant():
    for tag in re.findall(r'<span class="wm-figure"[^>]*>', page()):
        assert re.search(r'data-spec="[\w-]+" data-role="\w+" data-variant="A( B)?|B"', tag), tag


def test_text_of_an_author_is_never_markup():
    assert "&lt;b&gt;left&lt;/b&gt; hand" in page()
    evil = procedure(title="<script>x</script>", steps=(step("a", "<img src=x> & *more*"),))
    assert "<script" not in page(evil) and "&lt;img src=x&gt; &amp; <em>more</em>" in page(evil)


def test_no_inline_style_or_script():
    everything = "".join(page.html for page in site().pages) + "".join(text for text in site().files.values() if isinstance(text, str))
    ours = r'<script type="module" src="(\.\./)*assets/witnessmark/[\w/]+\.js"></script>|<script type="application/json" id="[\w-]+">[^<]*</script>'
    assert not re.search(r"<script|<style| style=| on\w+=|javascript:", re.sub(ours, "", everything))


def test_ids_are_unique_and_inner_links_lead_somewhere():
    class Ids(HTMLParser):
        def __init__(self):
            super().__init__()
            self.ids, self.links = [], []

        def handle_starttag(self, tag, attributes):
            for name, value in attributes:
                if name == "id":
                    self.ids.append(value)
                if name == "href" and value.startswith("#"):
                    self.links.append(value[1:])

    for url in ("winch/hub/", "winch/", "caution/", ""):
        found = Ids()
        found.feed(page(url=url))
        assert len(found.ids) == len(set(found.ids)) and set(found.links) <= set(found.ids)


def test_links_between_pages_lead_to_pages_of_the_book():
    built = site()
    there = {one.url for one in built.pages} | {path.removesuffix("index.html") for path in built.files}
    for one in built.pages:
        for href in re.findall(r'href="([^"#]+)', one.html):
            at = one.url.rstrip("/").split("/") if one.url else []
            for piece in href.rstrip("/").split("/"):
                at = at[:-1] if piece == ".." else [*at, piece]
            assert "/".join(at) + "/" in there | {"winch/proof/"}, (one.url, href)    # 'proof' is a rule's finding, not ours


def test_contents_name_only_what_is_there():
    one = next(one for one in site().pages if one.url == "winch/hub/")
    assert [heading.id for heading in one.toc] == re.findall(r'<h2 id="([\w-]+)"', one.html)
    assert one.source_path == "procedures/winch/hub.yaml"


def test_a_window_open_on_one_side_is_accepted_not_between():
    open_window = replace(GAP, figures=(figure("window", quantity("at least 0.060 in", "clearance")),))
    assert "accept at least 0.060 in" in words(page(procedure(specs={"gap": open_window, "press-force": PRESS_FORCE})))


def test_a_figure_without_a_case_is_not_known_rather_than_guessed():
    lone = replace(PRESS_FORCE, figures=(replace(PRESS_FORCE.figures[0], worth=replace(
        PRESS_FORCE.figures[0].worth, cases=PRESS_FORCE.figures[0].worth.cases[:1])),))
    from tiny_book import Derived, CODES, Settings, book, site_pages
    one = procedure(specs={"press-force": lone}, steps=STEPS[:1])
    built = site_pages(book(one), {("winch", "hub"): Derived()}, CODES, Settings("T", "t"))
    html = next(page.html for page in built.pages if page.url == "winch/hub/")
    assert "A 15 long ton (149 kN) B NOT KNOWN, DO NOT GUESS" in words(html)


def test_same_book_same_bytes():
    assert site() == site()


def test_the_summary_is_the_description():
    assert next(one for one in site().pages if one.url == "winch/hub/").description == says("Dry, by marks.").text
