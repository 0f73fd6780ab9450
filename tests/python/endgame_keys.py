"""For each FEN on standard input, the moves that win by the endgame tables in the folder named, in UCI,
by python-chess's own prober; the fifty-move rule is not counted. Without arguments but the folder and
`make N SEED`, writes N random positions of few pieces and pawns instead."""

import random
import sys

import chess
import chess.syzygy

folder = sys.argv[1]


def wins(board, tables):
    keys = []
    for move in board.legal_moves:
        board.push(move)
        if board.is_checkmate():
            keys.append(move.uci())
        elif not board.is_stalemate() and not board.is_insufficient_material():
            if tables.probe_wdl(board) < 0:
                keys.append(move.uci())
        board.pop()
    return sorted(keys)


def make(count, seed):
    rng = random.Random(seed)
    sets = ["P", "R", "Q", "BN", "PP", "RP", "NP", "BP"]
    while count:
        board = chess.Board(None)
        men = [chess.Piece.from_symbol(s) for s in "Kk" + rng.choice(sets)]
        squares = rng.sample(range(64), len(men))
        for man, square in zip(men, squares):
            board.set_piece_at(square, man)
        board.turn = rng.choice([True, True, True, False])
        if board.is_valid() and not board.is_game_over():
            print(board.fen())
            count -= 1


if len(sys.argv) > 2:
    make(int(sys.argv[3]), int(sys.argv[4]))
else:
    with chess.syzygy.open_tablebase(folder) as tables:
        for line in sys.stdin:
            board = chess.Board(line.strip())
            print(" ".join(board.san(chess.Move.from_uci(m)) for m in wins(board, tables)))
