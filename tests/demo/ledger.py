"""Looking things up in book.json by the names that the scenario gives them."""


def procedure(book: dict, name: str) -> dict:
    return next(each for each in book["procedures"] if each["id"] == name)


def step_of(book: dict, name: str) -> dict:
    """`procedure#step`."""
    owner, _, step = name.partition("#")
    return next(each for each in procedure(book, owner)["steps"] if each["id"] == step)


def figures(book: dict, machine: str, label: str, carrier: str, role: str) -> dict[str, tuple[str, str]]:
    """variant of `carrier` -> (figure as written, its standing), of every spec that bears the scenario's label."""
    homes = [each for each in book["machines"] if each["id"] == machine]
    homes += [each for each in book["procedures"] if each["machine"] == machine]
    found = {}
    for home in homes:
        for spec in home.get("specs", home.get("figures", ())):
            for figure in spec["figures"] if label in spec["was"] else ():
                if figure["role"] == role and figure["as written"] != "none":
                    found[figure["for"][carrier]] = (figure["as written"], " ".join(figure["standing"]))
    return found
