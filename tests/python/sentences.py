"""The sentences that say why a move is wrong, read back into what they claim.

Every shape that may be told stands here once; whatever else is told is not understood, and that is an
error. A clause becomes a dictionary with its `kind`, as the program names it, and what it names.
"""

import re

MAN = "(pawn|knight|bishop|rook|queen|king)"
SQUARE = "([a-h][1-8])"
SIDE = "(White|Black)"
WORDS = "no one two three four five six seven eight nine ten".split()
NUMBER = "(" + "|".join(WORDS) + r"|\d+)"


class NotUnderstood(Exception):
    """A sentence of a shape that is not known here."""


def number(word: str) -> int:
    """A number in words or digits."""
    return WORDS.index(word) if word in WORDS else int(word)


def _takes(by, taken, what, on, tail):
    claim = {"kind": "takes", "by": by, "the_mover": what is None, **tail}
    if what is not None:
        claim |= {"what": what, "on": on}
    elif taken == "the queen":
        claim["what"] = "queen"
    else:
        claim["not_queen"] = True
    return claim


_TAKES = rf"the {MAN} takes (the queen|it|the {MAN} on {SQUARE})"
_KING_OUT = rf"the king gets out to {SQUARE}"

# What a clause looks like, and what it claims.
_SHAPES = [
    (
        rf"it is stalemate, for {SIDE} is not in check and has no move",
        lambda side: {"kind": "stalemate", "defender": side},
    ),
    (
        rf"that is mate, and it is {SIDE} who gives it",
        lambda side: {"kind": "mates-first", "defender": side},
    ),
    (
        rf"{_TAKES}, for none of your pieces guards {SQUARE}",
        lambda *m: _takes(*m[:4], {"unguarded": m[4]}),
    ),
    (
        rf"{_TAKES} for nothing",
        lambda *m: _takes(*m, {"back": "nothing", "for_nothing": True}),
    ),
    (rf"{_TAKES}, and nothing takes back", lambda *m: _takes(*m, {"back": "nothing"})),
    (
        rf"{_TAKES}, and your {MAN} on {SQUARE} is pinned and may not take back",
        lambda *m: _takes(*m[:4], {"back": "pinned", "pinned": [m[4], m[5]]}),
    ),
    (
        rf"{_TAKES}, and your king may not take back on a guarded square",
        lambda *m: _takes(*m, {"back": "guarded"}),
    ),
    (
        rf"{_TAKES}, and taking back is not mate",
        lambda *m: _takes(*m, {"back": "possible", "left": (2, 2)}),
    ),
    (
        rf"{_TAKES}, and taking back does not mate in time",
        lambda *m: _takes(*m, {"back": "possible", "left": (3, 99)}),
    ),
    (_TAKES, lambda *m: _takes(*m, {"bare": True})),
    (
        rf"{_KING_OUT}, which none of your pieces guards",
        lambda to: {"kind": "flight", "to": to, "lost": None},
    ),
    (
        rf"{_KING_OUT}, which your {MAN} guarded until it moved",
        lambda to, man: {"kind": "flight", "to": to, "lost": ["moved", man]},
    ),
    (
        rf"{_KING_OUT}, for the move shuts out your {MAN} on {SQUARE} that guarded it",
        lambda to, man, at: {"kind": "flight", "to": to, "lost": ["blocked", man, at]},
    ),
    ("the king castles out of the attack", lambda: {"kind": "castles"}),
    (
        rf"it gives check, and {SIDE} has to see to that first",
        lambda side: {"kind": "check", "solver": side},
    ),
    ("it comes with check", lambda: {"kind": "check"}),
    (
        rf"the {MAN} steps between on {SQUARE}, and taking it is not mate",
        lambda by, on: {"kind": "interposes", "by": by, "on": on, "takeable": True},
    ),
    (
        rf"the {MAN} steps between on {SQUARE}",
        lambda by, on: {"kind": "interposes", "by": by, "on": on},
    ),
    (
        rf"it threatens no mate, so {SIDE} has time",
        lambda side: {"kind": "no-threat", "defender": side, "left": (2, 2)},
    ),
    (
        rf"it does not threaten mate in {NUMBER}, so {SIDE} has time",
        lambda n, side: {"kind": "no-threat", "defender": side, "left": (number(n) + 1,) * 2},
    ),
    (
        rf"the {MAN} now guards {SQUARE}, where the mate was threatened",
        lambda by, square: {"kind": "guards", "by": by, "square": square},
    ),
    (
        rf"it clears {SQUARE} for the king",
        lambda square: {"kind": "luft", "square": square, "vacated": True},
    ),
    (
        rf"the king will have {SQUARE} to go to when you carry out the threat",
        lambda square: {"kind": "luft", "square": square, "vacated": False},
    ),
    (
        rf"the {MAN} on {SQUARE} shuts the line of your threat",
        lambda by, on: {"kind": "shuts", "by": by, "on": on},
    ),
    (rf"it pins your {MAN} on {SQUARE}", lambda what, on: {"kind": "pins", "what": what, "on": on}),
    (
        "that meets the threat, and there is no other mate",
        lambda: {"kind": "meets-threat", "left": (2, 2)},
    ),
    (
        rf"that meets the threat, and there is no other mate in {NUMBER}",
        lambda n: {"kind": "meets-threat", "left": (number(n) + 1,) * 2},
    ),
    (
        rf"it gives no check, so {SIDE} is not mated",
        lambda side: {"kind": "no-check", "defender": side, "left": (1, 1)},
    ),
    ("the back rank is defended again", lambda: {"kind": "back-rank", "again": True}),
    ("the back rank stays defended", lambda: {"kind": "back-rank", "again": False}),
]
_COMPILED = [(re.compile(shape + "(?=, and |$)"), claim) for shape, claim in _SHAPES]

