//! Charts for leaderboard and summary.
