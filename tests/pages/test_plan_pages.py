"""What the plan puts on pages, sheets and book.json, on the small plan."""

import json
import re

import small_book
from plan_book import HEAD, PROCEDURES, read

from witnessmark.build import codes, render
from witnessmark.prove import Checked
from witnessmark.loading.load_book import load_book
from witnessmark.workings.derive import derive_book


def site():
    book, derived, found = read()
    return render(Checked(book, derived, tuple(found)), "Hoist", "hoist", None)


def words(html: str) -> str:
    return " ".join(re.sub(r"<[^>]+>", " ", html).split())


def page(url: str) -> str:
    return next(page.html for page in site().pages if page.url == url)


def test_the_page_says_what_must_be_shut_before_starting_and_where_it_was_left():
    html = page("hoist/try/")
    assert "Must be shut before you start Pawl wedged. Left in Strip the hoist" in words(html)
    assert 'href="../../hoist/strip/#loose-pawl-wedged"' in html


def test_the_sheet_has_a_box_for_what_must_be_shut():
    html = site().files["hoist/try/sheet/early/index.html"]
    item = html[html.index("Must be shut before you start"):].split("</td>")[0]
    assert "Pawl wedged. Left in Strip the hoist." in words(item) and item.count('class="box"') == 1


def test_what_must_be_shut_is_in_the_book_as_data():
    procedures = {p["id"]: p for p in json.loads(site().files["book.json"])["procedures"]}
    assert procedures["try"]["must be shut"] == ["strip/pawl-wedged"] and procedures["build"]["must be shut"] == []


def test_what_must_be_shut_is_part_of_the_sheet_code():

    book, derived, _ = read(**{"try": PROCEDURES["try"].replace("must be shut: [strip/pawl-wedged]\n", "")})
    with_it, *_ = read()
    key = ("hoist", "try", "early")
    assert codes(Checked(book, derived, ()))[key] != codes(Checked(with_it, read()[1], ()))[key]


def test_a_procedure_says_what_is_open_when_it_starts_when_it_stops_and_what_may_be():
    build = page("hoist/build/")
    start, stop = build.split('id="open-at-start"')[1].split("</section>")[0], build.split('id="left-loose"')[1]
    assert "Guard off. Left in Strip the hoist , shut in Try the hoist . Never while open: run" in words(start)
    assert "Pawl wedged. (left and right) Left in Strip the hoist , shut in step 1" in words(start)
    assert "Guard off." in words(stop) and "Pawl wedged" not in stop
    paint = page("hoist/paint/")
    assert "unless it is tied up already in Build the drum" in words(paint.split('id="open-at-start"')[1].split("</section>")[0])
    assert "May go side by side with: Build the drum ." in words(paint)


def test_what_may_be_open_is_kept_apart_from_what_is():
    """The painter cannot know whether the builder, beside him, has loosened anything."""
    loosens = PROCEDURES["build"].replace("    closes: [strip/pawl-wedged]\n", """\
    closes: [strip/pawl-wedged]
    leaves: [{id: drum-free, state: Drum free., because: It is set next., if forgotten: It rolls., never while open: [run]}]
""")
    book, derived, found = read(build=loosens, **{"try": PROCEDURES["try"].replace("[strip/guard-off]", "[strip/guard-off, build/drum-free]")})
    assert found == []
    html = next(p.html for p in render(Checked(book, derived, ()), "Hoist", "hoist", None).pages if p.url == "hoist/paint/")
    assert "Drum free. (left and right) Left in Build the drum" in words(html.split('id="maybe-open"')[1].split("</section>")[0])
    assert "Drum free" not in html.split('id="open-at-start"')[1].split("</section>")[0]


def test_start_up_and_hand_over_carry_a_banner_and_others_none():
    assert "hands the machine over" in words(page("hoist/try/").split('id="banner"')[1].split("</section>")[0])
    assert 'id="banner"' not in page("hoist/build/")
    runs = PROCEDURES["build"].replace("    do: \"Set the drum", "    acts: [run]\n    do: \"Set the drum")
    book, derived, _ = read(build=runs)
    html = next(p.html for p in render(Checked(book, derived, ()), "Hoist", "hoist", None).pages if p.url == "hoist/build/")
    banner = words(html.split('id="banner"')[1].split("</section>")[0])
    assert "runs the machine" in banner and "Guard off. , before step 2" in banner and "Pawl wedged. (left and right), before step 2" in banner


