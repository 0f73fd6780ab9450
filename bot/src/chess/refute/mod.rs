//! Why a move is wrong: the refuting line, and one sentence of reason built from the position.
