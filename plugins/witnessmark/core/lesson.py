"""The manual of a rule that has no module of its own: what it is about, a right source and a wrong one."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Lesson:
    """`right` and `wrong` are alike but for the slip, so that the slip is seen."""

    says: str
    right: str
    wrong: str

    def text(self) -> str:
        """In the form of a rule's docstring."""
        return "\n".join([self.says, "", "right:", *_indented(self.right), "wrong:", *_indented(self.wrong)])


def _indented(text: str) -> list[str]:
    return [f"    {line}" for line in text.split("\n")]