def test_the_sheet_proves_each_loose_end_with_a_box_for_each_place():
    html = site().files["hoist/try/sheet/late/index.html"]
    banner = html.split("hands the machine over")[1].split("</td>")[0]
    assert words(banner).count("Guard off.") == 1 and banner.count('class="box"') == 1           # the pawl stands under what must be shut
    assert "Open when you stop Nothing is left loose." in words(html)


def test_the_order_is_drawn_with_a_box_for_each_procedure_and_a_line_for_what_is_left_loose():
    html = page("hoist/")
    drawing = html.split("<svg")[1].split("</svg>")[0]
    assert re.findall(r'<a href="([^"]+)"', drawing) == ["../hoist/strip/", "../hoist/build/", "../hoist/paint/", "../hoist/try/"]
    assert drawing.count('class="wm-span"') == 2
    assert "A Strip the hoist → Build the drum Pawl wedged. B Strip the hoist → Try the hoist Guard off." in words(html)
    assert "Build the drum Done first: Strip the hoist. Why: it ties up most of what is loose. Ties up: Pawl wedged." in words(html)
    assert "Strip the hoist Build the drum , Paint the frame Try the hoist" in words(html.split('class="wm-stages"')[1].split("</ol>")[0].split(">", 1)[1])


def test_a_tag_for_each_place_says_what_is_forbidden_and_where_it_comes_off():
    html = site().files["hoist/strip/tags/index.html"]
    assert html.count('class="tag"') == 3
    tag = words(html.split('class="tag"')[3])
    assert "Pawl wedged. RIGHT" in tag and "NEVER WHILE THIS HANGS: run, lift (load)" in tag and "Shut in: Build the drum, step 1." in tag
    assert "hoist/build/tags/index.html" not in site().files


def test_what_is_counted_out_and_in_has_its_boxes():
    assert "4 Wedges, counted out" in words(page("hoist/strip/"))
    last = words(site().files["hoist/build/sheet/early/index.html"].split("Count in again")[1].split("</td>")[0])
    assert "4 Wedges" in last
    assert "Wedges 4 counted out: Strip the hoist counted in again: Build the drum For: Strip the hoist; Build the drum." in words(site().files["hoist/plan/needs/index.html"])


def test_the_page_says_which_part_decides_and_where_it_is_measured():
    which = page("hoist/build/").split('id="which"')[1].split("</section>")[0]
    assert "Drum goes by the part in your hand" in words(which) and "early 8 in" in words(which) and "Found out in Strip the hoist, step 3" in words(which)
    choice = site().files["hoist/build/sheet/late/index.html"].split('class="choices"')[1].split("</div>")[0]
    assert choice.count('class="ring"') == 2 and "early, 8 in" in words(choice)


def test_notes_and_hold_points_of_the_machine_stand_on_one_page_each():
    noted = PROCEDURES["build"].replace("steps:\n", """\
notes:
  - {id: stiff, kind: symptom, says: It turns stiffly., causes: [The pawl drags.], leads to: [strip#pawl]}
  - {id: try-felt, kind: on trial, says: A felt washer., review: 2030-01-01}
steps:
""").replace("    do: Take the wedge", "    hold point: Nobody at the drum.\n    do: Take the wedge")
    book, derived, found = read(build=noted)
    assert found == []
    pages = {p.url: p.html for p in render(Checked(book, derived, ()), "Hoist", "hoist", None).pages}
    notes = words(pages["hoist/plan/notes/"])
    assert "On trial A felt washer. (review by 2030-01-01)" in notes and "The pawl drags. Leads to step 2 of Strip the hoist" in notes
    assert notes.index("On trial") < notes.index("Symptoms")
    assert "Step 1 : Take the wedge from each pawl. STOP, INSPECT: Nobody at the drum. Alone: look again" in words(pages["hoist/plan/hold-points/"])
    assert "hoist/plan/conflicts/" not in pages


