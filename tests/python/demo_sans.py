"""Plays lines of SAN with python-chess and says where it would write them differently.

Input: JSON lines, {"id": ..., "fen": ..., "line": [SAN, ...], "mate": whether the line ends in mate}.
Output: one line of text for each disagreement; at the end "N lines, M moves".
"""

import json
import sys

import chess

lines = moves = 0
for text in sys.stdin:
    given = json.loads(text)
    board = chess.Board(given["fen"])
    where = f"{given['id']}: {given['fen']}"
    if not board.is_valid():
        print(f"{where}: not valid ({board.status()!r})")
    lines += 1
    for san in given["line"]:
        try:
            move = board.parse_san(san)
        except ValueError as error:
            print(f"{where}: {san}: {error}")
            break
        written = board.san(move)
        if written != san:
            print(f"{where}: {san} should be {written}")
        board.push(move)
        moves += 1
    else:
        if board.is_checkmate() != given["mate"]:
            print(f"{where}: after {' '.join(given['line'])} mate is {board.is_checkmate()}")
print(f"{lines} lines, {moves} moves")
