//! The shelf in the file: items, the ledger, what is laid aside.

use std::str::FromStr;

use rusqlite::{Connection, OptionalExtension, Row, params};
use rust_decimal::Decimal;

use super::{ProjectId, Projects, StoreError};
use crate::shelf::{Entry, Item, ShelfError, Shelved};

/// Amounts are written by us alone; one that cannot be read counts as nothing.
fn decimal(text: &str) -> Decimal {
    Decimal::from_str(text).unwrap_or_default()
}

const ITEM: &str =
    "SELECT id, revision, kind, name, unit, price, buys, currency, priced_on, place, color FROM shelf_item";

impl Projects {
    /// Everything on the shelf, by kind and name.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn shelf(&self) -> Result<Vec<Shelved>, StoreError> {
        let mut found =
            self.connection.prepare_cached(&format!("{ITEM} WHERE gone_at IS NULL ORDER BY kind, name, id"))?;
        let rows = found.query_map([], bare)?.collect::<Result<Vec<_>, _>>()?;
        rows.into_iter().map(|item| whole(&self.connection, item)).collect()
    }

    /// What became of an item, oldest first.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be read.
    pub fn shelf_ledger(&self, id: i64) -> Result<Vec<Entry>, StoreError> {
        Ok(ledger(&self.connection, id)?)
    }

    /// Puts an item on the shelf, or changes one that was `seen` with its revision. Its amount is what was counted; `why`
    /// says `counted` or `bought`.
    ///
    /// # Errors
    /// [`ShelfError`]; nothing is written then.
    pub fn shelve(&mut self, item: &Item, seen: Option<(i64, i64)>, why: &str, when: i64) -> Result<i64, ShelfError> {
        item.check()?;
        let change = self.change()?;
        let id = shelve(&change, item, seen, why, when)?;
        change.commit()?;
        Ok(id)
    }

    /// Puts many items on the shelf, all or none: one of the same kind and name is replaced by what was counted.
    ///
    /// # Errors
    /// [`ShelfError`]; nothing is written then.
    pub fn shelve_all(&mut self, items: &[Item], when: i64) -> Result<(), ShelfError> {
        let change = self.change()?;
        for item in items {
            item.check()?;
            let known = all(&change)?.into_iter().find(|known| known.item.is_alike(&item.kind, &item.name));
            shelve(&change, item, known.map(|known| (known.id, known.revision)), "counted", when)?;
        }
        change.commit()?;
        Ok(())
    }

    /// Takes an item off the shelf; its ledger is kept.
    ///
    /// # Errors
    /// [`ShelfError::Stale`] if it was changed since it was `seen`, [`ShelfError::Gone`].
    pub fn unshelve(&mut self, seen: (i64, i64), when: i64) -> Result<(), ShelfError> {
        let change = self.change()?;
        unmoved(&change, seen)?;
        change.execute("DELETE FROM shelf_hold WHERE item = ?1", [seen.0])?;
        change.execute(
            "UPDATE shelf_item SET gone_at = ?2, revision = revision + 1 WHERE id = ?1",
            params![seen.0, when],
        )?;
        change.commit()?;
        Ok(())
    }

    /// Lays aside for a project what its plan needs: as much of each as is there and free. What it had laid aside before
    /// is put back.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn lay_aside(&mut self, project: ProjectId, needs: &[(i64, Decimal)]) -> Result<(), StoreError> {
        let change = self.change()?;
        change.execute("DELETE FROM shelf_hold WHERE project = ?1", [project.0])?;
        for shelved in all(&change)? {
            let wanted: Decimal = needs.iter().filter(|(id, _)| *id == shelved.id).map(|(_, amount)| *amount).sum();
            let amount = wanted.min(shelved.free_for(project));
            if amount > Decimal::ZERO {
                change.execute(
                    "INSERT INTO shelf_hold (item, project, amount) VALUES (?1, ?2, ?3)",
                    params![shelved.id, project.0, amount.to_string()],
                )?;
            }
        }
        change.commit()?;
        Ok(())
    }

    /// Uses up what a part of a project took, once: a part that was used and not returned is left as it is. No amount
    /// goes below nothing; what was not there is written beside.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn use_up(
        &mut self,
        project: ProjectId,
        part: &str,
        takes: &[(i64, Decimal)],
        when: i64,
    ) -> Result<(), StoreError> {
        let change = self.change()?;
        if used(&change, project, part)?.is_empty() {
            for shelved in all(&change)? {
                let wanted: Decimal = takes.iter().filter(|(id, _)| *id == shelved.id).map(|(_, amount)| *amount).sum();
                if wanted <= Decimal::ZERO {
                    continue;
                }
                let taken = wanted.min(shelved.item.amount);
                let entry = Entry {
                    why: "used".to_owned(),
                    amount: -taken,
                    short: wanted - taken,
                    there: Decimal::ZERO,
                    project: Some(project),
                    part: Some(part.to_owned()),
                    made_at: when,
                };
                write(&change, shelved.id, &entry)?;
                let own = shelved.held.iter().find(|(of, _)| *of == project).map_or(Decimal::ZERO, |(_, own)| *own);
                let still = (own - wanted).max(Decimal::ZERO);
                change.execute(
                    "UPDATE shelf_hold SET amount = ?3 WHERE item = ?1 AND project = ?2",
                    params![shelved.id, project.0, still.to_string()],
                )?;
            }
        }
        change.commit()?;
        Ok(())
    }

    /// Gives back what a part of a project used up; nothing if it did not.
    ///
    /// # Errors
    /// [`StoreError`] if the file cannot be written.
    pub fn give_back(&mut self, project: ProjectId, part: &str, when: i64) -> Result<(), StoreError> {
        let change = self.change()?;
        for (item, amount) in used(&change, project, part)? {
            let entry = Entry {
                why: "returned".to_owned(),
                amount,
                short: Decimal::ZERO,
                there: Decimal::ZERO,
                project: Some(project),
                part: Some(part.to_owned()),
                made_at: when,
            };
            write(&change, item, &entry)?;
        }
        change.commit()?;
        Ok(())
    }
}

