"""A sheet names nothing as done first, or shut, that its variant never has; the page says for which variants it is."""

import re



def test_sheets_leave_out_what_their_variant_never_has(book, site):
    checked = 0
    for procedure in book["procedures"]:
        others = {one["id"]: one for one in book["procedures"] if one["machine"] == procedure["machine"]}
        for name in procedure["after"]:
            missing = set(procedure["variants"]) - set(others[name]["variants"])
            page = next(page.html for page in site.pages if page.url == f"{procedure['machine']}/{procedure['id']}/")
            mine = [variant for variant in procedure["variants"] if variant not in missing]
            if missing and mine:
                assert f"{others[name]['title']}, for {' and '.join(mine)} only" in page
            for variant in procedure["variants"]:
                sheet = site.files[f"{procedure['machine']}/{procedure['id']}/sheet/{variant}/index.html"]
                head = sheet[:sheet.index("data-caution") if "data-caution" in sheet else len(sheet)]
                told = re.search(r"done first: (.*?)\. ?[<A-Z]", head)
                assert (others[name]["title"] in (told[1] if told else "")) == (variant not in missing), (procedure["id"], variant, name)
                checked += variant in missing
    assert checked, "nothing in the demonstration shows the difference any more"


def test_a_locomotive_without_a_drive_chain_is_not_asked_whether_it_is_laid_on(site):
    for variant, there in (("24-A", True), ("24-B", True), ("24-C", False)):
        sheet = site.files[f"type-24/fill-and-engine-test/sheet/{variant}/index.html"]
        assert ("Drive chain laid on" in sheet) == there
