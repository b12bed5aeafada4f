//! Projects with every revision, pictures, and ticks at the table, in one SQLite file.
//!
//! | offers | for |
//! |---|---|
//! | [`Projects::open`] | one file, one program at a time |
//! | [`Projects::add`], [`Projects::save`], [`Projects::undo`], [`Projects::redo`] | revisions: none is ever lost |
//! | [`Projects::put_away`], [`Projects::take_back`] | deleting, and thinking again |
//! | [`Projects::tick`], [`Projects::ticks`] | where somebody is at the table |
//! | [`Projects::spoil`], [`Projects::spoiled`], [`Projects::unspoil`] | what has to be cut again |
//! | [`Projects::shelve`], [`Projects::shelf`], [`Projects::use_up`], [`Projects::give_back`] | supplies, with a ledger |
//! | [`Projects::keep_picture`], [`Projects::picture`] | pictures, each kept once |
//! | [`Projects::backup`], [`Projects::restore`] | everything as one file, and back |
//!
//! What was answered is on the disk: the log is written ahead and forced out before a call returns
//! (`journal_mode=WAL`, `synchronous=FULL`). A save names the revision it saw; if another came first, it is refused
//! with what changed. Left out on purpose: what a revision means (a text here), the time of day (it is told).

mod copies;
mod error;
mod open;
mod pictures;
mod shelf;
mod spoiled;
mod ticks;

use rusqlite::{Connection, OptionalExtension, Transaction, TransactionBehavior, params};

pub use error::{OpenError, RestoreError, SaveError, StoreError};
pub use spoiled::Spoiled;

/// Names a project in one file; never used twice.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ProjectId(pub i64);

/// One state of a project.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Revision {
    /// From 1; never used twice in a project.
    pub number: i64,
    /// The revision that was changed; `None` for the first.
    pub came_from: Option<i64>,
    /// The project file, whole.
    pub text: String,
    /// What changed, in words.
    pub what: String,
    /// Seconds since 1970.
    pub made_at: i64,
}

/// A project as it is now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Kept {
    /// Which.
    pub id: ProjectId,
    /// The revision that is open.
    pub now: Revision,
    /// The revision that a redo would open.
    pub next: Option<i64>,
    /// When it was put away; `None` while it lies on the table.
    pub put_away: Option<i64>,
}

/// The file, open.
#[derive(Debug)]
pub struct Projects {
    connection: Connection,
}

const REVISION: &str = "SELECT number, came_from, text, what, made_at FROM revision WHERE project = ?1 AND number = ?2";

