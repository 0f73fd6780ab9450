"""Drives the engine command by python-chess's UCI client: options, several lines, a mate, a stop."""

import sys

import chess
import chess.engine

with chess.engine.SimpleEngine.popen_uci([sys.argv[1], "engine"]) as engine:
    assert engine.id["name"].startswith("Sealed Move"), engine.id
    engine.configure({"Hash": 8, "Threads": 2})
    mate = chess.Board("6k1/5ppp/8/8/8/8/5PPP/3R2K1 w - - 0 1")
    result = engine.play(mate, chess.engine.Limit(depth=4), info=chess.engine.INFO_ALL)
    assert mate.san(result.move) == "Rd8#", result.move
    assert result.info["score"].white() == chess.engine.Mate(1), result.info
    start = chess.Board()
    lines = engine.analyse(start, chess.engine.Limit(depth=5), multipv=3)
    assert len({line["pv"][0] for line in lines}) == 3, lines
    for line in lines:
        board = start.copy()
        for move in line["pv"]:
            board.push(move)  # raises on an illegal move
    with engine.analysis(start) as analysis:
        for info in analysis:
            if info.get("depth", 0) >= 4:
                break
        analysis.stop()
        best = analysis.wait()
    assert best.move in start.legal_moves
    over = chess.Board("3R2k1/5ppp/8/8/8/8/8/6K1 b - - 0 1")
    assert not engine.play(over, chess.engine.Limit(depth=3)).move
    # A whole short game against itself, every move legal by the client's own rules.
    board = chess.Board()
    for _ in range(30):
        if board.is_game_over():
            break
        board.push(engine.play(board, chess.engine.Limit(nodes=3000)).move)
print("ok")
