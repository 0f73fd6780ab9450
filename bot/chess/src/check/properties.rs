//! What must hold of the report on any position: limits and threads change no word of a verdict, and
//! exchanged colours give the same report with the colours exchanged.

use std::sync::atomic::{AtomicU64, Ordering};

use proptest::prelude::*;
use shakmaty::Chess;

use super::tests::entry_of;
use super::*;
use crate::prove::properties::{Turned, small_position, turned};

/// The shallowest judgement that counts, so that a judgement is either this deep or none.
const DEPTH: u32 = 8;

fn report(position: &Chess, task: Option<Stipulation>, budget: &Budget<'_>) -> Report {
    let options = CheckOptions {
        moves: 3,
        depth: DEPTH,
        ..CheckOptions::default()
    };
    check(&entry_of(position, task), &options, budget)
}

fn task() -> impl Strategy<Value = Option<Stipulation>> {
    prop::sample::select(vec![
        None,
        Some(Stipulation::Mate(2)),
        Some(Stipulation::Mate(3)),
        Some(Stipulation::Win),
        Some(Stipulation::Draw),
    ])
}

proptest! {
    #![proptest_config(crate::cases::cases(40))]

    /// Out of nodes, out of time or cancelled: the verdict is the true one, or `undecided`. Where no
    /// task is stated and the search for a mate was cut short, a true mate may be called a win.
    #[test]
    fn limits_never_give_a_wrong_verdict(
        position in small_position(),
        task in task(),
        nodes in 0_u64..60_000,
        looks in 0_u64..60,
        half in 0_u64..30,
    ) {
        let truth = report(&position, task, &Budget::unlimited());
        let asked = AtomicU64::new(0);
        let stop = || asked.fetch_add(1, Ordering::Relaxed) >= looks;
        let halfway = || asked.load(Ordering::Relaxed) >= half;
        let by_nodes = Budget::unlimited().nodes(nodes);
        let by_call = Budget::unlimited().until(&stop).halfway(&halfway);
        for budget in [by_nodes, by_call] {
            let limited = report(&position, task, &budget);
            if limited.verdict == Soundness::Undecided {
                prop_assert!(!limited.message.is_empty() && !limited.proved);
            } else if limited.stipulation == truth.stipulation {
                prop_assert_eq!(limited.verdict, truth.verdict, "{:?}", limited);
                prop_assert_eq!(limited.proved, truth.proved);
                if limited.proved {
                    prop_assert_eq!(&limited.keys, &truth.keys);
                }
            } else {
                prop_assert_eq!(task, None);
                prop_assert_eq!(limited.stipulation, Some(Stipulation::Win));
                prop_assert!(matches!(truth.stipulation, Some(Stipulation::Mate(_))));
                let holds = matches!(limited.verdict, Soundness::Sound | Soundness::SeveralKeys);
                prop_assert!(holds && !limited.proved, "{:?}", limited);
            }
        }
    }

    /// Every word of the report, the tree's variations included. Threads are used from four moves on.
    #[test]
    fn one_thread_and_two_give_one_report(position in small_position()) {
        let task = Some(Stipulation::Mate(4));
        let mut one = report(&position, task, &Budget::unlimited().nodes(2_000_000));
        prop_assume!(one.verdict != Soundness::Undecided && one.nodes < 2_000_000);
        let mut two = report(&position, task, &Budget::unlimited().threads(2));
        (one.nodes, two.nodes) = (0, 0);
        prop_assert_eq!(
            serde_json::to_value(&one).expect("plain data"),
            serde_json::to_value(&two).expect("plain data")
        );
    }

    #[test]
    fn turned_boards_give_turned_reports(position in small_position(), moves in 1..=3_u8) {
        let task = Some(Stipulation::Mate(moves));
        let said = |report: &Report| {
            (
                (report.verdict, report.stipulation, report.proved),
                (report.keys.len(), report.line.len(), report.tries.len()),
            )
        };
        let one = report(&position, task, &Budget::unlimited());
        for how in [Turned::Mirrored, Turned::Swapped] {
            let other = report(&turned(&position, how), task, &Budget::unlimited());
            // Without a key or a try, the line shows the first legal move, whichever that is.
            let (mut ours, mut theirs) = (said(&one), said(&other));
            if one.keys.is_empty() {
                (ours.1.1, theirs.1.1) = (0, 0);
            }
            prop_assert_eq!(ours, theirs);
        }
    }
}
