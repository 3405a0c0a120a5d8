"""Sentences for a made-up workshop, no two of them alike: a seeded generator, so that a book is the same on every run."""

import random

VERBS = (
    "Clean Wipe Lift Turn Measure Fit Seat Tap Draw Press Scribe Mark Gauge Dress Ream Hone Stone File Align Slide Hang "
    "Support Clamp Pack Prime Bleed Drain Fill Rotate Check Loosen Tighten Back-off Ease Warm Chill Dry Oil Grease Blow-out"
).split()
PARTS = (
    "shaft hub sleeve bush race cone cup spacer washer collar gland packing ring piston liner rocker pushrod tappet cam "
    "follower pinion wheel sprocket chain link pin cotter key keyway spline coupling flange cover housing bracket lever "
    "fork pawl ratchet drum band shoe disc plate spring seat valve guide stem cap bridge yoke trunnion pedestal axle box "
    "horn wedge buffer hook bolt stud nut dowel shim gasket plug cock pipe union elbow strainer sump pump gear rack worm "
    "quadrant link-block slipper crosshead journal bearing brass thrust-plate governor weight bob-link banjo manifold"
).split()
ADJECTIVES = (
    "upper lower inner outer near far long short hollow solid split tapered threaded plain polished worn new old hardened "
    "soft painted bare oiled dry cold warm numbered stamped drilled reamed slotted castellated stepped grooved flanged"
).split()
PLACES = (
    "at the drain end|under the frame|beside the ladder|behind the cover|on the bench|in the soft jaws|over the tray|by the "
    "window|against the datum face|below the footplate|inside the casing|along the keyway|across the joint|near the lamp|"
    "above the pit|on two trestles|in the rack|at the far bore|beneath the lid|through the hand hole"
).split("|")
TAILS = (
    "until it rings true|before the light goes|and note the reading|while a helper watches the gap|so that the mark stays in "
    "sight|with the paint line upward|as far as the shoulder|without rocking it|in three even passes|and feel for a burr|"
    "by hand only|and put it back in its tray|then wait for it to settle|keeping the faces square|and count the turns|"
    "with clean rag under it|and leave the tag on|one flat at a time|and listen for a scrape|holding the end float outward"
).split("|")
SYLLABLES = "ba ce di fo gu ha ke li mo nu pa re si to vu wa ze bri cla dro fle gri sta tre plo".split()


class Words:
    """`rng` for numbers, `sentence()` and `name()` for words; the same seed gives the same book."""

    def __init__(self, seed: int):
        self.rng = random.Random(seed)
        self._said: set[str] = set()

    def sentence(self) -> str:
        """One instruction of 11 to 18 words that this book does not hold yet."""
        pick = self.rng.choice
        while True:
            said = (
                f"{pick(VERBS)} the {pick(ADJECTIVES)} {self.name()} {pick(PARTS)} {pick(PLACES)}, "
                f"clear of the {pick(ADJECTIVES)} {pick(PARTS)}, {pick(TAILS)}."
            )
            if said not in self._said:
                self._said.add(said)
                return said

    def state(self) -> str:
        """What a check expects to see, of 8 to 10 words, not said before either."""
        pick = self.rng.choice
        while True:
            said = f"The {pick(ADJECTIVES)} {pick(PARTS)} stands clear of the {pick(ADJECTIVES)} {self.name()} {pick(PARTS)}."
            if said not in self._said:
                self._said.add(said)
                return said

    def name(self) -> str:
        """A word of the trade most often, one of the 15,000 that only this shop uses the rest of the time."""
        if self.rng.random() < 0.8:
            return self.rng.choice(PARTS)
        return "".join(self.rng.choices(SYLLABLES, k=3))
