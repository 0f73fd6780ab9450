//! What all commands share in writing their output.

use std::io::{self, Write};

use serde::Serialize;

use crate::words::{self, Words};

/// Writes one JSON object and a line end.
pub fn json_line<T: Serialize>(out: &mut impl Write, value: &T) -> anyhow::Result<()> {
    serde_json::to_writer(&mut *out, value).map_err(io::Error::from)?;
    writeln!(out)?;
    Ok(())
}

/// Whether the reader of our output went away (`sealed-move check … | head`): no failure of ours.
pub fn is_closed_pipe(error: &anyhow::Error) -> bool {
    error.chain().any(|cause| {
        cause
            .downcast_ref::<io::Error>()
            .is_some_and(|e| e.kind() == io::ErrorKind::BrokenPipe)
    })
}

/// The words in which reports, and what is wrong with files and positions, are said.
pub fn words() -> &'static Words {
    words::words("en")
}
