"""Reads a file of games with python-chess and writes it again, as its own exporter does.

Input: PGN. Output: the same games, with Windows line ends and a byte order mark.
"""

import io
import sys

import chess.pgn

games = io.StringIO(sys.stdin.read())
out = []
while (game := chess.pgn.read_game(games)) is not None:
    if game.errors:
        print(f"python-chess: {game.errors}", file=sys.stderr)
        sys.exit(1)
    exporter = chess.pgn.StringExporter(columns=60, headers=True, variations=True, comments=True)
    out.append(game.accept(exporter))
sys.stdout.write("\ufeff" + "\n\n".join(out).replace("\n", "\r\n") + "\r\n")
