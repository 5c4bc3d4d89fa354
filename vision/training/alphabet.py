"""The classes the line network tells apart, in the order of its outputs."""

BLANK = 0
PROPERTY_ARROW = "\u2191"
CHARACTERS = (
    " ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789.,&/-():'+*#"
    + PROPERTY_ARROW
)
TRACES = len(CHARACTERS) + 1  # something stands there and cannot be told
LOST = len(CHARACTERS) + 2  # nothing is left where the pitch says that a letter stood
CLASSES = len(CHARACTERS) + 3

_index = {character: i + 1 for i, character in enumerate(CHARACTERS)}


def encode(text):
    """The class of each character; KeyError for one that the network does not know."""
    return [_index[character] for character in text]


def decode(classes):
    """Text of classes: traces as U+FFFD, lost as an underscore, which no mark holds here."""
    shown = {TRACES: "\ufffd", LOST: "_"}
    return "".join(shown.get(c) or CHARACTERS[c - 1] for c in classes if c != BLANK)
