//! Pictures: each kept once, however many projects show it.

use std::fmt::Write as _;

use rusqlite::{OptionalExtension, params};
use sha2::{Digest, Sha256};

use super::{ProjectId, Projects, StoreError};

impl Projects {
    /// Keeps a picture under the name by which the project file calls it; gives its hash (SHA-256, hexadecimal).
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn keep_picture(&mut self, id: ProjectId, name: &str, bytes: &[u8]) -> Result<String, StoreError> {
        let mut hash = String::new();
        for byte in Sha256::digest(bytes) {
            // Writing into a text cannot fail.
            let _ = write!(hash, "{byte:02x}");
        }
        let change = self.change()?;
        change.execute("INSERT OR IGNORE INTO picture (hash, bytes) VALUES (?1, ?2)", params![hash, bytes])?;
        change.execute(
            "INSERT OR REPLACE INTO project_picture (project, name, hash) VALUES (?1, ?2, ?3)",
            params![id.0, name, hash],
        )?;
        change.commit()?;
        Ok(hash)
    }

    /// A project's picture by its name.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn picture(&self, id: ProjectId, name: &str) -> Result<Option<Vec<u8>>, StoreError> {
        let found = self.connection.query_row(
            "SELECT bytes FROM picture JOIN project_picture USING (hash) WHERE project = ?1 AND name = ?2",
            params![id.0, name],
            |row| row.get(0),
        );
        Ok(found.optional()?)
    }

    /// A project's picture by its name, or else that of the first project that has one of this name.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn picture_or_others(&self, id: ProjectId, name: &str) -> Result<Option<Vec<u8>>, StoreError> {
        let found = self.connection.query_row(
            "SELECT bytes FROM picture JOIN project_picture USING (hash) WHERE name = ?2 ORDER BY project <> ?1, project LIMIT 1",
            params![id.0, name],
            |row| row.get(0),
        );
        Ok(found.optional()?)
    }

    /// The hash of the picture that any project keeps under a name.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn hash_of_picture(&self, name: &str) -> Result<Option<String>, StoreError> {
        let found = self.connection.query_row(
            "SELECT hash FROM project_picture WHERE name = ?1 ORDER BY project LIMIT 1",
            params![name],
            |row| row.get(0),
        );
        Ok(found.optional()?)
    }

    /// A picture by its hash, whichever project shows it.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn picture_of_hash(&self, hash: &str) -> Result<Option<Vec<u8>>, StoreError> {
        let found =
            self.connection.query_row("SELECT bytes FROM picture WHERE hash = ?1", params![hash], |row| row.get(0));
        Ok(found.optional()?)
    }
}
