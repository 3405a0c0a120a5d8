import json
from hashlib import sha256

from witnessmark.pages.icon import icon_png, icon_svg
from witnessmark.pages.keep_list import keep_files, web_manifest

SITE = {path: (sha256(path.encode()).hexdigest(), 10) for path in (
    "index.html", "hoist/index.html", "hoist/drum/bench/index.html", "pump/index.html", "press/P20/index.html", "search/index.json", "book.json",
    "schema/procedure.schema.json", "sw.js", "assets/javascripts/bundle.js", "assets/javascripts/bundle.js.map", "assets/witnessmark/editions/0K.json",
    "assets/witnessmark/keep/away.html", "assets/witnessmark/keep/lists/index.json", "404.html",
    "hoist/drum/sheet/late/sheet.pdf", "hoist/plan/binder.pdf", "hoist/drum/leaves/late/index.html")}
MADE = {path: json.loads(text) for path, text in keep_files(SITE, {"hoist": "Hoist", "pump": "Pump"}, "2024-05-11").items()}


def test_a_list_holds_the_machine_with_its_leaves_and_what_all_share_but_no_file_for_printing_and_no_other_machine():
    assert sorted(MADE["assets/witnessmark/keep/lists/hoist.json"]["files"]) == [
        "assets/javascripts/bundle.js", "assets/witnessmark/editions/0K.json", "assets/witnessmark/keep/away.html", "hoist/drum/bench/index.html",
        "hoist/drum/leaves/late/index.html", "hoist/index.html", "index.html", "press/P20/index.html", "search/index.json"]


def test_the_index_tells_the_size_and_the_hash_of_each_list():
    texts = keep_files(SITE, {"hoist": "Hoist", "pump": "Pump"}, "2024-05-11")
    entry = MADE["assets/witnessmark/keep/lists/index.json"]["hoist"]
    assert (entry["files"], entry["bytes"], entry["date"]) == (9, 90, "2024-05-11")
    assert entry["list"] == sha256(texts["assets/witnessmark/keep/lists/hoist.json"].encode()).hexdigest()


def test_a_changed_file_changes_the_lists_it_stands_in_and_no_other():
    changed = keep_files({**SITE, "pump/index.html": ("0" * 64, 10)}, {"hoist": "Hoist", "pump": "Pump"}, "2024-05-11")
    index = json.loads(changed["assets/witnessmark/keep/lists/index.json"])
    before = MADE["assets/witnessmark/keep/lists/index.json"]
    assert index["hoist"] == before["hoist"] and index["pump"]["list"] != before["pump"]["list"]


def test_the_icon_is_the_same_every_time_and_the_manifest_stays_in_its_folder():
    assert icon_png(192) == icon_png(192) and "<path" in icon_svg()
    manifest = json.loads(web_manifest("Two machines", [("icon.svg", "image/svg+xml", "any")]))
    assert manifest["scope"] == manifest["start_url"] == "./" and manifest["icons"][0]["src"] == "icon.svg"
