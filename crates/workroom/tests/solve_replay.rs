//! Source: instances and best known values of `crates/cutting/tests/data` (their heads and `source` fields say whose
//! they are). The printed answers are recounted here from their JSON alone. Whole numbers: no tolerance.
#![allow(clippy::unwrap_used, reason = "tests")]

use std::collections::BTreeMap;
use std::ffi::OsString;
use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use serde_json::Value;

fn data() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../cutting/tests/data")
}

fn run(args: &[&str], out: &mut dyn Write) -> (u8, String) {
    let mut err = Vec::new();
    let code = workroom::cli::run(["octavo"].iter().chain(args).map(OsString::from), out, &mut err);
    (code, String::from_utf8(err).unwrap())
}

/// Every problem the published schema finds in a printed answer.
fn problems(answer: &Value) -> Vec<String> {
    static SCHEMA: LazyLock<jsonschema::Validator> = LazyLock::new(|| {
        let file = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs/schema/solve.schema.json");
        jsonschema::validator_for(&serde_json::from_str(&fs::read_to_string(file).unwrap()).unwrap()).unwrap()
    });
    SCHEMA.iter_errors(answer).map(|error| format!("{}: {error}", error.instance_path())).collect()
}

/// The printed answer to an instance, and the exit code; every answer keeps to the published schema.
fn solve(name: &str, instance: &Value) -> (u8, Value) {
    let file = std::env::temp_dir().join(format!("octavo-replay-{}-{name}.json", std::process::id()));
    fs::write(&file, instance.to_string()).unwrap();
    let mut out = Vec::new();
    let (code, err) = run(&["solve", file.to_str().unwrap(), "--json", "--nodes", "10000000"], &mut out);
    fs::remove_file(&file).unwrap();
    let answer = serde_json::from_slice(&out).unwrap_or_else(|error| panic!("{name}: {error} {err}"));
    assert_eq!(problems(&answer), Vec::<String>::new(), "{name}");
    (code, answer)
}

fn number(value: &Value) -> u64 {
    value.as_u64().unwrap_or_else(|| panic!("{value} is no whole number"))
}

/// A leaf of a printed tree.
struct Leaf {
    slot: usize,
    width: u64,
    height: u64,
    turned: bool,
}

/// Cut a rectangle as the tree says; gives its pieces and what is left over.
fn cut(tree: &Value, width: u64, height: u64, leaves: &mut Vec<Leaf>) -> u64 {
    if tree["waste"] == Value::Bool(true) {
        return width * height;
    }
    if let Some(slot) = tree.get("slot") {
        let leaf = Leaf {
            slot: usize::try_from(number(slot)).unwrap(),
            width: number(&tree["w"]),
            height: number(&tree["h"]),
            turned: tree["turned"].as_bool().unwrap(),
        };
        assert_eq!((leaf.width, leaf.height), (width, height), "a piece fills what was cut for it");
        leaves.push(leaf);
        return 0;
    }
    let at = number(&tree["at"]);
    match tree["cut"].as_str().unwrap() {
        "x" => {
            assert!(0 < at && at < width, "the blade falls on the paper");
            cut(&tree["a"], at, height, leaves) + cut(&tree["b"], width - at, height, leaves)
        }
        "y" => {
            assert!(0 < at && at < height, "the blade falls on the paper");
            cut(&tree["a"], width, at, leaves) + cut(&tree["b"], width, height - at, leaves)
        }
        other => panic!("`{other}` is no cut"),
    }
}

