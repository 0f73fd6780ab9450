"""Judges first moves of mate problems by brute force on python-chess, and holds refutations to it.

Standard input: one object a line: `fen`, `moves` (mate in this many), and `judged`, which gives for
every legal move in UCI either null (it is said to meet the task) or the refutation in UCI ("" when
the position after the move is stalemate).
"""

import json
import sys

import chess


def mates(board, moves):
    """Whether the side to move mates in at most so many moves."""
    for move in list(board.legal_moves):
        if moves == 1 and not board.gives_check(move):
            continue
        board.push(move)
        found = holds(board, moves - 1)
        board.pop()
        if found:
            return True
    return False


def holds(board, moves):
    """Whether the attack that just moved mates with so many moves more."""
    replies = list(board.legal_moves)
    if not replies:
        return board.is_check()
    if moves == 0:
        return False
    for reply in replies:
        board.push(reply)
        found = mates(board, moves)
        board.pop()
        if not found:
            return False
    return True


positions = moves = 0
for line in sys.stdin:
    problem = json.loads(line)
    board = chess.Board(problem["fen"])
    length, judged = problem["moves"], problem["judged"]
    assert {move.uci() for move in board.legal_moves} == set(judged), problem["fen"]
    for uci, refutation in judged.items():
        board.push_uci(uci)
        right = holds(board, length - 1)
        assert right == (refutation is None), (problem["fen"], uci, refutation)
        if refutation == "":
            assert board.is_stalemate(), (problem["fen"], uci)
        elif refutation:
            board.push_uci(refutation)
            assert length == 1 or not mates(board, length - 1), (problem["fen"], uci, refutation)
            board.pop()
        board.pop()
        moves += 1
    positions += 1
print(positions, moves)
