"""Holds every reason given for a wrong move, and every word of its sentence, to the board.

Standard input: one object a line: `fen`, `moves` (mate in this many), `keys` in UCI, and `wrong`, a list
of wrong moves, each with `move` and `line` in UCI, `reasons` (objects with their `kind`), `why` (the sentence), `point`
(the same without a mate that comes too late), `message` (what the member is told; may be missing),
`board` (the position in the picture) and `marks` (what is marked in it).

Writes one JSON object: how many `wrong` moves there were, how often each of the `kinds` was given, by
what it says, and how many reasons made false on purpose were `refused`.
"""

import collections
import json
import multiprocessing
import sys

import chess

import claims
import sentences
import spoil
from claims import Case, Untrue, must
from material import balance, best_after_any_move

# Of so many wrong moves one is made false in every way, which has to be noticed.
_SPOILED = 6


def verify(problem: dict, wrong: dict) -> list[str]:
    """Everything that is claimed of one wrong move; the kinds that were given."""
    case = Case(problem["fen"], problem["moves"], wrong["move"], wrong["line"])
    must(claims.holds(case), "the refutation holds")
    reasons = wrong["reasons"]
    for reason in reasons:
        try:
            claims.KINDS[reason["kind"]](case, reason)
        except Untrue as untrue:
            raise Untrue(f"{reason}: {untrue}") from None
    said = sentences.clauses(wrong["why"]) if wrong["why"] else []
    must(said or not reasons, "something is said")
    compare(case, said, reasons)
    late = [claim for claim in said if claim["kind"] == "slower"]
    point = sentences.clauses(wrong["point"]) if wrong["point"] else []
    must(point + late == said, "the point is the sentence without the late mate")
    if wrong.get("message"):
        hold_message(case, wrong, late)
    hold_picture(case, wrong)
    sealed = {key[2:4] for key in problem["keys"]}
    guarded = {reason["square"] for reason in reasons if reason["kind"] == "guards"}
    must(not sealed & guarded, "no square of a key is named")
    return [label(reason) for reason in reasons] + [
        "for nothing" for claim in said if claim.get("for_nothing")
    ]


def refuse(problem: dict, wrong: dict) -> int:
    """Insists that reasons and sentences made false are refused; how many were."""
    case = Case(problem["fen"], problem["moves"], wrong["move"], wrong["line"])
    refused = 0
    for reason in wrong["reasons"]:
        for false in spoil.reasons(reason):
            match false:
                # A mate too long to look for may be longer.
                case {"kind": "slower", "moves": moves} if moves - 2 > case.reach():
                    continue
                # What is defended again stays defended.
                case {"kind": "back-rank", "again": False}:
                    continue
            refused += refuses(false, claims.KINDS[reason["kind"]], case, false)
    for false in spoil.sentences(wrong):
        refused += refuses(false["why"], verify, problem, false)
    return refused


def refuses(what: object, check, *args) -> int:
    """One if the check refuses."""
    try:
        check(*args)
    except (Untrue, sentences.NotUnderstood):
        return 1
    raise Untrue(f"made false, and not noticed: {what}")


def compare(case: Case, said: list[dict], reasons: list[dict]) -> None:
    """Holds the clauses to the reasons they stand for, in the same order, and to the board."""
    late = [r for r in reasons if r["kind"] == "slower"]
    given = [r for r in reasons if r["kind"] != "slower"]
    must([c for c in said if c["kind"] == "slower"] == late, "the late mate")
    spoken = [c for c in said if c["kind"] != "slower"]
    must(len(spoken) <= len(given), "no clause without a reason")
    must(spoken or not given, "the main reason is told")
    for claim, reason in zip(spoken, given):
        for name, value in claim.items():
            if name in reason:
                must(reason[name] == value, f"{name} is {value} in the sentence, {reason[name]} besides")
            else:
                word_for_word(case, name, value, claim, reason, bool(late))


def word_for_word(case: Case, name: str, value, claim: dict, reason: dict, late: bool) -> None:
    """What a sentence says beyond its reason's data."""
    match name:
        case "defender" | "solver":
            must(claims.colour_name(getattr(case, name)) == value, f"{value} is the {name}")
        case "left":
            must(value[0] <= case.left <= value[1], "the moves left")
        case "unguarded":
            must(value == reason["on"], "which square is unguarded")
            must(reason["by"] == "king", "the king takes")
            must(not case.guards(case.beyond, chess.parse_square(value)), "nothing guards it")
        case "not_queen":
            must(reason["what"] != "queen", "a queen is called one")
        case "bare":
            must(reason["by"] != "king" and reason["back"] in ("possible", "in-check"), "more to say")
        case "for_nothing":
            must(reason["what"] == "queen", "a queen is lost")
            must(not late and not claims.mates(case.beyond, 2), "she is not given up for mate")
            regained = best_after_any_move(case.beyond.copy(stack=False))
            lost = balance(case.before, case.solver) - regained
            must(lost >= 8, f"lost for nothing ({lost} pawns)")
        case _:
            raise Untrue(f"nobody knows what {name} means in {claim}")


