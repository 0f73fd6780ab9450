"""What must be so on the board for a reason to be true, kind by kind, on python-chess.

The solver moves first and has `left` moves to mate in; the wrong move is the first of them. Nothing is
taken over from the program but the reason it gives, by name, with the squares and pieces it names.
"""

import functools

import chess

from force import is_lost, mates, mates_at_once

# How long mates are looked for by brute force, by the number of pieces and pawns on the board.
_FEW, _DEEP, _SHALLOW = 9, 3, 2


class Untrue(Exception):
    """A reason that the board does not bear out."""


def must(holds: object, what: str) -> None:
    """Insists on one thing."""
    if not holds:
        raise Untrue(what)


class Case:
    """A wrong move with its refutation, played out."""

    def __init__(self, fen: str, left: int, move: str, line: list[str]):
        self.before = chess.Board(fen)
        self.left = left
        self.move = chess.Move.from_uci(move)
        must(self.before.is_legal(self.move), "the move is legal")
        self.after = self._played(self.before, self.move)
        self.defence = chess.Move.from_uci(line[0]) if line else None
        self.beyond = self.after
        if self.defence:
            must(self.after.is_legal(self.defence), "the defence is legal")
            self.beyond = self._played(self.after, self.defence)
        self.solver, self.defender = self.before.turn, not self.before.turn

    @staticmethod
    def _played(board: chess.Board, move: chess.Move) -> chess.Board:
        next_board = board.copy(stack=False)
        next_board.push(move)
        return next_board

    @functools.cached_property
    def passed(self) -> chess.Board | None:
        """The position after the wrong move if the defender could pass."""
        return None if self.after.is_check() else self._played(self.after, chess.Move.null())

    @functools.cached_property
    def threats(self) -> list[chess.Move]:
        """The mates in one that the wrong move threatens."""
        return list(mates_at_once(self.passed)) if self.passed else []

    def reach(self) -> int:
        """The longest mate that brute force can look for here."""
        return _DEEP if chess.popcount(self.before.occupied) <= _FEW else _SHALLOW

    def man(self, board: chess.Board, square: int, colour: bool) -> str | None:
        """The piece of a colour on a square, by name."""
        piece = board.piece_at(square)
        return chess.piece_name(piece.piece_type) if piece and piece.color == colour else None

    def guards(self, board: chess.Board, square: int) -> chess.SquareSet:
        """The solver's pieces that keep the other king from a square, seen through that king."""
        without = board.copy(stack=False)
        without.remove_piece_at(without.king(self.defender))
        return without.attackers(self.solver, square)


def colour_name(colour: bool) -> str:
    """As the sentences call it."""
    return chess.COLOR_NAMES[colour].capitalize()


def holds(case: Case) -> bool:
    """Whether the refutation holds: no mate in the moves left. Longer than brute force reaches, that
    there is no shorter one."""
    if case.defence is None:
        return case.after.is_stalemate()
    return not mates(case.beyond, min(case.left - 1, case.reach()))


def stalemate(case: Case, _reason: dict) -> None:
    must(case.after.is_stalemate(), "it is stalemate")


def slower(case: Case, reason: dict) -> None:
    moves = reason["moves"]
    must(moves > case.left, "it takes longer than asked")
    if moves - 1 <= case.reach():
        must(is_lost(case.after, moves - 1), "it mates in the length said")
    must(not is_lost(case.after, min(moves - 2, case.reach())), "it mates no sooner")


def mates_first(case: Case, _reason: dict) -> None:
    must(case.defence and case.beyond.is_checkmate(), "the defence is mate")


def takes(case: Case, reason: dict) -> None:
    defence, solver = case.defence, case.solver
    must(case.after.is_capture(defence), "the defence takes")
    on = chess.parse_square(reason["on"])
    if case.after.is_en_passant(defence):
        where = chess.square(chess.square_file(defence.to_square), chess.square_rank(defence.from_square))
    else:
        where = defence.to_square
    must(on == where, "where it takes")
    must(case.man(case.after, defence.from_square, case.defender) == reason["by"], "what takes")
    must(case.man(case.after, on, solver) == reason["what"], "what is taken")
    must(reason["the_mover"] == (on == case.move.to_square), "whether it had just moved")
    _taking_back(case, reason)


