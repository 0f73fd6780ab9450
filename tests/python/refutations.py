"""Judges first moves of mate problems by brute force on python-chess, and holds refutations to it.

Standard input: one object a line: `fen`, `moves` (mate in this many), and `judged`, which gives for
every legal move in UCI either null (it is said to meet the task) or the refutation in UCI ("" when
the position after the move is stalemate).
"""

import json
import multiprocessing
import sys

import chess

from force import is_lost, mates


def hold(line: str) -> int:
    """Looks at one position; how many moves were judged in it."""
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
            assert not mates(board, length - 1), (problem["fen"], uci, refutation)
            board.pop()
        board.pop()
    return len(judged)


if __name__ == "__main__":
    problems = sys.stdin.readlines()
    with multiprocessing.Pool(2) as pool:
        counts = pool.map(hold, problems, chunksize=1)
    print(len(counts), sum(counts))
