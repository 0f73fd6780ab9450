"""Mates by brute force on python-chess: everything is tried that could matter.

What the tests hold the prover's answers to; it shares no idea with the prover but the rules. Nothing is
judged: a move is left out only where the rules rule it out (the last move has to give check), and what
was found out about a position is remembered.
"""

from collections.abc import Iterator

import chess

# What is known, by position: a number of moves that mates, and one that does not. Cleared when large.
_mates: dict[object, int] = {}
_holds: dict[object, int] = {}
_MOST_KNOWN = 1_000_000
# The reply that last held against so many moves, tried first the next time.
_held: dict[int, chess.Move] = {}


def mates(board: chess.Board, moves: int) -> bool:
    """Whether the side to move mates within `moves`, whatever is answered."""
    if moves <= 0:
        return False
    key = board._transposition_key()
    if _mates.get(key, moves + 1) <= moves:
        return True
    if _holds.get(key, 0) >= moves:
        return False
    if len(_mates) + len(_holds) > _MOST_KNOWN:
        _mates.clear()
        _holds.clear()
    forced = 1 if any(mates_at_once(board)) else 0
    if not forced and moves > 1:
        for move in board.generate_legal_moves():
            board.push(move)
            lost = is_lost(board, moves - 1)
            board.pop()
            if lost:
                forced = moves
                break
    if forced:
        _mates[key] = min(forced, _mates.get(key, forced))
    else:
        _holds[key] = moves
    return forced > 0


def is_lost(board: chess.Board, moves: int) -> bool:
    """Whether the side to move is mated, or will be within `moves` more moves of the other side."""
    if moves <= 0:
        return board.is_checkmate()
    first = _held.get(moves)
    if first is not None and board.is_legal(first):
        if not _loses(board, first, moves):
            return False
    any_reply = False
    for reply in board.generate_legal_moves():
        any_reply = True
        if reply != first and not _loses(board, reply, moves):
            _held[moves] = reply
            return False
    return any_reply or board.is_check()


def _loses(board: chess.Board, reply: chess.Move, moves: int) -> bool:
    board.push(reply)
    mated = mates(board, moves)
    board.pop()
    return mated


def mates_at_once(board: chess.Board) -> Iterator[chess.Move]:
    """Every move that mates on the spot."""
    for move in _may_check(board):
        board.push(move)
        mate = board.is_check() and not any(board.generate_legal_moves())
        board.pop()
        if mate:
            yield move


def _may_check(board: chess.Board) -> Iterator[chess.Move]:
    """Every legal move that gives check, and some that do not."""
    us, king = board.turn, board.king(not board.turn)
    own, occupied = board.occupied_co[us], board.occupied
    straight = board.queens | board.rooks
    # Where a piece of each kind would strike the king.
    lines = (
        chess.BB_RANK_ATTACKS[king][chess.BB_RANK_MASKS[king] & occupied]
        | chess.BB_FILE_ATTACKS[king][chess.BB_FILE_MASKS[king] & occupied]
    )
    diagonals = chess.BB_DIAG_ATTACKS[king][chess.BB_DIAG_MASKS[king] & occupied]
    # Pieces that leave a line to the king open behind them.
    opening = 0
    for men, reach in (
        (straight, chess.BB_RANK_ATTACKS[king][0] | chess.BB_FILE_ATTACKS[king][0]),
        (board.queens | board.bishops, chess.BB_DIAG_ATTACKS[king][0]),
    ):
        for man in chess.scan_forward(men & own & reach):
            between = chess.between(man, king) & occupied
            if between and not between & (between - 1):
                opening |= between & own
    # Promotions and castling are few; whether they check is seen when they are played.
    last = chess.BB_RANK_8 if us else chess.BB_RANK_1
    any_square = opening | board.kings if board.clean_castling_rights() else opening
    pawns = chess.BB_PAWN_ATTACKS[not us][king] | last
    if board.ep_square is not None:
        pawns |= chess.BB_SQUARES[board.ep_square]
    yield from board.generate_legal_moves(own & any_square)
    for men, squares in (
        (board.queens, lines | diagonals),
        (board.rooks, lines),
        (board.bishops, diagonals),
        (board.knights, chess.BB_KNIGHT_ATTACKS[king]),
        (board.pawns, pawns),
    ):
        men &= own & ~any_square
        if men and squares & ~own:
            yield from board.generate_legal_moves(men, squares & ~own)


def keys(board: chess.Board, moves: int) -> list[str]:
    """Every first move in UCI that mates within `moves`, in alphabetical order."""
    found = []
    for move in list(board.legal_moves):
        board.push(move)
        if is_lost(board, moves - 1):
            found.append(move.uci())
        board.pop()
    return sorted(found)
