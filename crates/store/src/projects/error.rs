//! What can go wrong with the file, as facts.

use rusqlite::ErrorCode;

use super::{ProjectId, Revision};

/// Why the file could not be read or written just now. What was answered before is kept.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum StoreError {
    /// No room is left on the disk.
    #[error("the disk is full")]
    Full,
    /// The disk took nothing more, without saying that it is full: a quota is used up, a file may not get larger, or
    /// the disk is damaged.
    #[error("nothing more could be written: {0}")]
    Unwritten(String),
    /// The file, its folder or its disk may only be read.
    #[error("the file may only be read")]
    ReadOnly,
    /// Another program has it open.
    #[error("the file is open elsewhere")]
    InUse,
    /// It is damaged, or something else than a file of ours.
    #[error("the file is damaged: {0}")]
    Damaged(String),
    /// Anything else that SQLite or the disk said.
    #[error("{0}")]
    Other(String),
}

impl From<rusqlite::Error> for StoreError {
    fn from(error: rusqlite::Error) -> StoreError {
        match error.sqlite_error_code() {
            Some(ErrorCode::DiskFull) => StoreError::Full,
            Some(ErrorCode::ReadOnly) => StoreError::ReadOnly,
            Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked | ErrorCode::FileLockingProtocolFailed) => {
                StoreError::InUse
            }
            Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => StoreError::Damaged(error.to_string()),
            Some(ErrorCode::SystemIoFailure) if unwritten(&error) => StoreError::Unwritten(error.to_string()),
            _ => StoreError::Other(error.to_string()),
        }
    }
}

/// True if it was a write that the disk refused (SQLite's extended result codes, <https://sqlite.org/rescode.html>).
fn unwritten(error: &rusqlite::Error) -> bool {
    const WRITES: [i32; 4] = [
        rusqlite::ffi::SQLITE_IOERR_WRITE,
        rusqlite::ffi::SQLITE_IOERR_FSYNC,
        rusqlite::ffi::SQLITE_IOERR_DIR_FSYNC,
        rusqlite::ffi::SQLITE_IOERR_TRUNCATE,
    ];
    error.sqlite_error().is_some_and(|error| WRITES.contains(&error.extended_code))
}

impl From<std::io::Error> for StoreError {
    fn from(error: std::io::Error) -> StoreError {
        match error.kind() {
            std::io::ErrorKind::StorageFull => StoreError::Full,
            std::io::ErrorKind::QuotaExceeded | std::io::ErrorKind::FileTooLarge => {
                StoreError::Unwritten(error.to_string())
            }
            std::io::ErrorKind::ReadOnlyFilesystem | std::io::ErrorKind::PermissionDenied => StoreError::ReadOnly,
            _ => StoreError::Other(error.to_string()),
        }
    }
}

/// Why a file could not be opened. It is as it was.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum OpenError {
    /// It is no SQLite file.
    #[error("it is no database")]
    NotADatabase,
    /// It is somebody else's SQLite file.
    #[error("it is another program's database")]
    Theirs,
    /// A later Octavo wrote it.
    #[error("a later version wrote it: {found}, this one knows {known}")]
    Newer {
        /// Its version.
        found: u32,
        /// The latest that this program knows.
        known: u32,
    },
    /// Anything else.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<rusqlite::Error> for OpenError {
    fn from(error: rusqlite::Error) -> OpenError {
        match error.sqlite_error_code() {
            Some(ErrorCode::NotADatabase) => OpenError::NotADatabase,
            _ => OpenError::Store(error.into()),
        }
    }
}

/// Why a revision was not kept. Nothing was written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum SaveError {
    /// Another save came first.
    #[error("the project has moved on to revision {}", now.number)]
    Stale {
        /// What the project is now.
        now: Box<Revision>,
        /// What was made since the revision that was seen, oldest first, without texts.
        since: Vec<Revision>,
    },
    /// There is no such project.
    #[error("there is no project {0:?}")]
    NoProject(ProjectId),
    /// The file could not be written.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<rusqlite::Error> for SaveError {
    fn from(error: rusqlite::Error) -> SaveError {
        SaveError::Store(error.into())
    }
}

/// Why a backup was not brought back. Everything is as it was.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum RestoreError {
    /// The backup cannot be opened.
    #[error("the backup cannot be used: {0}")]
    Backup(OpenError),
    /// The file could not be written.
    #[error(transparent)]
    Store(#[from] StoreError),
}

impl From<rusqlite::Error> for RestoreError {
    fn from(error: rusqlite::Error) -> RestoreError {
        RestoreError::Store(error.into())
    }
}
