//! What all commands share in writing their output.

use std::{
    io::{self, Write},
    sync::Arc,
};

use indicatif::ProgressBar;
use serde::Serialize;

/// Writes one JSON object and a line end.
pub fn json_line<T: Serialize>(out: &mut impl Write, value: &T) -> anyhow::Result<()> {
    serde_json::to_writer(&mut *out, value).map_err(io::Error::from)?;
    writeln!(out)?;
    Ok(())
}

/// A bar for work whose size is known when it begins, and what moves it.
pub fn progress() -> (ProgressBar, Arc<dyn Fn(usize, usize) + Send + Sync>) {
    let bar = ProgressBar::new(0);
    let shown = bar.clone();
    let moved = move |done: usize, of: usize| {
        shown.set_length(of as u64);
        shown.set_position(done as u64);
    };
    (bar, Arc::new(moved))
}

/// Whether the reader of our output went away (`sealed-move check … | head`): no failure of ours.
pub fn is_closed_pipe(error: &anyhow::Error) -> bool {
    error.chain().any(|cause| {
        cause
            .downcast_ref::<io::Error>()
            .is_some_and(|e| e.kind() == io::ErrorKind::BrokenPipe)
    })
}
