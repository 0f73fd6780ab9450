"""Whether a piece is lost for nothing: what the side to move can get back, counted in pawns."""

import chess

VALUES = {chess.PAWN: 1, chess.KNIGHT: 3, chess.BISHOP: 3, chess.ROOK: 5, chess.QUEEN: 9}
_MATED = 1_000
# How many half-moves of captures are followed.
_HORIZON = 8


def balance(board: chess.Board, side: bool) -> int:
    """The side's material less the other's, in pawns."""
    count = lambda colour: sum(
        worth * chess.popcount(board.pieces_mask(kind, colour)) for kind, worth in VALUES.items()
    )
    return count(side) - count(not side)


def best_after_any_move(board: chess.Board) -> int:
    """The most that the side to move can have, whatever it plays, once the captures are over."""
    best = -_MATED
    for move in list(board.legal_moves):
        board.push(move)
        best = max(best, -_settled(board, -_MATED, -best, _HORIZON))
        board.pop()
    return best


def _settled(board: chess.Board, low: int, high: int, horizon: int) -> int:
    checked = board.is_check()
    if board.is_checkmate():
        return -_MATED
    best = balance(board, board.turn)
    if horizon == 0:
        return best
    if checked:
        best, moves = -_MATED, list(board.legal_moves)
    else:
        if best >= high:
            return best
        moves = [
            *board.generate_legal_captures(),
            *(m for m in board.generate_legal_moves(board.pawns) if m.promotion and not board.is_capture(m)),
        ]
        moves.sort(key=lambda m: -VALUES.get(board.piece_type_at(m.to_square) or 0, 0))
    for move in moves:
        board.push(move)
        best = max(best, -_settled(board, -high, -max(low, best), horizon - 1))
        board.pop()
        if best >= high:
            break
    return best
