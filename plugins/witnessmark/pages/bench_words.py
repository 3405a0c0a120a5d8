"""The words of the bench view that a reader sees; SCRIPT are those that its scripts say, {} filled in by them."""

NOT_KEPT = "The steps stand below, one after another, for all variants: without script this page picks none and keeps no marks."
WHY = "Why, and whose figure"
STEPS = "Steps"
NEXT = "Next"
PREVIOUS = "Back"
END_TITLE = "After the last step"

SCRIPT = {
    "serial label": "Serial on the plate", "place label": "Which {}", "part": "{}: as fitted", "own": "its own",
    "serial": "Serial {}", "no serial": "Serial not given", "unknown serial": "Serial {} stands in no range of this book: all variants are shown.",
    "not for": "{} is a {}: this procedure is not for it.", "for": "{}, {}",
    "awake label": "Keep the screen on", "awake": "The screen stays on while this page is in front.", "awake off": "The screen may go dark again.",
    "awake lost": "The screen may go dark: the browser ended it. Tap again to ask anew.",
    "no awake": "This browser cannot keep the screen on. Set a longer time in the phone's own settings.",
    "awake refused": "The browser refused, often because the battery is low. The screen may go dark.",
    "broken": "Something in this page's script failed. All steps stand below as plain text; marks made before are kept.",
}