impl Projects {
    /// All projects, the one that was changed last first. Those that were put away are there too.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn all(&self) -> Result<Vec<Kept>, StoreError> {
        let mut found = self.connection.prepare_cached(
            "SELECT project.id FROM project JOIN revision ON revision.project = id AND number = head \
             ORDER BY made_at DESC, id DESC",
        )?;
        let ids = found.query_map([], |row| row.get(0))?.collect::<Result<Vec<i64>, _>>()?;
        let mut all = Vec::new();
        for id in ids {
            all.extend(kept(&self.connection, ProjectId(id))?);
        }
        Ok(all)
    }

    /// One project; `None` if there is no such one.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn get(&self, id: ProjectId) -> Result<Option<Kept>, StoreError> {
        kept(&self.connection, id)
    }

    /// Its revisions, newest first, without their texts (empty here).
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn history(&self, id: ProjectId, most: u32) -> Result<Vec<Revision>, StoreError> {
        let mut found = self.connection.prepare_cached(
            "SELECT number, came_from, '', what, made_at FROM revision WHERE project = ?1 ORDER BY number DESC LIMIT ?2",
        )?;
        let rows = found.query_map(params![id.0, most], revision)?;
        Ok(rows.collect::<Result<_, _>>()?)
    }

    /// One revision of a project.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn revision(&self, id: ProjectId, number: i64) -> Result<Option<Revision>, StoreError> {
        Ok(self.connection.query_row(REVISION, params![id.0, number], revision).optional()?)
    }

    /// A new project.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn add(&mut self, text: &str, what: &str, when: i64) -> Result<ProjectId, StoreError> {
        let change = self.change()?;
        change.execute("INSERT INTO project (head) VALUES (1)", [])?;
        let id = ProjectId(change.last_insert_rowid());
        insert(
            &change,
            id,
            &Revision { number: 1, came_from: None, text: text.into(), what: what.into(), made_at: when },
        )?;
        change.commit()?;
        Ok(id)
    }

    /// A new revision after the one that was `seen`.
    ///
    /// # Errors
    /// [`SaveError::Stale`] if the project has moved on since; nothing is written then.
    pub fn save(&mut self, id: ProjectId, seen: i64, text: &str, what: &str, when: i64) -> Result<Revision, SaveError> {
        let change = self.change()?;
        seen_is_now(&change, id, seen)?;
        let number: i64 =
            change.query_row("SELECT max(number) + 1 FROM revision WHERE project = ?1", [id.0], |row| row.get(0))?;
        let made = Revision { number, came_from: Some(seen), text: text.into(), what: what.into(), made_at: when };
        insert(&change, id, &made)?;
        change.execute("UPDATE project SET head = ?2 WHERE id = ?1", params![id.0, number])?;
        change.commit()?;
        Ok(made)
    }

    /// Opens the revision before the one that was `seen`; `None` if that was the first.
    ///
    /// # Errors
    /// [`SaveError::Stale`] if the project has moved on since.
    pub fn undo(&mut self, id: ProjectId, seen: i64) -> Result<Option<Revision>, SaveError> {
        self.step(id, seen, "SELECT came_from FROM revision WHERE project = ?1 AND number = ?2")
    }

    /// Opens the revision that was made last from the one that was `seen`; `None` if there is none.
    ///
    /// # Errors
    /// [`SaveError::Stale`] if the project has moved on since.
    pub fn redo(&mut self, id: ProjectId, seen: i64) -> Result<Option<Revision>, SaveError> {
        self.step(id, seen, "SELECT max(number) FROM revision WHERE project = ?1 AND came_from = ?2")
    }

    fn step(&mut self, id: ProjectId, seen: i64, to: &str) -> Result<Option<Revision>, SaveError> {
        let change = self.change()?;
        seen_is_now(&change, id, seen)?;
        let to: Option<i64> = change.query_row(to, params![id.0, seen], |row| row.get(0))?;
        let Some(to) = to else { return Ok(None) };
        change.execute("UPDATE project SET head = ?2 WHERE id = ?1", params![id.0, to])?;
        let opened = change.query_row(REVISION, params![id.0, to], revision)?;
        change.commit()?;
        Ok(Some(opened))
    }

    /// Puts a project away; nothing of it is lost.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn put_away(&mut self, id: ProjectId, when: i64) -> Result<(), StoreError> {
        self.connection.execute("UPDATE project SET deleted_at = ?2 WHERE id = ?1", params![id.0, when])?;
        Ok(())
    }

    /// Takes a project back that was put away.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn take_back(&mut self, id: ProjectId) -> Result<(), StoreError> {
        self.connection.execute("UPDATE project SET deleted_at = NULL WHERE id = ?1", [id.0])?;
        Ok(())
    }

    fn change(&mut self) -> Result<Transaction<'_>, rusqlite::Error> {
        self.connection.transaction_with_behavior(TransactionBehavior::Immediate)
    }
}

fn kept(connection: &Connection, id: ProjectId) -> Result<Option<Kept>, StoreError> {
    let found = connection
        .query_row("SELECT head, deleted_at FROM project WHERE id = ?1", [id.0], |row| Ok((row.get(0)?, row.get(1)?)))
        .optional()?;
    let Some((head, put_away)): Option<(i64, Option<i64>)> = found else { return Ok(None) };
    let now = connection.query_row(REVISION, params![id.0, head], revision)?;
    let next = connection.query_row(
        "SELECT max(number) FROM revision WHERE project = ?1 AND came_from = ?2",
        params![id.0, head],
        |row| row.get(0),
    )?;
    Ok(Some(Kept { id, now, next, put_away }))
}

fn seen_is_now(change: &Transaction<'_>, id: ProjectId, seen: i64) -> Result<(), SaveError> {
    let now = kept(change, id)?.ok_or(SaveError::NoProject(id))?.now;
    if now.number == seen {
        return Ok(());
    }
    // Only along the line that is open now: what was undone is no change to what was seen.
    let mut found = change.prepare(
        "WITH RECURSIVE open (number) AS (SELECT ?3 UNION SELECT came_from FROM revision JOIN open USING (number) \
         WHERE project = ?1 AND came_from IS NOT NULL), \
         mine (number) AS (SELECT ?2 UNION SELECT came_from FROM revision JOIN mine USING (number) \
         WHERE project = ?1 AND came_from IS NOT NULL) \
         SELECT number, came_from, '', what, made_at FROM revision WHERE project = ?1 \
         AND number IN (SELECT number FROM open) AND number NOT IN (SELECT number FROM mine) ORDER BY number",
    )?;
    let since = found.query_map(params![id.0, seen, now.number], revision)?.collect::<Result<_, _>>()?;
    Err(SaveError::Stale { now: Box::new(now), since })
}

fn insert(change: &Transaction<'_>, id: ProjectId, made: &Revision) -> Result<(), rusqlite::Error> {
    change.execute(
        "INSERT INTO revision (project, number, came_from, text, what, made_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6)",
        params![id.0, made.number, made.came_from, made.text, made.what, made.made_at],
    )?;
    Ok(())
}

fn revision(row: &rusqlite::Row<'_>) -> Result<Revision, rusqlite::Error> {
    Ok(Revision {
        number: row.get(0)?,
        came_from: row.get(1)?,
        text: row.get(2)?,
        what: row.get(3)?,
        made_at: row.get(4)?,
    })
}
