"""Holds what is said of wrong moves where a win or a draw is asked to the board.

Standard input: one object a line: `fen`, `task` (`+` or `=`), `move` in UCI, `line` (the answer in SAN) and
`why` (the sentence; may be empty). What a position is worth is search's opinion and stands in no sentence;
what is said of pieces, squares, checks and mates has to be so.

Writes one JSON object: how often each of the `shapes` of sentence was given, and how many sentences made
false on purpose were `refused`.
"""

import collections
import json
import re
import sys
from collections.abc import Callable

import chess

import claims
import sentences
import spoil
from claims import Case, Untrue, must
from force import mates
from material import best_after_any_move, balance

MAN, SIDE, SQUARE, NUMBER = (
    sentences.MAN,
    sentences.SIDE,
    sentences.SQUARE,
    sentences.NUMBER,
)
_SOME = r"(?:a|the|two|three|four) (?:pawn|knight|bishop|rook|queen)s?"
MEN = rf"({_SOME}(?:(?:, | and ){_SOME})*)"


class Line(Case):
    """A wrong move with the line shown against it."""

    def __init__(self, told: dict):
        super().__init__(told["fen"], 2, told["move"], [])
        self.draws = told["task"] == "="
        self.boards, self.moves = [self.after], []
        for san in told["line"]:
            board = self.boards[-1]
            move = board.parse_san(san)
            must(board.san(move) == san, f"{san} is spelled {board.san(move)}")
            self.moves.append(move)
            self.boards.append(self._played(board, move))
        self.defence = self.moves[0] if self.moves else None
        self.beyond = self.boards[1] if self.moves else self.after
        self.end = self.boards[-1]

    def taken(self, place: int) -> str | None:
        """What the move at a place of the line takes."""
        board, move = self.boards[place], self.moves[place]
        return _victim(board, move)


def _victim(board: chess.Board, move: chess.Move) -> str | None:
    if board.is_en_passant(move):
        return "pawn"
    kind = board.piece_type_at(move.to_square)
    return chess.piece_name(kind) if kind and not board.is_castling(move) else None


def stalemate(line: Line, side: str) -> None:
    must(line.after.is_stalemate(), "stalemate")
    must(side == claims.colour_name(line.defender), "whose")


def cannot_mate(line: Line) -> None:
    must(line.after.has_insufficient_material(line.solver), "too little to mate with")


def mates_at_once(line: Line, side: str) -> None:
    must(line.beyond.is_checkmate(), "mate")
    must(side == claims.colour_name(line.defender), "who mates")


def mates_in(line: Line, side: str, moves: str) -> None:
    must(side == claims.colour_name(line.defender), "who mates")
    moves = sentences.number(moves)
    must(moves > 1, "more than one move")
    if moves <= line.reach():
        must(mates(line.after, moves), "it is mate in so many")
    must(not mates(line.after, min(moves - 1, line.reach())), "and no sooner")


def is_stalemated(line: Line, side: str) -> None:
    must(line.end.is_stalemate(), "stalemate at the end")
    must(side == claims.colour_name(line.end.turn), "whose")


def left_cannot_mate(line: Line, side: str) -> None:
    must(side == claims.colour_name(line.solver), "whose")
    must(line.end.has_insufficient_material(line.solver), "too little to mate with at the end")


def for_ever(line: Line, side: str) -> None:
    must(side == claims.colour_name(line.defender), "who checks")
    must(all(board.is_check() for board in line.boards[1::2]), "every move of the defender checks")
    same = [b for b in line.boards[:-1] if b.board_fen() == line.end.board_fen() and b.turn == line.end.turn]
    must(same, "a position comes again")


def costs(line: Line, side: str, lost: str, won: str | None = None) -> None:
    must(side == claims.colour_name(line.solver), "whom it costs")
    gone, gained = collections.Counter(), collections.Counter()
    if first := _victim(line.before, line.move):
        gained[first] += 1
    for place in range(len(line.moves)):
        if taken := line.taken(place):
            (gained if place % 2 else gone)[taken] += 1
    must(_named(lost) == gone - gained, f"lost {dict(gone - gained)}")
    must(_named(won or "") == gained - gone, f"won {dict(gained - gone)}")
    must(balance(line.end, line.solver) < balance(line.before, line.solver), "it costs something")


def _named(text: str) -> collections.Counter:
    counts = {"a": 1, "the": 1, "two": 2, "three": 3, "four": 4}
    men = collections.Counter()
    for count, man in re.findall(r"(a|the|two|three|four) (pawn|knight|bishop|rook|queen)s?", text):
        must((count == "the") <= (man == "queen"), "the queen alone is the queen")
        men[man] += counts[count]
    return men