def wide(many: int):
    """A machine on which so many procedures may go side by side, each leaving a cover off until the last."""
    texts = dict.fromkeys(PROCEDURES, None)
    for number in range(many):
        texts[f"job{number:03d}"] = HEAD.format(title=f"Job {number}", after="none") + f"""\
steps:
  - id: off
    do: Take the cover off.
    leaves: [{{id: cover-{number}, state: Cover {number} off., because: So., if forgotten: Dust., never while open: [run]}}]
"""
    closes = ", ".join(f"job{number:03d}/cover-{number}" for number in range(many))
    texts["try"] = HEAD.format(title="Try it", after=f"[{', '.join(name for name in texts if name.startswith('job'))}]") + f"""\
steps:
  - id: on
    do: Fit the covers.
    closes: [{closes}]
"""
    book, derived, found = read(**texts)
    assert found == []
    return {p.url: p.html for p in render(Checked(book, derived, ()), "Hoist", "hoist", None).pages}


def test_a_page_does_not_grow_with_all_that_may_be_open_beside_it():
    few, many = wide(30)["hoist/job000/"], wide(90)["hoist/job000/"]
    assert abs(len(few) - len(many)) < 100
    maybe = many.split('id="maybe-open"')[1].split("</section>")[0]
    assert maybe.count("<li") == 12 and "More may be open: see the ledger." in maybe
    assert "May go side by side with" in many and "and 81 more" in many


def test_the_drawing_stays_narrow_and_says_what_it_leaves_out():
    html = wide(30)["hoist/"]
    drawing = html.split("<svg")[1].split("</svg>")[0]
    assert 'viewBox="0 0 358 ' in drawing and drawing.count('class="wm-box"') == 31 and drawing.count('class="wm-span"') == 8
    assert "22 more are left out of the drawing" in html and html.count("Cover 29 off.") >= 1
    narrowest = min(float(width) for width in re.findall(r'class="wm-box"[^>]* width="([\d.]+)"', drawing))
    assert narrowest >= 120


def test_a_conflict_stands_with_every_side_and_whether_it_is_real():
    for real, says in (("yes", "Both cannot be right."), ("no", "Both can be right: one of them left out its condition.")):
        conflict = small_book.SITE_DATA["site_data/conflicts.yaml"] + f"  real: {real}\n"
        book, _ = load_book(small_book.sources(conflicts=conflict))
        html = next(p.html for p in render(Checked(book, derive_book(book)[0], ()), "Hoist", "hoist", None).pages if p.url == "hoist/plan/conflicts/")
        assert says in html and "30 short tons." in html and "The chart split hubs." in html
        assert re.search(r"<s>.*?30 short ton.*?</s>", html, re.S) and "14 short ton" in html


def test_what_an_assembly_needs_is_a_list_of_its_own():
    book, derived, found = read(build=PROCEDURES["build"].replace("people: 1\n", "people: 1\nassembly: hoist-drum\n"))
    assert found == []
    files = render(Checked(book, derived, ()), "Hoist", "hoist", None).files
    assert 'Only for: <a href="hoist-drum/">hoist drum</a>' in files["hoist/plan/needs/index.html"]
    drum = words(files["hoist/plan/needs/hoist-drum/index.html"])
    assert "Yard hoist, hoist drum" in drum and "For: Build the drum." in drum and "Strip the hoist" not in drum


def test_a_wrench_that_is_set_otherwise_for_another_variant_says_for_which():
    for written, says in (("55 lbf·ft", ["Cap bolt: 55 lbf·ft (74.5 N·m)"]),
                          ("{early: 55 lbf·ft, late: 60 lbf·ft}", ["Cap bolt, early: 55 lbf·ft (74.5 N·m)", "Cap bolt, late: 60 lbf·ft (81.3 N·m)"])):
        text = small_book.PROCEDURE.replace("    is: 55 lbf·ft\n", f"    is: {written}\n")
        book, found = load_book(small_book.sources(text))
        derived, more = derive_book(book)
        assert [*found, *more] == []
        html = render(Checked(book, derived, ()), "Hoist", "hoist", None).files["hoist/plan/needs/index.html"]
        assert all(line in words(html) for line in says), words(html)


