//! What of chess the chats lay out, handed over as it is: the values of facts, the task, and the cards' facts.

pub use crate::chess::{
    Stipulation,
    card::{Card, apart},
    fact::{And, Count, Decimal, Line, List, Or, Pattern, Theirs, number},
    name::Source,
};
