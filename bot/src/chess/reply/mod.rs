//! Reading what a member wrote into moves.