fn bare(row: &Row<'_>) -> Result<Shelved, rusqlite::Error> {
    let number = |at: usize| row.get::<_, Option<String>>(at).map(|text| text.as_deref().map(decimal));
    let item = Item {
        kind: row.get(2)?,
        name: row.get(3)?,
        amount: Decimal::ZERO,
        unit: row.get(4)?,
        price: number(5)?,
        buys: number(6)?,
        currency: row.get(7)?,
        priced_on: row.get(8)?,
        place: row.get(9)?,
        color: row.get(10)?,
    };
    Ok(Shelved { id: row.get(0)?, revision: row.get(1)?, item, held: Vec::new() })
}

/// With what is there and what is laid aside; what a project that was put away had laid aside is free.
fn whole(connection: &Connection, mut shelved: Shelved) -> Result<Shelved, StoreError> {
    let mut entries = connection.prepare_cached("SELECT amount FROM shelf_entry WHERE item = ?1")?;
    let amounts = entries.query_map([shelved.id], |row| row.get::<_, String>(0))?.collect::<Result<Vec<_>, _>>()?;
    shelved.item.amount = amounts.iter().map(|amount| decimal(amount)).sum();
    let mut holds = connection.prepare_cached(
        "SELECT shelf_hold.project, amount FROM shelf_hold JOIN project ON project.id = shelf_hold.project
         WHERE item = ?1 AND deleted_at IS NULL ORDER BY shelf_hold.project",
    )?;
    let rows = holds.query_map([shelved.id], |row| Ok((ProjectId(row.get(0)?), row.get::<_, String>(1)?)))?;
    for row in rows {
        let (project, amount) = row?;
        let amount = decimal(&amount);
        shelved.held.extend((!amount.is_zero()).then_some((project, amount)));
    }
    Ok(shelved)
}

fn all(connection: &Connection) -> Result<Vec<Shelved>, StoreError> {
    let mut found = connection.prepare_cached(&format!("{ITEM} WHERE gone_at IS NULL ORDER BY id"))?;
    let rows = found.query_map([], bare)?.collect::<Result<Vec<_>, _>>()?;
    rows.into_iter().map(|item| whole(connection, item)).collect()
}

fn ledger(connection: &Connection, id: i64) -> Result<Vec<Entry>, rusqlite::Error> {
    let mut found = connection.prepare_cached(
        "SELECT why, amount, short, project, part, made_at FROM shelf_entry WHERE item = ?1 ORDER BY id",
    )?;
    let rows = found.query_map([id], |row| {
        Ok(Entry {
            why: row.get(0)?,
            amount: decimal(&row.get::<_, String>(1)?),
            short: decimal(&row.get::<_, String>(2)?),
            there: Decimal::ZERO,
            project: row.get::<_, Option<i64>>(3)?.map(ProjectId),
            part: row.get(4)?,
            made_at: row.get(5)?,
        })
    })?;
    let mut entries: Vec<Entry> = rows.collect::<Result<_, _>>()?;
    let mut there = Decimal::ZERO;
    for entry in &mut entries {
        there += entry.amount;
        entry.there = there;
    }
    Ok(entries)
}