_SLOWER = re.compile(rf"(?:(.+); it mates in the end|it mates too), but only in {NUMBER}")


def clauses(text: str) -> list[dict]:
    """What the sentence claims, clause by clause; a mate that comes too late is claimed last."""
    late = _SLOWER.fullmatch(text)
    if late:
        point, moves = late.groups()
        return (clauses(point) if point else []) + [{"kind": "slower", "moves": number(moves)}]
    readings = list(_readings(text))
    if len(readings) != 1:
        raise NotUnderstood(f"{len(readings)} ways to read {text!r}")
    if len(readings[0]) > 2:
        raise NotUnderstood(f"more than two clauses: {text!r}")
    return readings[0]


def _readings(text: str):
    for shape, claim in _COMPILED:
        found = shape.match(text)
        if not found:
            continue
        rest = text[found.end() :]
        first = claim(*found.groups())
        if not rest:
            yield [first]
        elif rest.startswith(", and "):
            yield from ([first] + more for more in _readings(rest.removeprefix(", and ")))


_MOVE = r"\d+\.(?:\.\.)?\S+"
_LATE = re.compile(rf"({_MOVE}) mates, but not in {NUMBER}: it takes {NUMBER}\.(?: (.*))?")
_ABOUT = re.compile(rf"({_MOVE}) does not work: ([^:]+?)\.(?: For example ({_MOVE})\.)?")
_PLAIN = re.compile(rf"({_MOVE}) does not work\.(?: (.*))?")
_ANSWER = re.compile(rf"{SIDE} answers ({_MOVE})(?:: ([^:]+))?\.")


def message(text: str) -> dict:
    """The whole message about a wrong first move: the moves it writes, and what it says of them."""
    if found := _LATE.fullmatch(text):
        move, left, moves, rest = found.groups()
        return {"move": move, "left": number(left), "slower": number(moves)} | _answer(rest)
    if found := _PLAIN.fullmatch(text):
        move, rest = found.groups()
        return {"move": move} | _answer(rest)
    if found := _ABOUT.fullmatch(text):
        move, point, example = found.groups()
        return {"move": move, "point": point, "answer": example}
    raise NotUnderstood(repr(text))


def _answer(rest: str | None) -> dict:
    if not rest:
        return {}
    found = _ANSWER.fullmatch(rest)
    if not found:
        raise NotUnderstood(repr(rest))
    side, answer, point = found.groups()
    return {"defender": side, "answer": answer, "point": point}
