"""Games in PGN as python-chess reads them: every move with its comments and glyphs.

Reads one JSON string a line, a game each; writes for each a JSON object: `moves`, a list of
[path, words before, words behind, glyphs], the root's path being empty, and `pgn`, the game written again.
"""

import io
import json
import sys

import chess.pgn


def words(text):
    if isinstance(text, list):
        text = " ".join(text)
    return " ".join(text.split())


def walk(node, path, out):
    out.append(
        [path, words(node.starting_comment) if path else "", words(node.comment), sorted(node.nags)]
    )
    for child in node.variations:
        walk(child, path + [child.move.uci()], out)


for line in sys.stdin:
    game = chess.pgn.read_game(io.StringIO(json.loads(line)))
    assert not game.errors, game.errors
    moves = []
    walk(game, [], moves)
    print(json.dumps({"moves": moves, "pgn": str(game)}))
