"""Writes COUNT random positions of each length from mate in 2 to mate in LONGEST: king and one more piece or pawn
against a king, from the Gaviota tables in FOLDER by python-chess's own prober. A line holds the FEN, the
length in moves, and the moves that mate soonest, in SAN, parted by semicolons.

    mate_lengths.py FOLDER COUNT LONGEST SEED
"""

import random
import sys

import chess
import chess.gaviota

folder, count, longest, seed = sys.argv[1], *map(int, sys.argv[2:])
rng = random.Random(seed)


def some_position():
    board = chess.Board(None)
    men = [chess.Piece.from_symbol(s) for s in "Kk" + rng.choice("QRP")]
    for man, square in zip(men, rng.sample(range(64), len(men))):
        board.set_piece_at(square, man)
    if rng.random() < 0.5:
        board = board.mirror()
        board.turn = chess.BLACK
    return board


def keys(board, plies, tables):
    for move in board.legal_moves:
        san = board.san(move)
        board.push(move)
        if board.is_game_over():
            soonest = plies == 1 and board.is_checkmate()
        else:
            soonest = tables.probe_dtm(board) == 1 - plies
        board.pop()
        if soonest:
            yield san


wanted = {length: count for length in range(2, longest + 1)}
with chess.gaviota.open_tablebase(folder) as tables:
    while any(wanted.values()):
        board = some_position()
        if not board.is_valid() or board.is_game_over():
            continue
        plies = tables.probe_dtm(board)
        length = (plies + 1) // 2
        if plies > 0 and wanted.get(length):
            wanted[length] -= 1
            print(board.fen(), length, " ".join(sorted(keys(board, plies, tables))), sep=";")
