//! Settings of the whole program: keys and values.

use crate::{Db, StoreError, Tx};

impl Db<'_> {
    /// The value kept under `key`.
    ///
    /// # Errors
    /// When the store cannot be read.
    pub fn setting(&self, key: &str) -> Result<Option<String>, StoreError> {
        self.maybe_one("SELECT value FROM settings WHERE key = ?1", [key], |row| {
            row.get(0)
        })
    }
}

impl Tx<'_> {
    /// Keeps `value` under `key`, in place of an earlier one.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn set_setting(&self, key: &str, value: &str) -> Result<(), StoreError> {
        self.run(
            "INSERT INTO settings (key, value) VALUES (?1, ?2)
             ON CONFLICT (key) DO UPDATE SET value = excluded.value",
            [key, value],
        )?;
        Ok(())
    }

    /// Forgets what is kept under `key`; says whether there was anything.
    ///
    /// # Errors
    /// When the store cannot be written, or a rule of its schema forbids it.
    pub fn remove_setting(&self, key: &str) -> Result<bool, StoreError> {
        Ok(self.run("DELETE FROM settings WHERE key = ?1", [key])? > 0)
    }
}

#[cfg(test)]
mod tests {
    use crate::fixture::Fixture;

    #[test]
    fn a_setting_is_kept_replaced_and_forgotten() {
        let f = Fixture::new();
        assert_eq!(f.read(|db| db.setting("link")), None);
        f.write(|tx| tx.set_setting("link", "one"));
        f.write(|tx| tx.set_setting("link", "two"));
        assert_eq!(f.read(|db| db.setting("link")).as_deref(), Some("two"));
        assert!(f.write(|tx| tx.remove_setting("link")));
        assert!(!f.write(|tx| tx.remove_setting("link")));
    }
}