/// Recounts an answer to a fixed instance: cost or value of what the trees really give.
fn recount_fixed(name: &str, instance: &Value, answer: &Value) -> u64 {
    let (sheets, pieces) = (instance["sheets"].as_array().unwrap(), instance["pieces"].as_array().unwrap());
    let stock = instance["kind"] == "stock";
    let mut used: BTreeMap<usize, u64> = BTreeMap::new();
    let mut made = vec![0_u64; pieces.len()];
    for tree in answer["trees"].as_array().unwrap() {
        let sheet = tree.get("sheet").map_or(0, |index| usize::try_from(number(index)).unwrap());
        *used.entry(sheet).or_default() += 1;
        let mut leaves = Vec::new();
        cut(tree, number(&sheets[sheet]["w"]), number(&sheets[sheet]["h"]), &mut leaves);
        for leaf in leaves {
            let piece = &pieces[leaf.slot];
            let asked = (number(&piece["w"]), number(&piece["h"]));
            let stands = if leaf.turned { (leaf.height, leaf.width) } else { (leaf.width, leaf.height) };
            assert_eq!(stands, asked, "{name}: piece {} has its size", leaf.slot);
            assert!(!leaf.turned || piece["rotate"] == true, "{name}: piece {} may not turn", leaf.slot);
            made[leaf.slot] += 1;
        }
    }
    for (sheet, count) in &used {
        let copies = sheets[*sheet]["copies"].as_u64().unwrap_or(u64::MAX);
        assert!(*count <= copies || !stock && *count == 1, "{name}: there are only {copies} of sheet {sheet}");
    }
    for (piece, made) in pieces.iter().zip(&made) {
        let demand = piece["demand"].as_u64();
        if stock {
            assert!(Some(*made) >= demand, "{name}: {made} of {demand:?} made");
        } else {
            assert!(demand.is_none_or(|most| *made <= most), "{name}: {made} of at most {demand:?} made");
            assert!(*made >= piece["min"].as_u64().unwrap_or(0), "{name}: pieces that must appear do");
        }
    }
    if stock {
        used.iter().map(|(sheet, count)| count * sheets[*sheet]["cost"].as_u64().unwrap_or(1)).sum()
    } else {
        pieces.iter().zip(&made).map(|(piece, made)| number(&piece["value"]) * made).sum()
    }
}

/// Best known value by name, for free guillotine cuts with turning as the instance says.
fn best_known(file: &str) -> BTreeMap<String, (u64, bool)> {
    let text = fs::read_to_string(data().join(file)).unwrap();
    let mut rows = text.lines().filter(|line| !line.starts_with('#'));
    let head: Vec<&str> = rows.next().unwrap().split(',').collect();
    let column = |name: &str| head.iter().position(|is| *is == name).unwrap();
    let (instance, best, proven) = (column("instance"), column("best"), column("proven"));
    let (stages, rotation) = (column("stages"), column("rotation"));
    let (guillotine, constrained) = (column("guillotine"), column("constrained"));
    let mut known = BTreeMap::new();
    for row in rows {
        // Quoted cells stand last, so a plain split serves for the columns before them.
        let cells: Vec<&str> = row.split(',').collect();
        let asked = (cells[guillotine], cells[stages], cells[rotation], cells[constrained]);
        let Some(best) = cells[best].parse().ok().filter(|_| asked == ("yes", "free", "no", "yes")) else { continue };
        known.insert(cells[instance].to_owned(), (best, cells[proven] == "yes"));
    }
    known
}

#[test]
fn fixed_answers_are_what_their_trees_give_and_never_beat_a_proven_best() {
    let known = best_known("bench_small_best_known.csv");
    let (mut recounted, mut compared) = (0, 0);
    for line in fs::read_to_string(data().join("bench_small.jsonl")).unwrap().lines() {
        let instance: Value = serde_json::from_str(line).unwrap();
        let name = format!("{}/{}", instance["family"].as_str().unwrap(), instance["name"].as_str().unwrap());
        let (code, answer) = solve(&name.replace('/', "-"), &instance);
        assert!(code < 2, "{name}");
        if answer["trees"].as_array().unwrap().is_empty() {
            continue;
        }
        recounted += 1;
        let stock = instance["kind"] == "stock";
        let counted = recount_fixed(&name, &instance, &answer);
        let sheets = u64::try_from(answer["trees"].as_array().unwrap().len()).unwrap();
        let told =
            if stock { answer.get("cost").map_or(number(&answer["sheets"]), number) } else { number(&answer["value"]) };
        assert_eq!(counted, told, "{name}: the sum told is the sum of its trees");
        if stock {
            assert_eq!(sheets, number(&answer["sheets"]), "{name}");
        }
        let bound = number(&answer["bound"]);
        assert!(if stock { bound <= counted } else { bound >= counted }, "{name}: bound {bound}, found {counted}");
        let turns = instance["pieces"].as_array().unwrap().iter().any(|piece| piece["rotate"] == true);
        if let Some((best, proven)) = known.get(&name).filter(|_| !turns) {
            compared += 1;
            if *proven {
                assert!(if stock { counted >= *best } else { counted <= *best }, "{name}: {counted} beats {best}");
            }
            if answer["grade"] == "proven best" {
                assert!(if stock { counted <= *best } else { counted >= *best }, "{name}: {counted}, known {best}");
            }
        }
    }
    assert!(recounted >= 30 && compared >= 10, "{recounted} recounted, {compared} compared");
}

