//! Check reports and long answers that are read page by page, kept in memory.

use std::sync::Arc;

use poise::serenity_prelude::{self as serenity, UserId};

use super::House;
use crate::{
    desk::{CheckedPosition, CoachWords, Place, PositionId},
    words::Words,
};

/// How many check reports, and how many long answers, stay open for paging.
const MOST_REPORTS: usize = 32;

/// A long answer, in parts that each fit into a message.
pub struct Parts {
    /// Whose it is.
    pub user: UserId,
    /// The parts.
    pub texts: Vec<String>,
    /// Buttons under each.
    pub rows: Vec<serenity::CreateActionRow>,
    /// What the buttons that turn the parts are called in.
    pub words: &'static Words,
}

/// A check report that a coach pages through.
pub struct Opened {
    /// The group.
    pub place: Place,
    /// Whose it is.
    pub coach: String,
    /// The positions.
    pub positions: Vec<CheckedPosition>,
}

impl House {
    /// Opens a check report for paging; gives its number.
    pub fn open_report(&self, report: Opened) -> u64 {
        let mut memory = self.memory();
        memory.next_report += 1;
        let number = memory.next_report;
        memory.reports.push_back((number, Arc::new(report)));
        if memory.reports.len() > MOST_REPORTS {
            memory.reports.pop_front();
        }
        number
    }

    /// Puts a position of an open report in the place of what it was before.
    pub fn settle_in_report(&self, number: u64, at: usize, position: CheckedPosition) {
        let mut memory = self.memory();
        let Some((_, report)) = memory.reports.iter_mut().find(|(key, _)| *key == number) else {
            return;
        };
        let mut positions = report.positions.clone();
        if let Some(place) = positions.get_mut(at) {
            *place = position;
        }
        *report = Arc::new(Opened {
            place: report.place.clone(),
            coach: report.coach.clone(),
            positions,
        });
    }

    /// Shows other words on a position in every open report of its group.
    pub fn words_in_reports(&self, place: &Place, position: PositionId, words: &CoachWords) {
        self.change_in_reports(place, position, |one| one.words.clone_from(words));
    }

    /// Shows a position that was written anew in every open report of its group.
    pub fn edited_in_reports(&self, place: &Place, position: PositionId, now: &CheckedPosition) {
        self.change_in_reports(place, position, |one| one.clone_from(now));
    }

    fn change_in_reports(
        &self,
        place: &Place,
        position: PositionId,
        change: impl Fn(&mut CheckedPosition),
    ) {
        for (_, report) in &mut self.memory().reports {
            let holds = |one: &CheckedPosition| one.position == Some(position);
            if report.place != *place || !report.positions.iter().any(holds) {
                continue;
            }
            let mut positions = report.positions.clone();
            for one in positions.iter_mut().filter(|one| holds(one)) {
                change(one);
            }
            *report = Arc::new(Opened {
                place: report.place.clone(),
                coach: report.coach.clone(),
                positions,
            });
        }
    }

    /// Opens a long answer for reading part by part; gives it with its number.
    pub fn open_parts(&self, parts: Parts) -> (u64, Arc<Parts>) {
        let mut memory = self.memory();
        memory.next_parts += 1;
        let opened = (memory.next_parts, Arc::new(parts));
        memory.parts.push_back(opened.clone());
        if memory.parts.len() > MOST_REPORTS {
            memory.parts.pop_front();
        }
        opened
    }

    /// A long answer that is still open.
    pub fn parts(&self, number: u64) -> Option<Arc<Parts>> {
        let memory = self.memory();
        let found = memory.parts.iter().find(|(key, _)| *key == number)?;
        Some(Arc::clone(&found.1))
    }

    /// A check report that is still open.
    pub fn report(&self, number: u64) -> Option<Arc<Opened>> {
        let memory = self.memory();
        let found = memory.reports.iter().find(|(key, _)| *key == number)?;
        Some(Arc::clone(&found.1))
    }
}
