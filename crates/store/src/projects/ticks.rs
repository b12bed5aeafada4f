//! Ticks: which steps are done at the table.

use std::collections::BTreeSet;

use rusqlite::params;

use super::{ProjectId, Projects, StoreError};

impl Projects {
    /// The steps of a project that are ticked.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn ticks(&self, id: ProjectId) -> Result<BTreeSet<String>, StoreError> {
        let mut found = self.connection.prepare_cached("SELECT step FROM tick WHERE project = ?1")?;
        let rows = found.query_map([id.0], |row| row.get(0))?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// Ticks a step that was done then; `None` takes the tick away.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn tick(&mut self, id: ProjectId, step: &str, done: Option<i64>) -> Result<(), StoreError> {
        match done {
            Some(when) => self.connection.execute(
                "INSERT OR REPLACE INTO tick (project, step, ticked_at) VALUES (?1, ?2, ?3)",
                params![id.0, step, when],
            )?,
            None => {
                self.connection.execute("DELETE FROM tick WHERE project = ?1 AND step = ?2", params![id.0, step])?
            }
        };
        Ok(())
    }
}
