"""Plays lines given in SAN on python-chess, and insists on its own spelling of every move.

Reads JSON objects {"fen": ..., "line": [...]}, one a line, and writes how many moves agreed.
"""

import json
import sys

import chess

agreed = 0
for text in sys.stdin:
    entry = json.loads(text)
    board = chess.Board(entry["fen"])
    for san in entry["line"]:
        own = board.san(board.parse_san(san))
        if own != san:
            sys.exit(f"{entry['fen']}: {san} is written {own} by python-chess")
        board.push_san(san)
        agreed += 1
print(agreed)