/// Cut a rectangle as the tree says: every strip it leaves, and where its pieces lie, from the left and the bottom.
fn placed(tree: &Value, [x, y, w, h]: [u64; 4], strips: &mut Vec<u64>, pieces: &mut Vec<[u64; 4]>) {
    let Some(axis) = tree.get("cut") else {
        pieces.extend(tree.get("slot").map(|_| [x, y, w, h]));
        return;
    };
    let at = number(&tree["at"]);
    let (a, b, side) = match axis.as_str().unwrap() {
        "x" => ([x, y, at, h], [x + at, y, w - at, h], w),
        _ => ([x, y, w, at], [x, y + at, w, h - at], h),
    };
    strips.push(at.min(side - at));
    placed(&tree["a"], a, strips, pieces);
    placed(&tree["b"], b, strips, pieces);
}

/// Turns of the sheet between cuts, the first run of cuts counted.
fn runs(tree: &Value, along: &str) -> u64 {
    let Some(axis) = tree["cut"].as_str() else { return 0 };
    u64::from(axis != along) + runs(&tree["a"], axis).max(runs(&tree["b"], axis))
}

#[test]
fn rules_and_edges_of_a_question_are_kept() {
    let plain: Value = serde_json::json!({
        "format": "cutbench-1", "kind": "stock", "sheets": [{"w": 100, "h": 80}],
        "pieces": [{"w": 31, "h": 22, "demand": 14, "rotate": true}, {"w": 45, "h": 17, "demand": 9}],
    });
    let with = |rules: Value, edges: Value| {
        let mut asked = plain.clone();
        (asked["rules"], asked["sheets"][0]["edges"]) = (rules, edges);
        asked
    };
    let none = || serde_json::json!({});
    let cases = [
        ("edges", none(), serde_json::json!({"left": 3, "right": 1, "top": 7, "bottom": 2})),
        ("strips", serde_json::json!({"least_strip": 6}), none()),
        ("stages", serde_json::json!({"stages": 2}), none()),
        ("trimmed", serde_json::json!({"stages": 2, "trim": true}), none()),
        ("both", serde_json::json!({"least_strip": 4}), serde_json::json!({"left": 5, "bottom": 4})),
    ];
    let free = recount_fixed("plain", &plain, &solve("plain", &plain).1);
    for (name, rules, edges) in cases {
        let asked = with(rules.clone(), edges.clone());
        let (code, answer) = solve(name, &asked);
        assert_eq!(code, 0, "{name}: {answer}");
        assert!(recount_fixed(name, &asked, &answer) >= free, "{name}: fewer than without rules");
        let edge = |side: &str| edges.get(side).map_or(0, number);
        let least = rules.get("least_strip").map_or(1, number);
        let most = rules.get("stages").map_or(99, number) + u64::from(rules.get("trim").is_some());
        for tree in answer["trees"].as_array().unwrap() {
            let (mut strips, mut pieces) = (Vec::new(), Vec::new());
            placed(tree, [0, 0, 100, 80], &mut strips, &mut pieces);
            assert!(strips.iter().all(|&strip| strip >= least), "{name}: {strips:?}");
            assert!(runs(tree, "") <= most, "{name}: {tree}");
            for [x, y, w, h] in pieces {
                let inside = x >= edge("left") && x + w <= 100 - edge("right");
                assert!(inside && y >= edge("bottom") && y + h <= 80 - edge("top"), "{name}: {x} {y} {w} {h}");
            }
        }
    }
}

