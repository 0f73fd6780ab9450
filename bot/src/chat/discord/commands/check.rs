//! `/coach check`: verifies an attached file of positions and lays the report open, page by page.

use std::{
    sync::{
        Arc,
        atomic::{AtomicUsize, Ordering},
    },
    time::Duration,
};

use futures::StreamExt;
use poise::serenity_prelude as serenity;

use super::{Answer, Ctx, for_coach, said};
use crate::{
    chat::discord::{
        fit,
        house::{House, Opened},
        letter::Letter,
        private::{self, Asked},
        sheets,
        text::{Coach, Plain, number},
    },
    desk::{InFile, Soundness, in_file_order},
};

/// The most a file may weigh; Discord itself takes no larger one from most people.
const LARGEST: u64 = 10 << 20;
/// How long fetching a file may take.
const FETCH: Duration = Duration::from_secs(30);
/// How often the coach is told how far a long check has come.
const NEWS: Duration = Duration::from_secs(4);

/// Check the positions of a file (EPD, PGN, or FEN lines)
#[poise::command(slash_command)]
pub async fn check(
    ctx: Ctx<'_>,
    file: serenity::Attachment,
    #[rename = "put-into-week"] put_into_week: Option<bool>,
) -> Answer<()> {
    for_coach(ctx, |house, place, coach, words| async move {
        let bytes = fetch(house, &file).await?;
        let (done, of) = (Arc::new(AtomicUsize::new(0)), Arc::new(AtomicUsize::new(0)));
        let progress = {
            let (done, of) = (Arc::clone(&done), Arc::clone(&of));
            Arc::new(move |d: usize, o: usize| {
                done.fetch_max(d, Ordering::Relaxed);
                of.store(o, Ordering::Relaxed);
            })
        };
        let written = house
            .desk
            .coach()
            .written_in(&place, &coach, &file.filename, bytes.clone())
            .await?;
        let mut work = Box::pin(house.desk.coach().import(
            &place,
            &coach,
            &file.filename,
            bytes,
            progress,
        ));
        let positions = loop {
            tokio::select! {
                positions = &mut work => break positions?,
                () = tokio::time::sleep(NEWS) => {
                    let (done, of) = (done.load(Ordering::Relaxed), of.load(Ordering::Relaxed));
                    let (done, of) = (number(done), number(of));
                    let news = Letter::text(words.say(&Coach::Checking { done, of }));
                    private::give(house, Asked::Command(ctx.interaction), news).await;
                }
            }
        };
        drop(work);
        let mut queued = String::new();
        if put_into_week == Some(true) {
            let (mut count, mut before) = (0, 0);
            for item in in_file_order(positions.iter().collect(), written) {
                let position = match item {
                    InFile::Position(position) => position,
                    InFile::Written(found) => {
                        house
                            .desk
                            .coach()
                            .enqueue_found(&place, &coach, &found)
                            .await?;
                        count += 1;
                        continue;
                    }
                };
                if let (Some(id), Soundness::Sound) = (position.position, position.report.verdict) {
                    // What was posted before waits for the coach's explicit word.
                    match house.desk.coach().enqueue(&place, &coach, id, false).await {
                        Ok(_) => count += 1,
                        Err(_) if position.posted.is_some() => before += 1,
                        Err(error) => return Err(error.into()),
                    }
                }
            }
            queued = words.say(&Coach::PutIntoWeek { number: count });
            if before > 0 {
                queued.push(' ');
                queued.push_str(&words.say(&Coach::LeftOut { number: before }));
            }
            queued.push_str("\n\n");
        } else if !written.is_empty() {
            queued = words.say(&Coach::WrittenInFile {
                number: number(written.len()),
            });
            queued.push_str("\n\n");
        }
        let report = Opened {
            place,
            coach: coach.user,
            positions,
        };
        let opened = house.open_report(report);
        let Some(report) = house.report(opened) else {
            return said(Coach::ReportGone);
        };
        let queue = house.desk.coach().queue(&report.place).await?;
        let mut letter = sheets::report::page(words, opened, &report, 0, &queue);
        letter.text = fit::short(&format!("{queued}{}", letter.text), fit::MESSAGE);
        Ok(letter)
    })
    .await
}

/// Fetches an attachment, never more of it than is allowed, whatever size it was told to have.
pub async fn fetch(house: &House, file: &serenity::Attachment) -> Answer<Vec<u8>> {
    let name = || Plain::of(&fit::short(&file.filename, 80));
    let too_large = || Coach::FileTooLarge {
        name: name(),
        most: u32::try_from(LARGEST >> 20).unwrap_or(u32::MAX),
    };
    if u64::from(file.size) > LARGEST {
        return said(too_large());
    }
    // Attachments lie on Discord's own servers; nothing else is fetched.
    let ours = match &house.stand_in {
        Some(server) => file.url.starts_with(&format!("{server}/")),
        None => [
            "https://cdn.discordapp.com/",
            "https://media.discordapp.net/",
        ]
        .iter()
        .any(|start| file.url.starts_with(start)),
    };
    if !ours {
        return said(Coach::FileElsewhere { name: name() });
    }
    let unreachable = || Coach::FileUnreachable { name: name() };
    let fetched = tokio::time::timeout(FETCH, async {
        let answer = house
            .files
            .get(&file.url)
            .send()
            .await
            .ok()?
            .error_for_status()
            .ok()?;
        let mut stream = answer.bytes_stream();
        let mut bytes = Vec::new();
        while let Some(piece) = stream.next().await {
            bytes.extend_from_slice(&piece.ok()?);
            if bytes.len() as u64 > LARGEST {
                return Some(Err(()));
            }
        }
        Some(Ok(bytes))
    })
    .await;
    let bytes = match fetched {
        Ok(Some(Ok(bytes))) => bytes,
        Ok(Some(Err(()))) => return said(too_large()),
        Ok(None) | Err(_) => return said(unreachable()),
    };
    Ok(bytes)
}