def _taking_back(case: Case, reason: dict) -> None:
    beyond, to, back = case.beyond, case.defence.to_square, reason["back"]
    retaking = [m for m in beyond.legal_moves if m.to_square == to]
    would = beyond.attackers(case.solver, to)
    must((back == "possible") == bool(retaking), f"whether it can be taken back ({back})")
    for move in retaking:
        left = case.left - 1
        if left and left - 1 <= case.reach():
            must(not is_lost(case._played(beyond, move), left - 1), "taking back is no mate in time")
    if back == "nothing":
        must(not would, "nothing of the solver's strikes there")
    elif back == "in-check":
        must(beyond.is_check(), "the solver is in check")
    elif back == "guarded":
        must(beyond.king(case.solver) in would, "the king would take back")
        must(beyond.attackers(case.defender, to), "the square is guarded")
    elif back == "pinned":
        name, square = reason["pinned"]
        square = chess.parse_square(square)
        must(case.man(beyond, square, case.solver) == name, "which piece is pinned")
        must(square in would, "it would take back")
        must(not beyond.is_check(), "the solver is not in check")
        must(_exposes(case, square), "without it the king would be in check")


def _exposes(case: Case, square: int) -> chess.SquareSet:
    """What strikes the solver's king once the piece on the square is taken off, and did not before."""
    king = case.beyond.king(case.solver)
    without = case.beyond.copy(stack=False)
    without.remove_piece_at(square)
    return without.attackers(case.defender, king) - case.beyond.attackers(case.defender, king)


def flight(case: Case, reason: dict) -> None:
    to = chess.parse_square(reason["to"])
    must(case.defence.to_square == to, "where the king goes")
    must(case.man(case.after, case.defence.from_square, case.defender) == "king", "the king goes")
    must(not case.after.is_capture(case.defence), "it takes nothing")
    must(not case.after.is_castling(case.defence), "it does not castle")
    must(not case.guards(case.beyond, to), "nothing guards the square")
    lost = reason["lost"]
    if lost is None:
        return
    must(case.before.piece_at(to) is None, "the square was empty before")
    if lost[0] == "moved":
        guard = case.move.from_square
        must(guard in case.guards(case.before, to), "it guarded the square")
        must(case.man(case.before, guard, case.solver) == lost[1], "which piece guarded")
        return
    guard = chess.parse_square(lost[2])
    must(case.man(case.before, guard, case.solver) == lost[1], "which piece guarded")
    must(case.man(case.after, guard, case.solver) == lost[1], "it still stands there")
    must(guard in case.guards(case.before, to), "it guarded the square")
    must(guard not in case.guards(case.after, to), "it guards it no more")
    # With the piece that moved taken off, the guard sees the square again.
    cleared = case.after.copy(stack=False)
    cleared.remove_piece_at(case.move.to_square)
    must(guard in case.guards(cleared, to), "the move shuts it out")


def castles(case: Case, _reason: dict) -> None:
    must(case.after.is_castling(case.defence), "it castles")
    must(_threatened(case) is not False, "there is an attack to get out of")


def check(case: Case, _reason: dict) -> None:
    must(case.beyond.is_check() and not case.beyond.is_checkmate(), "it gives check")


def interposes(case: Case, reason: dict) -> None:
    on = chess.parse_square(reason["on"])
    checkers = list(case.after.checkers())
    must(len(checkers) == 1, "one piece checks")
    must(on in chess.SquareSet.between(checkers[0], case.after.king(case.defender)), "between them")
    must(case.defence.to_square == on, "where it goes")
    must(case.man(case.after, case.defence.from_square, case.defender) == reason["by"], "what goes")
    must(not case.after.is_capture(case.defence), "it takes nothing")
    taking = [m for m in case.beyond.legal_moves if m.to_square == on]
    must(bool(taking) == reason["takeable"], "whether it can be taken")
    for move in taking:
        must(case.left < 2 or not case._played(case.beyond, move).is_checkmate(), "no mate")


def _threatened(case: Case) -> bool | None:
    """Whether mate in time is threatened; none where brute force does not reach."""
    if case.passed is None:
        return False
    moves = case.left - 1
    if moves <= case.reach():
        return mates(case.passed, moves)
    return mates(case.passed, case.reach()) or None


def no_threat(case: Case, _reason: dict) -> None:
    must(case.passed is not None, "the defender could pass")
    must(not _threatened(case), "no mate in time is threatened")


def guards(case: Case, reason: dict) -> None:
    square, guard = chess.parse_square(reason["square"]), case.defence.to_square
    must(case.threats, "a mate was threatened")
    must(all(m.to_square == square for m in case.threats), "every mate was threatened there")
    must(case.man(case.beyond, guard, case.defender) == reason["by"], "what guards")
    must(square in case.beyond.attacks(guard), "it guards the square")
    before = case.defence.from_square
    if square in case.after.attacks(before):
        must(case.after.pin(case.defender, before) != chess.BB_ALL, "it did not guard it already")
    for threat in case.threats:
        must(case.beyond.is_legal(threat), "the threat can be carried out")
        carried = case._played(case.beyond, threat)
        must(carried.is_legal(chess.Move(guard, square)) or _promotes(carried, guard, square), "takes")


