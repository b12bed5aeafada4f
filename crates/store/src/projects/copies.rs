//! Everything as one file, and back.

use std::path::{Path, PathBuf};

use rusqlite::OptionalExtension;

use super::open::OURS;
use super::{Kept, OpenError, Projects, RestoreError, StoreError};

/// Parents before children.
const TABLES: [&str; 9] =
    ["project", "revision", "picture", "project_picture", "tick", "spoiled", "shelf_item", "shelf_entry", "shelf_hold"];

impl Projects {
    /// Writes everything into a new file at `path`, which must not be there yet.
    ///
    /// # Errors
    /// [`StoreError`] if it cannot be written.
    pub fn backup(&self, path: &Path) -> Result<(), StoreError> {
        let Some(text) = path.to_str() else { return Err(StoreError::Other("a name that is no text".to_owned())) };
        self.connection.execute("VACUUM INTO ?1", [text])?;
        Ok(())
    }

    /// Everything as the bytes of one file; `scratch` is a file name that is free, and free again afterwards.
    ///
    /// # Errors
    /// [`StoreError`] if the scratch file cannot be written.
    pub fn backup_bytes(&self, scratch: &Path) -> Result<Vec<u8>, StoreError> {
        let _gone = Gone(scratch.to_owned());
        self.backup(scratch)?;
        Ok(std::fs::read(scratch)?)
    }

    /// What a backup holds, without bringing it back. `scratch` is a file name that is free, and free again afterwards.
    ///
    /// # Errors
    /// [`RestoreError::Backup`] if it cannot be used.
    pub fn look_into(bytes: &[u8], scratch: &Path) -> Result<Vec<Kept>, RestoreError> {
        let _gone = Gone(scratch.to_owned());
        Ok(checked(bytes, scratch)?.all()?)
    }

    /// Replaces everything by a backup, whole or not at all. `scratch` is a file name that is free, and free again
    /// afterwards. Whoever may want the state before it calls [`Projects::backup`] first.
    ///
    /// # Errors
    /// [`RestoreError`]; everything is then as it was.
    pub fn restore(&mut self, bytes: &[u8], scratch: &Path) -> Result<(), RestoreError> {
        let _gone = Gone(scratch.to_owned());
        drop(checked(bytes, scratch)?);
        let Some(text) = scratch.to_str() else {
            return Err(StoreError::Other("a name that is no text".to_owned()).into());
        };
        self.connection.execute("ATTACH ?1 AS backup", [text])?;
        let copied = self.take_over();
        self.connection.execute("DETACH backup", [])?;
        Ok(copied?)
    }

    fn take_over(&mut self) -> Result<(), rusqlite::Error> {
        let change = self.change()?;
        for table in TABLES.iter().rev() {
            change.execute(&format!("DELETE FROM main.{table}"), [])?;
        }
        for table in TABLES {
            change.execute(&format!("INSERT INTO main.{table} SELECT * FROM backup.{table}"), [])?;
        }
        change.commit()
    }
}

/// A backup, written to `scratch`, opened and found whole.
fn checked(bytes: &[u8], scratch: &Path) -> Result<Projects, RestoreError> {
    is_ours(bytes).map_err(RestoreError::Backup)?;
    std::fs::write(scratch, bytes).map_err(StoreError::from)?;
    // Opening brings an older backup to today's tables.
    let theirs = Projects::open(scratch).map_err(RestoreError::Backup)?;
    let whole: Option<String> = theirs
        .connection
        .query_row("PRAGMA integrity_check(1)", [], |row| row.get(0))
        .optional()
        .map_err(|error| RestoreError::Backup(error.into()))?;
    if whole.as_deref() != Some("ok") {
        let why = StoreError::Damaged(whole.unwrap_or_default());
        return Err(RestoreError::Backup(OpenError::Store(why)));
    }
    Ok(theirs)
}

/// Opening takes an empty file, or one without tables, for a new one; as a backup it would replace everything by nothing.
///
/// # Source
/// SQLite's database header: the first sixteen bytes, and the application's number at 68
/// (<https://sqlite.org/fileformat2.html#the_database_header>).
fn is_ours(bytes: &[u8]) -> Result<(), OpenError> {
    if !bytes.starts_with(b"SQLite format 3\0") {
        return Err(OpenError::NotADatabase);
    }
    if bytes.get(68..72) == Some(&OURS.to_be_bytes()[..]) { Ok(()) } else { Err(OpenError::Theirs) }
}

/// Takes a scratch file and its log away when it goes.
struct Gone(PathBuf);

impl Drop for Gone {
    fn drop(&mut self) {
        for ending in ["", "-wal", "-shm"] {
            let mut name = self.0.clone().into_os_string();
            name.push(ending);
            // It may never have been there.
            let _ = std::fs::remove_file(PathBuf::from(name));
        }
    }
}