#[test]
fn flexible_answers_are_what_their_trees_give_and_reach_the_witness() {
    let mut names: Vec<PathBuf> = fs::read_dir(data().join("flex")).unwrap().map(|e| e.unwrap().path()).collect();
    names.sort();
    let mut none_wasted = 0;
    for path in &names {
        let instance: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
        let name = path.file_stem().unwrap().to_str().unwrap();
        let (code, answer) = solve(name, &instance);
        assert_eq!(code, 0, "{name}");
        let (width, height) = (number(&instance["sheet"]["w"]), number(&instance["sheet"]["h"]));
        let mut leaves = Vec::new();
        let waste = cut(&answer["trees"][0], width, height, &mut leaves);
        assert_eq!(waste, number(&answer["waste"]), "{name}: the waste told is what the tree leaves");
        if instance.get("witness").is_some_and(Value::is_object) {
            none_wasted += 1;
            assert_eq!(waste, 0, "{name}: a way without waste exists by construction");
        }
        for (index, slot) in instance["slots"].as_array().unwrap().iter().enumerate() {
            let own: Vec<(u64, u64)> = leaves
                .iter()
                .filter(|leaf| leaf.slot == index)
                .inspect(|leaf| assert!(!leaf.turned || slot["rotate"] == true, "{name}: slot {index} may not turn"))
                .map(|leaf| if leaf.turned { (leaf.height, leaf.width) } else { (leaf.width, leaf.height) })
                .collect();
            let wanted = number(&instance["cards"]) * slot["count"].as_u64().unwrap_or(1);
            assert_eq!(u64::try_from(own.len()).unwrap(), wanted, "{name}: slot {index}");
            let step = slot["step"].as_u64().unwrap_or(1);
            for (w, h) in &own {
                for (side, range) in [(*w, &slot["w"]), (*h, &slot["h"])] {
                    assert!(number(&range[0]) <= side && side <= number(&range[1]), "{name}: {side} in {range}");
                    assert_eq!(side % step, 0, "{name}: {side} is a multiple of {step}");
                }
            }
            assert!(slot["uniform"] != true || own.windows(2).all(|pair| pair[0] == pair[1]), "{name}: one size");
        }
    }
    assert!(names.len() >= 20 && none_wasted >= 15, "{} files, {none_wasted} with a witness", names.len());
}

#[test]
fn the_schema_refuses_answers_with_a_hole_in_them() {
    let file = data().join("flex/flex-04-uniform.json");
    let (_, good) = solve("holes", &serde_json::from_str(&fs::read_to_string(file).unwrap()).unwrap());
    assert!(good["trees"][0]["cut"].is_string(), "{good}");
    for (at, value) in [
        ("/grade", Value::from("rather good")),
        ("/nodes", Value::from(-1)),
        ("/trees", Value::Null),
        ("/trees/0/cut", Value::from("z")),
        ("/trees/0/at", Value::from("3 in")),
        ("/trees/0/a", Value::from("waste")),
    ] {
        let mut bad = good.clone();
        *bad.pointer_mut(at).unwrap() = value;
        assert!(!problems(&bad).is_empty(), "{at}");
    }
}

/// A reader that goes away after so many bytes.
struct GoesAway(usize);

impl Write for GoesAway {
    fn write(&mut self, bytes: &[u8]) -> io::Result<usize> {
        if self.0 == 0 {
            return Err(io::Error::from(io::ErrorKind::BrokenPipe));
        }
        let taken = bytes.len().min(self.0);
        self.0 -= taken;
        Ok(taken)
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[test]
fn a_reader_that_goes_away_is_no_failure() {
    let file = data().join("flex/flex-04-uniform.json");
    for bytes in [0, 1, 40] {
        let (code, err) = run(&["solve", file.to_str().unwrap(), "--json"], &mut GoesAway(bytes));
        assert_eq!((code, err.as_str()), (0, ""), "after {bytes} bytes");
        let (code, err) = run(&["help"], &mut GoesAway(bytes));
        assert_eq!((code, err.as_str()), (0, ""), "after {bytes} bytes");
    }
}

/// A disk that is full.
struct Full;

impl Write for Full {
    fn write(&mut self, _: &[u8]) -> io::Result<usize> {
        Err(io::Error::from(io::ErrorKind::StorageFull))
    }

    fn flush(&mut self) -> io::Result<()> {
        Ok(())
    }
}

#[test]
fn an_answer_that_cannot_be_written_is_told() {
    let file = data().join("flex/flex-04-uniform.json");
    let (code, err) = run(&["solve", file.to_str().unwrap(), "--json"], &mut Full);
    assert_eq!(code, 2);
    assert!(err.contains("could not be written"), "{err}");
}

#[test]
fn a_closed_pipe_of_the_real_program_is_no_failure() {
    let file = data().join("flex/flex-04-uniform.json");
    let mut child = std::process::Command::new(env!("CARGO_BIN_EXE_octavo"))
        .args(["solve", file.to_str().unwrap(), "--json"])
        .stdout(std::process::Stdio::piped())
        .stderr(std::process::Stdio::piped())
        .spawn()
        .unwrap();
    // Nobody reads: the end of the pipe is closed before the answer comes.
    drop(child.stdout.take());
    let ended = child.wait_with_output().unwrap();
    assert_eq!(ended.status.code(), Some(0), "{}", String::from_utf8_lossy(&ended.stderr));
    assert!(ended.stderr.is_empty(), "{}", String::from_utf8_lossy(&ended.stderr));
}
