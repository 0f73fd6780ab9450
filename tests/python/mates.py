"""Finds mates by trying everything, on python-chess alone.

Reads lines "FEN|most" and writes one JSON object a line: the shortest mate of the side to move within
`most` moves (null when there is none), and every first move that mates in that many.
"""

import json
import sys

import chess

from force import keys

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
