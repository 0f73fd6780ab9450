//! One clean example of each pattern, and which patterns are taken for one another.
//!
//! The examples are our own: each is a legal position with one key, whose line ends in the pattern, named
//! first. What is close to what goes by the literature named in `name/table.rs`, as far as the tests of the
//! patterns bear it out.

/// Pattern, position to move, and the line that mates: the defence shown is the one that resists in the
/// pattern's own way.
pub(super) static EXAMPLES: &[(&str, &str, &str)] = &[
    (
        "arabian",
        "5bk1/1R6/p3p1p1/3p4/4N3/6P1/r6P/6K1 w - - 0 1",
        "Nf6+ Kh8 Rh7#",
    ),
    (
        "anastasia",
        "5r1k/1p2Nppp/p7/8/4Q3/R7/1q3PPP/6K1 w - - 0 1",
        "Qxh7+ Kxh7 Rh3#",
    ),
    (
        "hook",
        "6k1/6p1/4K1Np/5P2/8/8/r7/1R6 w - - 0 1",
        "Rb8+ Kh7 Rh8#",
    ),
    (
        "vukovic",
        "8/p6p/1p5k/8/3N1K2/8/r7/6R1 w - - 0 1",
        "Nf5+ Kh5 Rg5#",
    ),
    (
        "boden",
        "r4rk1/pp2bppp/5q2/5b2/8/2P1P3/PP1NQPPP/2KR1B1R b - - 0 1",
        "Qxc3+ bxc3 Ba3#",
    ),
    (
        "balestra",
        "3rk2r/pp5p/2p3p1/q7/4P3/1Q6/1P1B1PPP/6K1 w - - 0 1",
        "Qe6+ Kf8 Bh6#",
    ),
    (
        "legal",
        "r1bBk2r/ppp2ppp/2n5/2b5/4n3/3P4/PPP2PPP/RN1QKBNR b KQkq - 0 1",
        "Bxf2+ Ke2 Nd4#",
    ),
    (
        "blackburne",
        "r2q1rk1/pp3p2/2p3p1/6Np/8/1P1B4/PBP2PPP/3Q2K1 w - - 0 1",
        "Qxh5 gxh5 Bh7#",
    ),
    (
        "reti",
        "r1b1kbnr/ppp3pp/5p2/q7/4B3/8/PPP2PPP/1K2R3 w kq - 0 1",
        "Bc6+ Kf7 Be8#",
    ),
    (
        "greco",
        "rn3r1k/ppq3pp/2p5/4N3/2B5/R7/1PP2PPP/6K1 w - - 0 1",
        "Ng6+ hxg6 Rh3#",
    ),
    (
        "morphy",
        "r4rk1/pp3p1p/2p2n2/8/8/1P1R4/PB3PPP/6K1 w - - 0 1",
        "Rg3+ Kh8 Bxf6#",
    ),
    (
        "pillsbury",
        "r4rk1/pp3p1p/1qp4n/8/8/1P1R4/PB3PPP/6K1 w - - 0 1",
        "Rg3+ Ng4 Rxg4#",
    ),
    (
        "opera",
        "r1b1kb1r/1pp2ppp/p1n5/6B1/8/5Q2/1qP2PPP/3R2K1 w kq - 0 1",
        "Qxc6+ bxc6 Rd8#",
    ),
    (
        "mayet",
        "r4r2/pp3p1k/1qp3p1/8/8/1P1R4/PB3PPP/6K1 w - - 0 1",
        "Rh3+ Kg8 Rh8#",
    ),
    (
        "anderssen",
        "r4r2/pp3pBk/1qp2Pp1/8/8/1P1R4/P4PPP/6K1 w - - 0 1",
        "Rh3+ Kg8 Rh8#",
    ),
    (
        "blind-swine",
        "3q1r1k/1R4Rp/p7/8/8/6P1/5P1P/6K1 w - - 0 1",
        "Rxh7+ Kg8 Rbg7#",
    ),
    (
        "smothered",
        "3r2k1/5ppp/p7/7Q/4q3/n6P/PP3PP1/K2R3R b - - 0 1",
        "Qb1+ Rxb1 Nc2#",
    ),
    (
        "suffocation",
        "r2q1rk1/pp3p1p/2p3p1/8/6N1/1P6/PB3PPP/3R2K1 w - - 0 1",
        "Nh6#",
    ),
    (
        "corner",
        "r1b2r1k/pp5p/2pb4/4N3/8/6R1/PP4PP/5QK1 w - - 0 1",
        "Qxf8+ Bxf8 Nf7#",
    ),
    (
        "damiano",
        "r4r1k/ppq3p1/2p3P1/8/8/1P1Q4/P4PP1/6K1 w - - 0 1",
        "Qh3+ Kg8 Qh7#",
    ),
    (
        "lolli",
        "rn3rk1/pb3p1p/1p1p1Pp1/8/5Q2/2P5/PP3PPP/6K1 w - - 0 1",
        "Qh6 Nd7 Qg7#",
    ),
    (
        "max-lange",
        "7k/pp3Bp1/7p/8/4Q3/6P1/2qr1P1P/6K1 w - - 0 1",
        "Qe8+ Kh7 Qg8#",
    ),
    (
        "dovetail",
        "8/ppqr1pk1/2p1b1p1/8/7Q/8/PP3PP1/1K5R w - - 0 1",
        "Qh8#",
    ),
    (
        "swallow-tail",
        "2Q5/4p1p1/5k1p/2p5/4P3/5P2/q5PP/6K1 w - - 0 1",
        "Qf5#",
    ),
    (
        "epaulette",
        "6k1/5ppq/8/8/8/1P6/P4PPP/2RKR3 b - - 0 1",
        "Qd3#",
    ),
    (
        "double-bishop",
        "2r4k/p6p/1nb5/8/8/1B2B3/PP3PPP/6K1 w - - 0 1",
        "Bd4#",
    ),
    (
        "ladder",
        "8/5k2/R6p/1R4p1/4p3/6P1/3p1n1P/6K1 w - - 0 1",
        "Rb7+ Kg8 Ra8#",
    ),
    (
        "back-rank",
        "4r1k1/pQ3ppp/8/4q3/8/1P6/P4PPP/3R2K1 b - - 0 1",
        "Qe1+ Rxe1 Rxe1#",
    ),
    (
        "corridor",
        "3R4/8/5Ppk/p5p1/1p6/6P1/r5P1/6K1 w - - 0 1",
        "Rh8#",
    ),
    (
        "kiss",
        "3rr1k1/pp5p/2p3pQ/8/8/1P6/PB2qPPP/6K1 w - - 0 1",
        "Qg7#",
    ),
    (
        "double-check",
        "r1bqkb1r/pppn2pp/8/8/4N3/8/PPP2PPP/2K1R3 w kq - 0 1",
        "Nd6#",
    ),
    ("pawn", "8/8/6pp/7k/5Pn1/6KP/8/8 w - - 0 1", "hxg4#"),
];