/// The item as it is, if it has not moved on since its revision was seen.
fn unmoved(change: &Connection, (id, revision): (i64, i64)) -> Result<Shelved, ShelfError> {
    let found = change.query_row(&format!("{ITEM} WHERE id = ?1 AND gone_at IS NULL"), [id], bare).optional()?;
    let now = whole(change, found.ok_or(ShelfError::Gone)?)?;
    if now.revision == revision {
        return Ok(now);
    }
    // Every revision after the first wrote at most one entry: the last ones are those since.
    let entries = ledger(change, id)?;
    let since = usize::try_from(now.revision - revision).unwrap_or(usize::MAX);
    let since = entries[entries.len().saturating_sub(since)..].to_vec();
    Err(ShelfError::Stale { now: Box::new(now), since })
}

fn shelve(change: &Connection, item: &Item, seen: Option<(i64, i64)>, why: &str, when: i64) -> Result<i64, ShelfError> {
    let others = all(change)?;
    let own = seen.map(|(id, _)| id);
    if others.iter().any(|other| Some(other.id) != own && other.item.is_alike(&item.kind, &item.name)) {
        return Err(ShelfError::Taken(item.name.clone()));
    }
    let text = |number: Option<Decimal>| number.map(|number| number.to_string());
    let Item { kind, name, amount, unit, price, buys, currency, priced_on, place, color } = item;
    let (id, there) = match seen {
        None => {
            change.execute(
                "INSERT INTO shelf_item (kind, name, unit, price, buys, currency, priced_on, place, color, revision)
                 VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, 0)",
                params![kind, name.trim(), unit, text(*price), text(*buys), currency, priced_on, place, color],
            )?;
            let id: i64 = change.query_row("SELECT max(id) FROM shelf_item", [], |row| row.get(0))?;
            (id, Decimal::ZERO)
        }
        Some(seen) => {
            let there = unmoved(change, seen)?.item.amount;
            change.execute(
                "UPDATE shelf_item SET kind = ?2, name = ?3, unit = ?4, price = ?5, buys = ?6, currency = ?7,
                 priced_on = ?8, place = ?9, color = ?10 WHERE id = ?1",
                params![seen.0, kind, name.trim(), unit, text(*price), text(*buys), currency, priced_on, place, color],
            )?;
            (seen.0, there)
        }
    };
    let entry = Entry {
        why: why.to_owned(),
        amount: *amount - there,
        short: Decimal::ZERO,
        there: Decimal::ZERO,
        project: None,
        part: None,
        made_at: when,
    };
    write(change, id, &entry)?;
    Ok(id)
}

/// A line of the ledger, and one revision more.
fn write(change: &Connection, item: i64, entry: &Entry) -> Result<(), rusqlite::Error> {
    change.execute(
        "INSERT INTO shelf_entry (item, why, amount, short, project, part, made_at) VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7)",
        params![
            item,
            entry.why,
            entry.amount.to_string(),
            entry.short.to_string(),
            entry.project.map(|project| project.0),
            entry.part,
            entry.made_at
        ],
    )?;
    change.execute("UPDATE shelf_item SET revision = revision + 1 WHERE id = ?1", [item])?;
    Ok(())
}

/// What a part of a project has used up and not returned, by item.
fn used(change: &Connection, project: ProjectId, part: &str) -> Result<Vec<(i64, Decimal)>, rusqlite::Error> {
    let mut found = change.prepare_cached(
        "SELECT item, why, amount, short FROM shelf_entry WHERE project = ?1 AND part = ?2 ORDER BY id",
    )?;
    let rows = found.query_map(params![project.0, part], |row| {
        Ok((row.get::<_, i64>(0)?, row.get::<_, String>(1)?, decimal(&row.get::<_, String>(2)?)))
    })?;
    let mut open: Vec<(i64, Decimal)> = Vec::new();
    for row in rows {
        let (item, why, amount) = row?;
        match why.as_str() {
            "used" => open.push((item, -amount)),
            _ => open.retain(|(of, _)| *of != item),
        }
    }
    Ok(open)
}
