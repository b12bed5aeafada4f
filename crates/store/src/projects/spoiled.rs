//! Spoiled pieces: what has to be cut again.

use rusqlite::params;

use super::{ProjectId, Projects, StoreError};

/// One piece that was spoiled.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spoiled {
    /// Names it in the file; never used twice.
    pub id: i64,
    /// Which piece, as the pages name it.
    pub piece: String,
}

impl Projects {
    /// The spoiled pieces of a project, the first one first.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn spoiled(&self, id: ProjectId) -> Result<Vec<Spoiled>, StoreError> {
        let mut found =
            self.connection.prepare_cached("SELECT id, piece FROM spoiled WHERE project = ?1 ORDER BY id")?;
        let rows = found.query_map([id.0], |row| Ok(Spoiled { id: row.get(0)?, piece: row.get(1)? }))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Writes down that a piece was spoiled then.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn spoil(&mut self, id: ProjectId, piece: &str, when: i64) -> Result<(), StoreError> {
        self.connection.execute(
            "INSERT INTO spoiled (project, piece, spoiled_at) VALUES (?1, ?2, ?3)",
            params![id.0, piece, when],
        )?;
        Ok(())
    }

    /// Takes a spoiled piece back. What was spoiled after it may be cut from something else then.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn unspoil(&mut self, id: ProjectId, spoiled: i64) -> Result<(), StoreError> {
        self.connection.execute("DELETE FROM spoiled WHERE project = ?1 AND id = ?2", params![id.0, spoiled])?;
        Ok(())
    }
}