def _promotes(board: chess.Board, source: int, target: int) -> bool:
    return board.is_legal(chess.Move(source, target, chess.QUEEN))


def luft(case: Case, reason: dict) -> None:
    square = chess.parse_square(reason["square"])
    must(case.threats, "a mate was threatened")
    must(reason["vacated"] == (case.defence.from_square == square), "whether it was emptied")
    if reason["vacated"]:
        must(case.beyond.piece_at(square) is None, "the square is empty")
    for threat in case.threats:
        # As the threat stood, the king could not go there; now it can.
        mated = case._played(case.passed, threat)
        must(not mated.is_legal(chess.Move(mated.king(case.defender), square)), "it had no luft")
        must(case.beyond.is_legal(threat), "the threat can be carried out")
        carried = case._played(case.beyond, threat)
        must(carried.is_legal(chess.Move(carried.king(case.defender), square)), "the king may go")


def shuts(case: Case, reason: dict) -> None:
    on = chess.parse_square(reason["on"])
    must(case.threats, "a mate was threatened")
    must(case.man(case.beyond, on, case.defender) == reason["by"], "what stands there")
    must(case.after.piece_at(on) != case.beyond.piece_at(on), "it came with the defence")
    for threat in case.threats:
        carried = case.beyond.is_legal(threat) and case._played(case.beyond, threat).is_check()
        must(not carried, "the threat is shut out")
        # With the piece taken off again, the threat goes through.
        opened = case.beyond.copy(stack=False)
        opened.remove_piece_at(on)
        must(opened.is_legal(threat), "the line is shut by it")
        must(case._played(opened, threat).is_check(), "the line is shut by it")


def pins(case: Case, reason: dict) -> None:
    on = chess.parse_square(reason["on"])
    must(case.man(case.beyond, on, case.solver) == reason["what"], "what is pinned")
    must(not case.beyond.is_check(), "the solver is not in check")
    must(case.defence.to_square in _exposes(case, on), "the piece that moved pins it")
    must(case.threats, "a mate was threatened")
    for threat in case.threats:
        must(threat.from_square == on, "the pinned piece threatened")
        must(not case.beyond.is_legal(threat), "it may not move so any more")


def meets_threat(case: Case, _reason: dict) -> None:
    must(_threatened(case) is not False, "a mate was threatened")
    must(holds(case), "there is no other mate")


def no_check(case: Case, _reason: dict) -> None:
    must(case.left == 1, "the last move had to be mate")
    must(not case.after.is_check(), "it gives no check")


def back_rank(case: Case, reason: dict) -> None:
    beyond, king = case.beyond, case.beyond.king(case.defender)
    home = 0 if case.defender else 7
    must(chess.square_rank(king) == home, "the king stands on its first rank")
    rank = chess.SquareSet(chess.BB_RANKS[home])
    strikes = [
        m
        for m in beyond.legal_moves
        if m.to_square in rank
        and beyond.piece_type_at(m.from_square) in (chess.ROOK, chess.QUEEN)
        and beyond.gives_check(m)
    ]
    for strike in strikes:
        must(not case._played(beyond, strike).is_checkmate(), "no check on the rank is mate")
    heavy = beyond.pieces(chess.ROOK, case.defender) | beyond.pieces(chess.QUEEN, case.defender)
    must(heavy & rank, "a heavy piece defends the rank")
    if not reason["again"]:
        must(strikes, "there is a check on the rank to stand up to")
        return
    # The piece that moved struck at the defence, and is gone.
    must(case.defence.to_square == case.move.to_square, "the piece that moved is taken")
    was = case.after.pieces(chess.ROOK, case.defender) | case.after.pieces(chess.QUEEN, case.defender)
    struck = case.after.attacks(case.move.to_square) & was & rank
    must(struck or case.after.is_check(), "it had attacked the defence")


# How a kind of reason is made sure of.
KINDS = {
    "stalemate": stalemate,
    "slower": slower,
    "mates-first": mates_first,
    "takes": takes,
    "flight": flight,
    "castles": castles,
    "check": check,
    "interposes": interposes,
    "no-threat": no_threat,
    "guards": guards,
    "luft": luft,
    "shuts": shuts,
    "pins": pins,
    "meets-threat": meets_threat,
    "no-check": no_check,
    "back-rank": back_rank,
}
