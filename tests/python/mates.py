"""Finds mates by trying everything, on python-chess alone.

Reads lines "FEN|most" and writes one JSON object a line: the shortest mate of the side to move within
`most` moves (null when there is none), and every first move that mates in that many.
"""

import json
import sys

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
    found = []
    for move in list(board.legal_moves):
        board.push(move)
        if is_lost(board, moves - 1):
            found.append(move.uci())
        board.pop()
    return sorted(found)


for line in sys.stdin:
    fen, most = line.strip().split("|")
    board = chess.Board(fen)
    answer = {"shortest": None, "keys": []}
    for moves in range(1, int(most) + 1):
        found = keys(board, moves)
        if found:
            answer = {"shortest": moves, "keys": found}
            break
    print(json.dumps(answer))
