"""Holds SAN written by Sealed Move against python-chess.

Standard input: one game a line, moves parted by spaces, each as UCI and SAN joined by a colon.
"""

import sys

import chess

count = 0
for number, line in enumerate(sys.stdin, 1):
    board = chess.Board()
    for pair in line.split():
        uci, san = pair.split(":")
        move = chess.Move.from_uci(uci)
        assert move in board.legal_moves, (number, board.fen(), uci)
        expected = board.san(move)
        assert san == expected, (number, board.fen(), uci, san, expected)
        assert board.parse_san(san) == move, (number, board.fen(), san)
        board.push(move)
        count += 1
print(count)
