//! Endgame tables in Syzygy format from a folder of the user's.

use std::{fmt, path::Path, sync::Arc};

use shakmaty::Chess;
use shakmaty_syzygy::{AmbiguousWdl, Tablebase};

use crate::chess::check::{Endgames, TableVerdict};

/// The tables of a folder.
pub struct Syzygy {
    tables: Tablebase<Chess>,
}

/// Why a folder's tables cannot be used.
#[derive(Debug, thiserror::Error)]
pub enum EndgamesError {
    /// The folder or a file in it cannot be read.
    #[error("the endgame tables in {0} cannot be read: {1}")]
    Unreadable(String, std::io::Error),
    /// There are none.
    #[error("{0} holds no endgame tables; Syzygy tables are files such as KRPvKR.rtbw")]
    None(String),
}

impl fmt::Debug for Syzygy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.debug_struct("Syzygy")
            .field("most_men", &self.tables.max_pieces())
            .finish()
    }
}

impl Syzygy {
    /// The tables of `folder`. Files are opened when they are first asked.
    ///
    /// # Errors
    /// When the folder cannot be read or holds no tables.
    pub fn open(folder: &Path) -> Result<Arc<Self>, EndgamesError> {
        let mut tables = Tablebase::new();
        let shown = folder.display().to_string();
        let count = tables
            .add_directory(folder)
            .map_err(|error| EndgamesError::Unreadable(shown.clone(), error))?;
        if count == 0 {
            return Err(EndgamesError::None(shown));
        }
        Ok(Arc::new(Self { tables }))
    }
}

impl Endgames for Syzygy {
    fn most_men(&self) -> usize {
        self.tables.max_pieces()
    }

    fn known(&self, position: &Chess) -> Option<TableVerdict> {
        // A missing or damaged table is no answer; the search judges then.
        Some(match self.tables.probe_wdl(position).ok()? {
            AmbiguousWdl::Win | AmbiguousWdl::MaybeWin | AmbiguousWdl::CursedWin => {
                TableVerdict::Win
            }
            AmbiguousWdl::Draw => TableVerdict::Draw,
            AmbiguousWdl::BlessedLoss | AmbiguousWdl::MaybeLoss | AmbiguousWdl::Loss => {
                TableVerdict::Loss
            }
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_folder_without_tables_is_refused() {
        let folder = tempfile::tempdir().expect("a folder");
        assert!(matches!(
            Syzygy::open(folder.path()),
            Err(EndgamesError::None(_))
        ));
        assert!(matches!(
            Syzygy::open(&folder.path().join("nowhere")),
            Err(EndgamesError::Unreadable(..))
        ));
    }
}
