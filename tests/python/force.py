"""Mates by brute force on python-chess: everything is tried, nothing is remembered.

What the tests hold the prover's answers to; it shares no idea with the prover but the rules.
"""

import chess


def mates(board: chess.Board, moves: int) -> bool:
    """Whether the side to move mates within `moves`, whatever is answered."""
    for move in list(board.legal_moves):
        if moves == 1 and not board.gives_check(move):
            continue
        board.push(move)
        forced = is_lost(board, moves - 1)
        board.pop()
        if forced:
            return True
    return False


def is_lost(board: chess.Board, moves: int) -> bool:
    """Whether the side to move is mated, or will be within `moves` more moves of the other side."""
    replies = list(board.legal_moves)
    if not replies:
        return board.is_check()
    if moves == 0:
        return False
    for reply in replies:
        board.push(reply)
        mated = mates(board, moves)
        board.pop()
        if not mated:
            return False
    return True


def keys(board: chess.Board, moves: int) -> list[str]:
    """Every first move in UCI that mates within `moves`, in alphabetical order."""
    found = []
    for move in list(board.legal_moves):
        board.push(move)
        if is_lost(board, moves - 1):
            found.append(move.uci())
        board.pop()
    return sorted(found)
