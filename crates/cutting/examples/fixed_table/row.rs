//! One row of the table: what is asked, what is known of it, what the engine reached.

use std::path::Path;

use cutting::fixed::{Instance, Stages};
use serde_json::Value;

/// The first line of a results file.
pub(crate) const HEAD: &str =
    "instance,stages,trim,turn,limited,sense,best known,known bound,ours,our bound,grade,nodes,seconds";

/// A question with what others found.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Asked {
    pub(crate) instance: String,
    pub(crate) stages: String,
    pub(crate) trim: String,
    pub(crate) turn: String,
    pub(crate) limited: String,
    pub(crate) most: bool,
    pub(crate) best: Option<u64>,
    pub(crate) bound: Option<u64>,
}

/// A measured row.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Row {
    pub(crate) asked: Asked,
    pub(crate) ours: Option<u64>,
    pub(crate) our_bound: u64,
    pub(crate) grade: String,
    pub(crate) nodes: u64,
    pub(crate) seconds: f64,
}

impl Asked {
    pub(crate) fn family(&self) -> &str {
        self.instance.split('/').next().unwrap_or("")
    }

    pub(crate) fn same(&self, other: &Asked) -> bool {
        let key = |a: &Asked| [&a.instance, &a.stages, &a.trim, &a.turn, &a.limited].map(Clone::clone);
        key(self) == key(other)
    }

    /// The question for the engine; `None` for one it does not take.
    pub(crate) fn instance(&self, json: &Value) -> Option<Instance> {
        let stages = match self.stages.as_str() {
            "free" => None,
            runs => Some(Stages { most: runs.parse().ok()?, trim: self.trim == "yes" }),
        };
        let turn = match self.turn.as_str() {
            "yes" => Some(true),
            "no" => Some(false),
            _ => None,
        };
        let mut instance = super::fixed_json::instance(json, turn, self.limited == "yes");
        instance.rules.stages = stages;
        Some(instance)
    }
}

/// The rows of a `best_known.csv` that are about straight cuts; of two of one question the tighter figures.
pub(crate) fn asked(known: &str) -> Vec<Asked> {
    let mut all: Vec<Asked> = Vec::new();
    for row in known.lines().skip(1) {
        let f: Vec<&str> = row.split(',').collect();
        if f[2] != "yes" {
            continue;
        }
        let most = f[1].starts_with("max");
        let [instance, stages, trim, turn, limited] = [f[0], f[3], f[4], f[5], f[6]].map(str::to_owned);
        let (best, bound) = (f[7].parse().ok(), f[8].parse().ok());
        let asked = Asked { instance, stages, trim, turn, limited, most, best, bound };
        let Some(known) = all.iter_mut().find(|other| other.same(&asked)) else {
            all.push(asked);
            continue;
        };
        let tighter = |a: Option<u64>, b: Option<u64>, larger: bool| match (a, b) {
            (Some(a), Some(b)) => Some(if larger { a.max(b) } else { a.min(b) }),
            (a, b) => a.or(b),
        };
        known.best = tighter(known.best, asked.best, most);
        known.bound = tighter(known.bound, asked.bound, !most);
    }
    all
}

impl Row {
    pub(crate) fn line(&self) -> String {
        let a = &self.asked;
        let number = |n: Option<u64>| n.map_or(String::new(), |n| n.to_string());
        format!(
            "{},{},{},{},{},{},{},{},{},{},{},{},{:.6}",
            a.instance,
            a.stages,
            a.trim,
            a.turn,
            a.limited,
            if a.most { "max" } else { "min" },
            number(a.best),
            number(a.bound),
            number(self.ours),
            self.our_bound,
            self.grade,
            self.nodes,
            self.seconds
        )
    }

    /// Better than what others found.
    pub(crate) fn better(&self) -> bool {
        matches!((self.ours, self.asked.best), (Some(ours), Some(best)) if if self.asked.most { ours > best } else { ours < best })
    }

    /// Worse than what others found.
    pub(crate) fn short(&self) -> bool {
        match (self.ours, self.asked.best) {
            (Some(ours), Some(best)) => {
                if self.asked.most {
                    ours < best
                } else {
                    ours > best
                }
            }
            (None, Some(_)) => true,
            (_, None) => false,
        }
    }

    /// Against a proof of others: a fault of theirs or ours.
    pub(crate) fn against(&self) -> bool {
        let a = &self.asked;
        let value = matches!((self.ours, a.bound), (Some(ours), Some(bound)) if if a.most { ours > bound } else { ours < bound });
        let bound = a.best.is_some_and(|best| if a.most { self.our_bound < best } else { self.our_bound > best });
        value || bound
    }

    /// Others say that their value is the best there is.
    pub(crate) fn settled(&self) -> bool {
        self.asked.best.is_some() && self.asked.best == self.asked.bound
    }

    /// What is left between value and bound, of the larger of the two, in per cent.
    pub(crate) fn gap(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "a printed share")]
        let share = |ours: u64| 100.0 * ours.abs_diff(self.our_bound) as f64 / ours.max(self.our_bound).max(1) as f64;
        self.ours.map_or(100.0, share)
    }

    pub(crate) fn mark(&self) -> &'static str {
        match (self.against(), self.short(), self.better()) {
            (true, ..) => " !!!",
            (_, true, _) => " <<<",
            (.., true) => " +++",
            _ => "",
        }
    }
}

/// The rows of a results file; none where it is not there.
pub(crate) fn read(path: &Path) -> Vec<Row> {
    let text = std::fs::read_to_string(path).unwrap_or_default();
    text.lines().skip(1).filter_map(parse).collect()
}

fn parse(line: &str) -> Option<Row> {
    let f: Vec<&str> = line.split(',').collect();
    let [instance, stages, trim, turn, limited] = [0, 1, 2, 3, 4].map(|at| f.get(at).map(|&text| text.to_owned()));
    Some(Row {
        asked: Asked {
            instance: instance?,
            stages: stages?,
            trim: trim?,
            turn: turn?,
            limited: limited?,
            most: *f.get(5)? == "max",
            best: f.get(6)?.parse().ok(),
            bound: f.get(7)?.parse().ok(),
        },
        ours: f.get(8)?.parse().ok(),
        our_bound: f.get(9)?.parse().ok()?,
        grade: (*f.get(10)?).to_owned(),
        nodes: f.get(11)?.parse().ok()?,
        seconds: f.get(12)?.parse().ok()?,
    })
}