def test_a_result_goes_by_its_label_and_without_one_by_its_id():
    ground = "computed:\n  big-end:\n{}    working: undersize\n    standard size: 2.750 in\n    readings: 2.7452 in\n    clean-up: 0.0015 in\n    undersizes: 0.010 in\n"
    journal = "  journal:\n    label: Journal\n    kind: diameter\n    condition: clean\n    figures: [{role: target, from: big-end.grind to}]\n"
    for written, says in (("    label: Grinding of the big end\n", "Grinding of the big end"), ("", "big end")):
        book, found = load_book(small_book.sources(small_book.PROCEDURE.replace("steps:\n", journal + ground.format(written) + "steps:\n")))
        derived, more = derive_book(book)
        assert [*found, *more] == []
        made = render(Checked(book, derived, ()), "Hoist", "hoist", None)
        html = words(next(page.html for page in made.pages if page.url == "hoist/drum/"))
        assert f"{says}, grind to" in html and f"{says} Which undersize to grind to" in html


def test_a_figure_of_the_machine_that_a_procedure_works_out_leads_there():
    ground = "computed:\n  big-end:\n    label: Grinding\n    working: undersize\n    standard size: 2.750 in\n    readings: 2.7452 in\n    clean-up: 0.0015 in\n    undersizes: 0.010 in\n"
    machine = small_book.SITE_DATA["site_data/machines/hoist.yaml"].replace("hand-over:", "  journal: {label: Journal, kind: diameter, role: found, from: drum/big-end.grind to}\nhand-over:")
    book, found = load_book(small_book.sources(small_book.PROCEDURE.replace("steps:\n", ground + "steps:\n"), **{"machines/hoist": machine}))
    derived, more = derive_book(book)
    assert [*found, *more] == []
    html = next(page.html for page in render(Checked(book, derived, ()), "Hoist", "hoist", None).pages if page.url == "hoist/")
    assert '2.740 in' in html and '<a href="drum/#result-big-end">Grinding, grind to</a>' in html


def test_a_figure_in_how_a_loose_end_is_left_is_that_of_the_procedure_that_leaves_it():
    """Both procedures have a figure called gap: 0.5 in where the pawl is wedged, 0.10 in where it is freed."""
    gap = "specs:\n  gap: {label: Gap of the pawl, kind: length, role: window, is: 0.5 to 0.6 in, source: shop p. 4}\n"
    book, derived, found = read(strip=PROCEDURES["strip"].replace("Pawl wedged.", "'Pawl wedged {gap} open.'") + gap)
    assert found == []
    made = render(Checked(book, derived, ()), "Hoist", "hoist", None)
    pages = {each.url: words(each.html) for each in made.pages}
    seen = [pages["hoist/build/"], pages["hoist/try/"], pages["hoist/plan/ledger/"], *(words(made.files[f"hoist/{name}/sheet/early/index.html"]) for name in ("build", "try"))]
    assert all("Pawl wedged 0.5 to 0.6 in" in text and "Pawl wedged 0.10" not in text for text in seen)


def test_a_sheet_that_prints_how_another_procedure_leaves_it_goes_stale_with_its_figure():
    gap = "specs:\n  gap: {label: Gap of the pawl, kind: length, role: window, is: 0.5 to 0.6 in, source: shop p. 4}\n"
    strip = PROCEDURES["strip"].replace("Pawl wedged.", "'Pawl wedged {gap} open.'") + gap
    before, after = (codes(Checked(*read(strip=text)[:2], ())) for text in (strip, strip.replace("0.5 to 0.6 in", "0.5 to 0.7 in")))
    moved = {key[1] for key in before if before[key] != after[key]}
    assert {"strip", "build", "try"} <= moved