def taken_and_costs(line: Line, by: str, side: str, lost: str, won: str | None = None) -> None:
    _takes_mover(line, by)
    costs(line, side, lost, won)


def _takes_mover(line: Line, by: str) -> None:
    must(line.defence.to_square == line.move.to_square, "it takes what moved")
    must(line.man(line.after, line.defence.from_square, line.defender) == by, "what takes")
    must(line.taken(0), "it takes")


def even(line: Line) -> None:
    must(balance(line.end, line.solver) == balance(line.before, line.solver), "nothing is won")
    must(line.taken(0), "there is an exchange")


def taken_and_even(line: Line, by: str) -> None:
    _takes_mover(line, by)
    even(line)


def behind(line: Line, side: str) -> None:
    must(side == claims.colour_name(line.solver), "who is behind")
    must(balance(line.end, line.solver) < 0, "behind")


def level(line: Line) -> None:
    must(balance(line.end, line.solver) == 0, "level")


def taken_and_behind(line: Line, by: str, side: str) -> None:
    _takes_mover(line, by)
    behind(line, side)


def _falls(line: Line, man: str, square: str) -> None:
    must(len(line.moves) == 3, "shown to where it falls")
    must(line.taken(2) == man, "what falls")
    must(line.moves[2].to_square == chess.parse_square(square), "where it falls")
    must(line.end.piece_at(line.moves[2].to_square).color == line.defender, "who takes it")


def check_and_falls(line: Line, man: str, square: str) -> None:
    must(line.beyond.is_check(), "check")
    _falls(line, man, square)


def then_falls(line: Line, man: str, square: str) -> None:
    must(not line.beyond.is_check(), "no check")
    _falls(line, man, square)


def attacks_at_once(line: Line, named: str) -> None:
    attacked = line.beyond.attacks(line.defence.to_square)
    men = re.findall(rf"the {MAN} on {SQUARE}", named)
    must(len(men) >= 2, "two at least")
    for man, square in men:
        square = chess.parse_square(square)
        must(square in attacked, "attacked")
        must(line.man(line.beyond, square, line.solver) == man, "which piece")


def promotes(line: Line, man: str) -> None:
    must(len(line.moves) % 2 == 1, "the defender moves last")
    must(line.moves[-1].promotion, "a pawn promotes")
    must(chess.piece_name(line.moves[-1].promotion) == man, "to what")


def steps_out(line: Line, man: str) -> None:
    defence = line.defence
    must(line.man(line.after, defence.from_square, line.defender) == man, "which piece")
    attackers = line.after.attackers(line.solver, defence.from_square)
    must(line.move.to_square in attackers, "the piece that moved attacked it")
    must(not line.beyond.attackers(line.solver, defence.to_square), "nothing attacks it now")


def takes_and_steps_out(line: Line, man: str) -> None:
    must(line.taken(0) == "pawn", "it takes a pawn")
    steps_out(line, man)


def pawn_with_check(line: Line, by: str) -> None:
    must(line.man(line.after, line.defence.from_square, line.defender) == by, "what takes")
    must(line.taken(0) == "pawn", "it takes a pawn")
    must(line.beyond.is_check(), "check")


def no_check_left(line: Line, side: str) -> None:
    must(side == claims.colour_name(line.solver), "whose checks")
    must(line.after.is_check(), "there was a check")
    must(not any(line.beyond.gives_check(move) for move in line.beyond.legal_moves), "and there is none now")


def face_to_face(line: Line, side: str) -> None:
    must(side == claims.colour_name(line.beyond.turn) == claims.colour_name(line.solver), "who gives way")
    must(line.beyond.occupied == line.beyond.kings | line.beyond.pawns, "kings and pawns alone")
    kings = [line.beyond.king(colour) for colour in chess.COLORS]
    files, ranks = ({function(king) for king in kings} for function in (chess.square_file, chess.square_rank))
    must(len(files) == 1 or len(ranks) == 1, "the kings stand on one file or rank")
    must(chess.square_distance(*kings) == 2, "one square apart")


_COSTS = rf"that costs {SIDE} {MEN}(?: for {MEN})?"
_EVEN = "the exchange is even, so nothing is won"
_BEHIND = f"{SIDE} is still behind after that"
_IT = f"the {MAN} takes it, and "

