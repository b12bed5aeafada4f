//! Opening the file: whose it is, how old it is, and that nobody else has it.

use std::io::Read as _;
use std::path::Path;
use std::time::Duration;

use rusqlite::{Connection, OpenFlags, TransactionBehavior};

use super::{OpenError, Projects, StoreError};

/// Every step from an empty file to today's. Only ever added to: an older file is brought on by those it lacks.
const MIGRATIONS: &[&str] = &[
    include_str!("../../schema/0001_projects.sql"),
    include_str!("../../schema/0002_spoiled.sql"),
    include_str!("../../schema/0003_shelf.sql"),
    include_str!("../../schema/0004_shelf_color.sql"),
];
/// "Octv": says that the file is ours.
pub(super) const OURS: u32 = 0x4f63_7476;
/// How long a lock may take. Chosen: long enough for a program that is just closing, short enough to be told.
const PATIENCE: Duration = Duration::from_millis(400);

impl Projects {
    /// The newest version of the file that this program knows.
    pub const VERSION: u32 = 4;

    /// Opens a file, or begins one where there is none. Its folder must be there.
    ///
    /// # Errors
    /// [`OpenError`]; a file that is not ours, or newer than this program, is left byte for byte as it was.
    pub fn open(path: &Path) -> Result<Projects, OpenError> {
        if std::fs::metadata(path).is_ok_and(|file| file.len() > 0) {
            look(path)?;
        }
        let connection = Connection::open(path)?;
        if connection.is_readonly("main")? {
            return Err(StoreError::ReadOnly.into());
        }
        Projects::ready(connection)
    }

    /// A file in memory only: for tests and trials.
    ///
    /// # Errors
    /// [`OpenError`] if there is no memory for it.
    pub fn in_memory() -> Result<Projects, OpenError> {
        Projects::ready(Connection::open_in_memory()?)
    }

    fn ready(mut connection: Connection) -> Result<Projects, OpenError> {
        connection.busy_timeout(PATIENCE)?;
        // Exclusive: a second program is told at once, instead of two taking turns over one project.
        connection.pragma_update(None, "locking_mode", "EXCLUSIVE")?;
        connection.pragma_update_and_check(None, "journal_mode", "WAL", |_| Ok(()))?;
        connection.pragma_update(None, "synchronous", "FULL")?;
        connection.pragma_update(None, "foreign_keys", true)?;
        let start = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        let from: u32 = start.pragma_query_value(None, "user_version", |row| row.get(0))?;
        for (version, step) in (1_u32..).zip(MIGRATIONS).skip(usize::try_from(from).unwrap_or(usize::MAX)) {
            start.execute_batch(step)?;
            start.pragma_update(None, "user_version", version)?;
            start.pragma_update(None, "application_id", OURS)?;
        }
        start.commit()?;
        Ok(Projects { connection })
    }

    #[cfg(test)]
    pub(super) fn raw(&self) -> &Connection {
        &self.connection
    }
}

/// Looks at a file without being able to change it.
fn look(path: &Path) -> Result<(), OpenError> {
    let connection = Connection::open_with_flags(path, OpenFlags::SQLITE_OPEN_READ_ONLY)?;
    connection.busy_timeout(PATIENCE)?;
    let number = |name: &str| connection.pragma_query_value(None, name, |row| row.get::<_, u32>(0));
    let (whose, found) = (number("application_id")?, number("user_version")?);
    let tables: i64 = connection.query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))?;
    // SQLite takes a very short file for an empty one, and would write over it.
    let mut head = [0_u8; 16];
    let read = std::fs::File::open(path).and_then(|mut file| file.read_exact(&mut head));
    if read.is_err() || head != *b"SQLite format 3\0" {
        return Err(OpenError::NotADatabase);
    }
    if whose != OURS && (whose != 0 || tables > 0) {
        return Err(OpenError::Theirs);
    }
    if found > Projects::VERSION {
        return Err(OpenError::Newer { found, known: Projects::VERSION });
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "tests")]
    use super::*;

    #[test]
    fn a_full_disk_is_told_and_nothing_answered_is_lost() {
        let mut store = Projects::in_memory().unwrap();
        let id = store.add("small", "begun", 1).unwrap();
        let pages: u32 = store.raw().pragma_query_value(None, "page_count", |row| row.get(0)).unwrap();
        // SQLite's own limit gives the same answer as a disk without room.
        store.raw().pragma_update_and_check(None, "max_page_count", pages, |_| Ok(())).unwrap();
        let long = "x".repeat(1 << 20);
        assert_eq!(store.save(id, 1, &long, "long", 2), Err(super::super::SaveError::Store(StoreError::Full)));
        assert_eq!(store.get(id).unwrap().unwrap().now.text, "small");
    }

    #[test]
    fn a_file_that_may_only_be_read_is_told() {
        let mut store = Projects::in_memory().unwrap();
        let id = store.add("small", "begun", 1).unwrap();
        store.raw().pragma_update(None, "query_only", true).unwrap();
        assert_eq!(store.save(id, 1, "x", "", 2), Err(super::super::SaveError::Store(StoreError::ReadOnly)));
        assert_eq!(store.get(id).unwrap().unwrap().now.text, "small");
    }
}