def numbered(board: chess.Board, first: chess.Board, move: chess.Move) -> str:
    """A move with its number, the problem's first being 1."""
    # Black's reply to White's first is 1...; White's reply to Black's first is 2.
    number = 2 if board.turn and not first.turn else 1
    return f"{number}.{'' if board.turn else '..'}{board.san(move)}"


def hold_message(case: Case, wrong: dict, late: list[dict]) -> None:
    """The message names the moves as python-chess spells them, and says what the sentence says."""
    told = sentences.message(wrong["message"])
    must(told["move"] == numbered(case.before, case.before, case.move), "the wrong move")
    if told.get("answer"):
        answer = numbered(case.after, case.before, case.defence)
        must(told["answer"] == answer, f"the answer is {answer}")
    if "defender" in told:
        must(told["defender"] == claims.colour_name(case.defender), "who answers")
    must(bool(late) == ("slower" in told), "whether it mates later")
    if late:
        must((told["left"], told["slower"]) == (case.left, late[0]["moves"]), "how much later")
    else:
        must((told.get("point") or "") == wrong["point"], "the sentence stands in the message")
    must(told.get("point") in (None, wrong["point"]), "no other sentence stands there")


def hold_picture(case: Case, wrong: dict) -> None:
    """The picture shows the position after the defence, with what the reasons speak of marked."""
    must(wrong["board"] == case.beyond.board_fen(), "the position in the picture")
    marks = {tuple(mark) for mark in wrong["marks"]}
    due = set()
    if case.defence:
        squares = case.defence.from_square, case.defence.to_square
        due.add(("refutation", *map(chess.square_name, squares)))
    for reason in wrong["reasons"]:
        match reason:
            case {"kind": "flight", "to": square} | {"kind": "luft", "square": square}:
                due.add(("flight", square))
            case {"kind": "guards", "square": square} | {"kind": "pins", "on": square}:
                due.add(("square", square))
            case {"kind": "takes", "back": "pinned", "pinned": [_, square]}:
                due.add(("square", square))
    must(marks == due, f"marked {sorted(marks)}, not {sorted(due)}")


def label(reason: dict) -> str:
    """The kind of a reason, finer where one kind says different things."""
    match reason:
        case {"kind": "takes", "by": "king"}:
            return "takes: by the king"
        case {"kind": "takes", "back": back}:
            return f"takes: {back}"
        case {"kind": "flight", "lost": lost}:
            return f"flight: {lost[0] if lost else 'unguarded'}"
        case {"kind": "interposes", "takeable": takeable}:
            return f"interposes: {'takeable' if takeable else 'safe'}"
        case {"kind": "luft", "vacated": vacated}:
            return f"luft: {'vacated' if vacated else 'opened'}"
        case {"kind": "back-rank", "again": again}:
            return f"back-rank: {'again' if again else 'stays'}"
    return reason["kind"]


def hold(line: str) -> tuple[list[str], int, list[str]]:
    """Looks at one position: the kinds of reasons given, how many made false were refused, and what is
    not true."""
    problem = json.loads(line)
    kinds, refused, faults = [], 0, []
    for place, wrong in enumerate(problem["wrong"]):
        try:
            kinds += verify(problem, wrong)
            if place % _SPOILED == 0:
                refused += refuse(problem, wrong)
        except (Untrue, sentences.NotUnderstood) as fault:
            where = f"{problem['fen']} #{problem['moves']} {wrong['move']} {wrong['line']}"
            faults.append(f"{where}: not so: {fault}\n    ({wrong.get('message') or wrong['why']})")
    return kinds, refused, faults


if __name__ == "__main__":
    lines = sys.stdin.readlines()
    with multiprocessing.Pool(2) as pool:
        held = pool.map(hold, lines, chunksize=1)
    untrue = [fault for _, _, faults in held for fault in faults]
    if untrue:
        sys.exit(f"{len(untrue)} not true:\n" + "\n".join(untrue))
    kinds = collections.Counter(kind for kinds, _, _ in held for kind in kinds)
    print(
        json.dumps(
            {
                "wrong": sum(len(json.loads(line)["wrong"]) for line in lines),
                "kinds": dict(kinds),
                "refused": sum(refused for _, refused, _ in held),
            }
        )
    )