/// Patterns that are taken for one another, in the order of the alphabet.
pub(super) static RELATIVES: &[(&str, &str)] = &[
    ("anastasia", "arabian"),
    ("anastasia", "corridor"),
    ("anastasia", "greco"),
    ("anastasia", "hook"),
    ("anderssen", "mayet"),
    ("anderssen", "opera"),
    ("anderssen", "pawn"),
    ("arabian", "hook"),
    ("arabian", "vukovic"),
    ("back-rank", "corridor"),
    ("back-rank", "ladder"),
    ("balestra", "boden"),
    ("balestra", "max-lange"),
    ("blackburne", "boden"),
    ("blackburne", "legal"),
    ("blackburne", "reti"),
    ("blind-swine", "ladder"),
    ("boden", "double-bishop"),
    ("corner", "morphy"),
    ("corner", "smothered"),
    ("corner", "suffocation"),
    ("corridor", "greco"),
    ("corridor", "ladder"),
    ("damiano", "lolli"),
    ("double-check", "reti"),
    ("double-check", "smothered"),
    ("dovetail", "kiss"),
    ("dovetail", "swallow-tail"),
    ("epaulette", "swallow-tail"),
    ("greco", "morphy"),
    ("hook", "vukovic"),
    ("kiss", "lolli"),
    ("kiss", "swallow-tail"),
    ("lolli", "max-lange"),
    ("mayet", "opera"),
    ("morphy", "pillsbury"),
    ("smothered", "suffocation"),
];
