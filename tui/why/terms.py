"""Words of the trade that a why may say, in plain words, at the foot of the page that says them."""

from store.husbandry.why import ARITHMETIC, Source, Sure, Value

TERMS = {
    "Mcal": "Mcal: megacalories, in which the energy of feed is counted (NEL: net energy for milk)",
    "DM": "DM: dry matter, what is left of a feed once all water is out of it",
    "dry matter": "dry matter: what is left of a feed once all water is out of it",
    "MP": "MP: metabolizable protein, what of the protein reaches her blood",
    "NDF": "NDF: neutral detergent fibre, the tough part of forage that makes her chew",
    "full rate": "hours at full rate: an udder fills more slowly the fuller it is, so a long gap counts for less",
}
SURE_WORDS = {
    Sure.PRINTED: "read there",
    Sure.MEMORY: "as recalled, not looked up again",
    Sure.PRACTICE: "common practice",
    Sure.ASSUMED: "a cautious starting value of ours",
}


def source_words(source: Source) -> str:
    """Where it stands, and how sure that is."""
    return source.words if source.words == ARITHMETIC.words else f"{source.words} ({SURE_WORDS[source.sure]})"


def terms_of(value: Value) -> list[str]:
    """What is to be explained of a number, its inputs and its equation."""
    parts = (value, *value.inputs.values())
    words = " ".join([*(f"{each.name} {each.unit}" for each in parts), value.equation.reads if value.equation else ""])
    return [told for term, told in TERMS.items() if term in words.replace("/", " ").split() or f" {term}" in words]