SHAPES: list[tuple[str, Callable]] = [
    (rf"it is stalemate, for {SIDE} is not in check and has no move", stalemate),
    ("what you have left cannot mate", cannot_mate),
    (rf"that is mate, and it is {SIDE} who gives it", mates_at_once),
    (rf"{SIDE} mates in {NUMBER}", mates_in),
    (rf"{SIDE} is stalemated", is_stalemated),
    (rf"what {SIDE} has left cannot mate", left_cannot_mate),
    (rf"{SIDE} gives check for ever", for_ever),
    (_COSTS, costs),
    (_IT + _COSTS, taken_and_costs),
    (_EVEN, even),
    (_IT + _EVEN, taken_and_even),
    (_BEHIND, behind),
    ("the material is level after that", level),
    (_IT + _BEHIND, taken_and_behind),
    (rf"it comes with check, and then the {MAN} on {SQUARE} falls", check_and_falls),
    (rf"then the {MAN} on {SQUARE} falls", then_falls),
    (r"it attacks (.+) at once", attacks_at_once),
    (rf"the pawn gets through and becomes a {MAN}", promotes),
    (rf"the {MAN} steps out of the attack", steps_out),
    (rf"the {MAN} takes a pawn and steps out of the attack", takes_and_steps_out),
    (rf"the {MAN} takes a pawn with check", pawn_with_check),
    (rf"after that {SIDE} has no check left", no_check_left),
    (rf"the kings face each other, and it is {SIDE} who has to give way", face_to_face),
]


def verify(told: dict) -> str:
    """Holds one sentence to the board; what it is called."""
    line, why = Line(told), told["why"]
    if not why:
        return "nothing"
    for shape, claim in SHAPES:
        if found := re.fullmatch(shape, why):
            claim(line, *(group for group in found.groups()))
            return claim.__name__
    said = sentences.clauses(why)
    must(len(said) == 1 and said[0]["kind"] == "takes", "a capture and nothing else")
    return capture(line, said[0])


def capture(line: Line, said: dict) -> str:
    """A capture told in the words of mate problems."""
    must(line.defence and line.taken(0), "it takes")
    on = line.defence.to_square
    if line.after.is_en_passant(line.defence):
        on = chess.square(chess.square_file(on), chess.square_rank(line.defence.from_square))
    reason = {
        "kind": "takes",
        "by": line.man(line.after, line.defence.from_square, line.defender),
        "what": line.taken(0),
        "on": chess.square_name(on),
        "the_mover": on == line.move.to_square,
    }
    for name in ("by", "what", "on", "the_mover"):
        must(said.get(name, reason[name]) == reason[name], f"{name} is {reason[name]}")
    must(not (said.get("not_queen") and reason["what"] == "queen"), "a queen is called one")
    retaking = [m for m in line.beyond.legal_moves if m.to_square == line.defence.to_square]
    back = said.get("back")
    if "unguarded" in said:
        must(said["unguarded"] == reason["on"], "which square nothing guards")
        must(reason["by"] == "king", "the king takes")
    if back or "unguarded" in said:
        must(not retaking, "nothing takes back")
    if back == "pinned":
        claims._taking_back(line, reason | {"back": "pinned", "pinned": said["pinned"]})
    if back == "guarded":
        claims._taking_back(line, reason | {"back": "guarded"})
    if said.get("for_nothing"):
        regained = best_after_any_move(line.beyond.copy(stack=False))
        must(balance(line.before, line.solver) - regained >= 8, f"lost for nothing ({regained})")
        return "capture for nothing"
    return "capture"


def refuse(told: dict) -> int:
    """Insists that the sentence with any word of it changed is refused; how many were."""
    refused = 0
    for false in spoil.sentences(told):
        # A mate too long to look for may be any longer.
        if found := re.fullmatch(rf"{SIDE} mates in {NUMBER}", false["why"]):
            if sentences.number(found.group(2)) > Line(told).reach() + 1:
                continue
        try:
            verify(false)
        except (Untrue, sentences.NotUnderstood):
            refused += 1
        else:
            raise Untrue(f"made false, and not noticed: {false['why']}")
    return refused


if __name__ == "__main__":
    shapes, refused, untrue = collections.Counter(), 0, []
    for text in sys.stdin:
        told = json.loads(text)
        try:
            shapes[verify(told)] += 1
            refused += refuse(told)
        except (Untrue, sentences.NotUnderstood) as fault:
            untrue.append(f"{told}: not so: {fault}")
    if untrue:
        sys.exit(f"{len(untrue)} not true:\n" + "\n".join(untrue))
    print(json.dumps({"shapes": shapes, "refused": refused}))
