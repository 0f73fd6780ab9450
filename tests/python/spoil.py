"""Reasons made false on purpose, so that a checker that lets everything pass is found out."""

import copy
import re
from collections.abc import Iterator

_MEN = ["pawn", "knight", "bishop", "rook", "queen", "king"]
_SQUARE = re.compile(r"\b[a-h][1-8]\b")


def _other_square(square: str) -> str:
    return chr((ord(square[0]) - ord("a") + 3) % 8 + ord("a")) + square[1]


def _others(value) -> Iterator:
    """Values that a field might have instead."""
    match value:
        case bool():
            yield not value
        case int():
            yield value + 1
        case str() if _SQUARE.fullmatch(value):
            yield _other_square(value)
        case str() if value in _MEN:
            yield _MEN[(_MEN.index(value) + 1) % 6]
        case [str(), *_]:
            for place in range(len(value)):
                for other in _others(value[place]):
                    yield [*value[:place], other, *value[place + 1 :]]
        case "possible":
            yield "nothing"
        case "nothing" | "guarded" | "in-check" | "pinned":
            yield "possible"


def reasons(reason: dict) -> Iterator[dict]:
    """The reason with one thing in it wrong."""
    for name, value in reason.items():
        if name != "kind":
            for other in _others(value):
                yield {**reason, name: other}


def sentences(wrong: dict) -> Iterator[dict]:
    """The wrong move with one word of its sentence changed."""
    words = r"\b(?:[a-h][1-8]|pawn|knight|bishop|rook|White|Black|two|three|four|five)\b"
    swaps = {"White": "Black", "Black": "White", "two": "three", "three": "four"}
    swaps |= {"four": "five", "five": "six"}
    for found in re.finditer(words, wrong["why"]):
        word = found.group()
        other = swaps.get(word) or next(_others(word))
        changed = copy.copy(wrong)
        changed["why"] = wrong["why"][: found.start()] + other + wrong["why"][found.end() :]
        # A sentence that agrees with itself: only the board and the data can tell.
        if wrong.get("point") and wrong["why"].startswith(wrong["point"]):
            changed["point"] = changed["why"][: len(wrong["point"]) + len(other) - len(word)]
            if not wrong["point"][found.start() : found.end()]:
                changed["point"] = wrong["point"]
        changed.pop("message", None)
        yield changed
