"""The words of "My bench" that a reader sees; SCRIPT are those that its scripts say, {} filled in by them."""

from . import words

TITLE = "My bench"
ABOUT = "Your own press, wrenches, units and text size. They stay on this phone; nothing is sent anywhere."
ON_PAGES = "On the pages of procedures your own card then stands beside the book's, with the inputs you gave. It never takes the book's place."
NOT_HERE = ("Without script this page can keep nothing. With it, you would type in your press and gauge, and every press force in the book would show the marks of "
            "your gauge beside those of the book's press; your wrenches would show their settings, and figures would stand in the units you choose.")
HOME = "All procedures"
BROKEN = "Something in this page's script failed. What was kept before is still there; reload to try again."
PRESS, WRENCHES, LOOKS = "My press", "My wrenches", "Units and text size"
NAME = "What you call it"
BY = "The ram's area is known by"
BY_AREA, BY_BORE = "the area on its nameplate", "its bore, measured"
SIDE, PUSH, PULL = "The oil works on", "the whole bore (pushing)", "the rod side (pulling)"
GAUGE_UNIT = "The gauge reads in"
UNIT_OF = "Unit: {}"
KEEP_PRESS, FORGET_PRESS = "Keep this press", "Forget this press"
ADD_WRENCH = "Keep this wrench"
UNITS_FIRST = "Units shown first"
UNITS = (("", "as the book prints them"), ("inch", "inches, pounds, long tons"), ("metric", "millimetres, newtons, bar"))
SIZE = "Text size on procedure pages"
SIZES = (("", "as it is"), ("125", "a quarter larger"), ("150", "half as large again"), ("200", "twice as large"))
PRINT = "Print what is kept here"
NOT_KEPT_YET = "No press is kept yet."
LINK = "My bench: my own press, wrenches and units"
#: Input of a press card, its label, what to say about it, units to choose from; "" is the gauge's own.
AREA = ("area", "Effective area", "From the nameplate. Of a hollow ram the ring only, the hole taken off.", ("in²", "cm²", "mm²"))
BORE = ("bore", "Bore, straight across", "The diameter of the cylinder. Not the radius.", ("in", "mm"))
ROD = ("rod", "Rod, straight across", "The diameter of the rod. Needed only where the oil works on the rod side.", ("in", "mm"))
RATED = (("rated force", "Force on the nameplate", "", ("long ton", "short ton", "tonne", "kN", "lbf")),
         ("rated pressure", "Pressure on the nameplate", "The pressure at which it gives that force.", ("psi", "bar", "MPa", "kgf/cm²")))
GAUGE = (("full scale", "Last figure on the dial", "", ()), ("division", "One small division", "Between two neighbouring lines.", ()),
         ("accuracy", "Accuracy class", "Per cent of full scale; often printed on the dial. Write 2.5 when it says nothing.", ("%",)),
         ("gauge limit", "Highest reading it may see", "Only if less than the whole dial.", ()))
GAUGE_UNITS = tuple((unit, unit) for unit in ("psi", "bar", "MPa", "kgf/cm²"))
WRENCH_UNITS = tuple((unit, unit) for unit in ("lbf·ft", "lbf·in", "N·m"))
WRENCH_UNIT = "The wrench reads in"
WRENCH = (("wrench lowest", "Lowest setting", "", ()), ("wrench highest", "Highest setting", "", ()), ("wrench graduation", "One graduation", "", ()),
          ("wrench accuracy", "How far it may be out", "Per cent; 4 when nobody has checked it.", ("%",)),
          ("wrench length", "Length, drive to hand", "From the drive square to the middle of the grip. Only for adapters.", ("in", "mm")))

SCRIPT = {
    "my card": "Your own press: {}", "yours": "Worked out on this phone from what you typed in under My bench. The book's card stands beside it; where the two disagree, find out why before pressing.",
    "inputs": "What you gave", "marks": words.MARKS, "never": words.NEVER_PASS, "means": words.LAST_FORCE, "uncertain": words.UNCERTAIN,
    "accept": words.ACCEPT, "asked": "Asked for by the book", "no stud": "No draw stud is judged here: see the book's card.",
    "refused": "Your press cannot do it: {}.", "instead": "Instead: {}.", "print": "Print this card", "edit": "Change my press",
    "my setting": "Your own wrench: {}", "setting": "Set", "delivers": "gives at the fastener", "rounds": "In rounds:", "wrench refused": "Your wrench cannot do it: {}.",
    "as printed": "as printed",
    "kept": "Kept on this phone. Area times pressure makes {} of the nameplate's {}: they agree.", "not kept": "This browser keeps nothing (a private window, or storage is full).",
    "forgotten": "Forgotten.", "refuse press": "Not kept, for these reasons:",
    "apart": "Area times nameplate pressure makes {}, the nameplate says {}: {} % apart, more than 15 %.",
    "measure area": "Read the area on the nameplate again, with its unit; if it is right, the nameplate's force or pressure belongs to another ram.",
    "measure bore": "Measure the bore again, straight across.", "radius": "Was the radius measured? Twice as much would fit the nameplate.",
    "double": "Was the bore doubled? Half as much would fit the nameplate.", "inches": "Are square inches and square centimetres mixed up?", "ton": "Is it another ton?",
    "both": "Force and pressure of the nameplate are both needed: only with them can the area be checked.", "missing": "{} is missing.",
    "rod": "Where the oil works on the rod side the rod must be given too.", "wrench kept": "Kept: {}.", "remove": "Forget {}", "no wrench": "No wrench is kept yet.",
    "unusual": "Kept, but look again: {}.", "to": "{} to {}",
}
