"""Judges first moves of mate problems by brute force on python-chess, and holds refutations to it.

Standard input: one object a line: `fen`, `moves` (mate in this many), and `judged`, which gives for
every legal move in UCI either null (it is said to meet the task) or the refutation in UCI ("" when
the position after the move is stalemate).
"""

import json
import sys

import chess

from force import is_lost, mates

positions = moves = 0
for line in sys.stdin:
    problem = json.loads(line)
    board = chess.Board(problem["fen"])
    length, judged = problem["moves"], problem["judged"]
    assert {move.uci() for move in board.legal_moves} == set(judged), problem["fen"]
    for uci, refutation in judged.items():
        board.push_uci(uci)
        right = is_lost(board, length - 1)
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
