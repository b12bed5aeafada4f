//! `octavo post`, `octavo supplies`, `octavo class`: what the pages of those names say.

use std::io::Write as _;
use std::path::PathBuf;

use cards::buying::{ColourSwap, card_shares, colour_swap, needs, recolor, shopping, used};
use cards::class::{ClassPlan, class};
use cards::days::Day;
use cards::mailing::mailings;
use cards::{Plan, Severity};
use clap::{Arg, ArgAction, ArgMatches, Command, value_parser};
use drawing::sheets::worded;
use drawing::sheets::{Edition, Paper};
use rust_decimal::Decimal;
use serde_json::json;
use words::say;

use super::ask::{Source, file};
use super::clock::seconds_now;
use super::make::{planned, project};
use super::{Desk, Done, Refusal};
use crate::trade;

/// Which of the three.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Verb {
    /// `octavo post`, with a template to write.
    Post(Option<PathBuf>),
    /// `octavo supplies`, with a table of the shelf and a project file to write with the swap of colours.
    Supplies(Option<PathBuf>, Option<PathBuf>),
    /// `octavo class`, for a day, with labels to write on some sheets.
    Class(Option<Day>, Option<PathBuf>, String),
}

/// What was asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Request {
    verb: Verb,
    source: Source,
    json: bool,
}

impl Request {
    pub(super) fn read(verb: &str, given: &ArgMatches) -> Request {
        let verb = match verb {
            "post" => Verb::Post(given.get_one::<PathBuf>("envelope").cloned()),
            "supplies" => {
                Verb::Supplies(given.get_one::<PathBuf>("shelf").cloned(), given.get_one::<PathBuf>("swapped").cloned())
            }
            _ => Verb::Class(
                given.get_one::<Day>("today").copied(),
                given.get_one::<PathBuf>("labels").cloned(),
                given.get_one::<String>("on").cloned().unwrap_or_default(),
            ),
        };
        let file = given.get_one::<PathBuf>("file");
        let source = file.map_or(Source::Demo, |file| Source::File(file.clone()));
        Request { verb, source, json: given.get_flag("json") }
    }
}

fn command(name: &'static str, about: String, examples: String, json: String) -> Command {
    Command::new(name)
        .about(about)
        .after_help(examples)
        .arg(file())
        .arg(Arg::new("demo").long("demo").action(ArgAction::SetTrue).help(say("help-make.demo", &[])))
        .arg(Arg::new("json").long("json").action(ArgAction::SetTrue).help(json))
}

/// The three commands.
pub(super) fn commands() -> [Command; 3] {
    let path = |name: &'static str, help: String| {
        Arg::new(name).long(name).value_name("FILE").value_parser(value_parser!(PathBuf)).help(help)
    };
    let post = command("post", say("help-post", &[]), say("help-post.examples", &[]), say("help-post.json", &[]));
    let supplies = command(
        "supplies",
        say("help-supplies", &[]),
        say("help-supplies.examples", &[]),
        say("help-supplies.json", &[]),
    );
    let class = command("class", say("help-class", &[]), say("help-class.examples", &[]), say("help-class.json", &[]));
    let day = |text: &str| Day::parse(text).ok_or_else(|| say("refused-day", &[("found", text.into())]));
    [
        post.arg(path("envelope", say("help-post.envelope", &[]))),
        supplies
            .arg(path("shelf", say("help-supplies.shelf", &[])))
            .arg(path("swapped", say("help-supplies.swapped", &[]))),
        class
            .arg(Arg::new("today").long("today").value_name("DAY").value_parser(day).help(say("help-class.today", &[])))
            .arg(path("labels", say("help-class.labels", &[])))
            .arg(
                Arg::new("on")
                    .long("on")
                    .value_name("SHEET")
                    .value_parser(["plain", "three-ten", "two-five", "two-seven"])
                    .default_value("plain")
                    .help(say("help-class.on", &[])),
            ),
    ]
}

/// Plan, then say what was asked.
pub(super) fn run(request: &Request, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let project = project(&request.source)?;
    let shelf = match &request.verb {
        Verb::Supplies(Some(path), _) => shelf(path)?,
        _ => Vec::new(),
    };
    let plan = planned(&project, desk);
    match &request.verb {
        Verb::Post(envelope) => {
            if let Some(path) = envelope {
                let edition = Edition::plain(&plan, Paper::usual(plan.project.unit));
                written(path, &crate::labels::envelopes(&plan, &edition))?;
            }
            post(&plan, request.json, desk)
        }
        Verb::Supplies(_, swapped) => supplies(&plan, &shelf, swapped.as_deref(), request.json, desk),
        Verb::Class(today, labels, on) => {
            let today = today.unwrap_or_else(|| Day::of_seconds(seconds_now()));
            let Some(found) = class(&plan, Some(today)) else { return Err(Refusal::said("refused-no-class", &[])) };
            if let Some(path) = labels {
                written(path, &crate::labels::pdf(&plan, &found, on))?;
            }
            taught(&plan, &found, request.json, desk)
        }
    }
}

/// Writes one file.
fn written(path: &std::path::Path, bytes: &[u8]) -> Result<(), Refusal> {
    std::fs::write(path, bytes).map_err(|error| unwritten(path, &error))
}

fn unwritten(path: &std::path::Path, error: &std::io::Error) -> Refusal {
    let facts = [("path", path.display().to_string().into()), ("said", error.to_string().into())];
    Refusal::Said { what: say("refused-shelf", &facts), remedy: None }
}

fn shelf(path: &std::path::Path) -> Result<Vec<store::shelf::Item>, Refusal> {
    let named = path.display().to_string();
    let refused = |said: String| {
        let facts = [("path", (&named).into()), ("said", said.into())];
        Refusal::Said { what: say("refused-shelf", &facts), remedy: None }
    };
    let bytes = std::fs::read(path).map_err(|error| refused(error.to_string()))?;
    store::shelf::table::read(&bytes)
        .map_err(|problems| Refusal::Many(problems.iter().map(|one| refused(trade::table_problem(one))).collect()))
}

fn post(plan: &Plan, json: bool, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let all = mailings(plan);
    let rate = |index: Option<usize>| index.and_then(|index| plan.project.trade.post.rates.get(index));
    if json {
        let views: Vec<_> = all
            .iter()
            .map(|mailing| {
                let operators: Vec<_> = (mailing.verdicts.iter().zip(&mailing.rates))
                    .map(|(verdict, index)| {
                        let own = rate(*index);
                        json!({
                            "operator": verdict.operator,
                            "class": verdict.class.map(|class| class.class),
                            "why": trade::reasons(verdict),
                            "rate": own.map(|rate| rate.price.amount.to_string()),
                            "currency": own.map(|rate| rate.price.currency.clone()),
                            "date": own.and_then(|rate| rate.price.date.clone()),
                            "source": trade::source(verdict),
                        })
                    })
                    .collect();
                json!({
                    "kind": trade::kind(plan, mailing),
                    "cards": mailing.cards,
                    "grams": mailing.letter.weight.unwrap_or_default().in_grams(),
                    "at_least": mailing.body.at_least,
                    "thickness": trade::thick(mailing.thickness()),
                    "all_layers_together": trade::thick(mailing.stacked()),
                    "length": crate::wording::exact(mailing.letter.length, plan.project.unit),
                    "height": crate::wording::exact(mailing.letter.height, plan.project.unit),
                    "envelope_fits": mailing.fit.fits,
                    "even": mailing.letter.even,
                    "operators": operators,
                })
            })
            .collect();
        desk.json(&views)?;
        return Ok(Done::Well);
    }
    for mailing in &all {
        writeln!(desk.out, "{}", trade::kind(plan, mailing))?;
        for told in trade::measures(plan, mailing) {
            writeln!(desk.out, "  {told}")?;
        }
        for (verdict, index) in mailing.verdicts.iter().zip(&mailing.rates) {
            writeln!(desk.out, "  {}: {}", verdict.operator, trade::class(verdict))?;
            for reason in trade::reasons(verdict) {
                writeln!(desk.out, "    {reason}")?;
            }
            writeln!(desk.out, "    {}: {}", say("post-postage", &[]), trade::rate(rate(*index)))?;
            writeln!(desk.out, "    {}: {}", say("post-source", &[]), trade::source(verdict))?;
        }
    }
    writeln!(desk.out, "{}", say("post-others-not", &[]))?;
    writeln!(desk.out, "{}\n{}", say("post-confirm", &[]), say("post-weigh-one", &[]))?;
    Ok(Done::Well)
}

/// Writes the project with the swap of colours into a new file.
fn write_swapped(plan: &Plan, swap: Option<&ColourSwap>, path: &std::path::Path) -> Result<(), Refusal> {
    let Some(swap) = swap else { return Err(Refusal::said("refused-no-swap", &[])) };
    let mut project = plan.project.clone();
    project.choices.extend(recolor(plan, swap));
    let text = store::project_file::write(&project);
    let made = std::fs::OpenOptions::new().write(true).create_new(true).open(path);
    made.and_then(|mut file| file.write_all(text.as_bytes())).map_err(|error| unwritten(path, &error))
}

fn supplies(
    plan: &Plan,
    shelf: &[store::shelf::Item],
    swapped: Option<&std::path::Path>,
    json: bool,
    desk: &mut Desk<'_>,
) -> Result<Done, Refusal> {
    let items: Vec<_> = shelf.iter().map(|item| (item.clone(), item.amount)).collect();
    let there = trade::there(&needs(plan), &items);
    let shop = shopping(plan, &there);
    let swap = colour_swap(plan, &there);
    if let Some(path) = swapped {
        write_swapped(plan, swap.as_ref(), path)?;
    }
    let used = used(plan);
    let shares = card_shares(plan, &shop);
    let sums = [&used, &shop.bought, &shop.next];
    let (unit, mark) = (plan.project.unit, plan.project.mark);
    let figures = [
        (say("supplies-used", &[]), &used, say("supplies-used-says", &[])),
        (say("supplies-bought", &[]), &shop.bought, say("supplies-bought-says", &[])),
        (say("supplies-next", &[]), &shop.next, say("supplies-next-says", &[])),
    ];
    if json {
        let money = |sum: &cards::buying::Sum| {
            let amount = sum.amount.map(|amount| amount.round_dp(6).normalize().to_string());
            json!({ "amount": amount, "currencies": sum.currencies, "missing": sum.missing })
        };
        let lines: Vec<_> = (shop.purchases.iter())
            .map(|purchase| {
                let need = &purchase.need;
                let packs: Vec<_> = need.on_sale.iter().zip(purchase.packs.iter().flatten()).collect();
                json!({
                    "name": need.name,
                    "need": trade::amount(need.counted, need.amount, unit),
                    "rule": trade::rule(need, mark),
                    "there": trade::amount(need.counted, purchase.there, unit),
                    "packs": packs.iter().map(|(sold, count)| json!({
                        "count": count,
                        "holds": trade::amount(need.counted, sold.holds, unit),
                    })).collect::<Vec<_>>(),
                    "cost": purchase.cost.map(|cost| cost.to_string()),
                    "left": trade::amount(need.counted, purchase.left, unit),
                })
            })
            .collect();
        let swap = swap.as_ref().map(|swap| {
            json!({
                "saves": swap.saved.to_string(),
                "moved": swap.swap.moved,
                "packs_before": swap.now.iter().sum::<u64>(),
                "packs_after": swap.swap.packs.iter().sum::<u64>(),
            })
        });
        let coin = |amount: Option<Decimal>| amount.map(|amount| amount.to_string());
        let each: Vec<_> = (shares.alike(plan).iter())
            .map(|alike| {
                let [used, bought, next] = alike.each;
                json!({
                    "first": alike.first, "last": alike.last,
                    "used": coin(used), "bought": coin(bought), "next_batch": coin(next),
                })
            })
            .collect();
        let view = json!({
            "needs": lines,
            "swap": swap,
            "used": money(&used),
            "bought": money(&shop.bought),
            "next_batch": money(&shop.next),
            "cards": each,
        });
        desk.json(&view)?;
        return Ok(Done::Well);
    }
    for purchase in &shop.purchases {
        let need = &purchase.need;
        let facts = [
            ("name", worded::supply(&need.name).into()),
            ("need", trade::amount(need.counted, need.amount, unit).into()),
            ("rule", trade::rule(need, mark).into()),
            ("there", trade::amount(need.counted, purchase.there, unit).into()),
            ("buy", trade::packs(purchase, unit).into()),
            ("cost", trade::cost(purchase).into()),
            ("left", trade::amount(need.counted, purchase.left, unit).into()),
        ];
        writeln!(desk.out, "{}", say("supplies-line", &facts))?;
    }
    if let Some(swap) = &swap {
        let (said, each) = trade::swap(&plan.project, swap);
        writeln!(desk.out, "{said}")?;
        for one in each {
            writeln!(desk.out, "  {one}")?;
        }
    }
    for dark in trade::dark_bases(plan) {
        writeln!(desk.out, "{dark}")?;
    }
    let names = figures.each_ref().map(|(name, ..)| name.clone());
    for (name, sum, says) in figures {
        let facts = [
            ("name", name.into()),
            ("total", trade::sum(sum).into()),
            ("each", trade::sum_each(sum, plan.cards.len()).into()),
            ("says", says.into()),
        ];
        writeln!(desk.out, "{}", say("supplies-figure-line", &facts))?;
        if !sum.missing.is_empty() {
            writeln!(desk.out, "  {}", say("sum-missing", &[("names", trade::names(&sum.missing).into())]))?;
        }
    }
    for row in trade::by_kind(plan, &shares, sums) {
        writeln!(desk.out, "{}", row.cards)?;
        for (name, (all, each)) in names.iter().zip(row.figures) {
            let each = say("supplies-of-each", &[("each", each.into())]);
            writeln!(desk.out, "  {name}: {all}, {each}")?;
        }
    }
    writeln!(desk.out, "{}\n  {}", say("supplies-each-card", &[]), say("supplies-shared-rule", &[]))?;
    for (cards, [used, bought, next]) in trade::each_card(plan, &shares, sums) {
        let facts = [("cards", cards.into()), ("used", used.into()), ("bought", bought.into()), ("next", next.into())];
        writeln!(desk.out, "  {}", say("supplies-share-line", &facts))?;
    }
    for priced in trade::priced(plan) {
        let facts = [
            ("batch", priced.batch.into()),
            ("material", priced.material.into()),
            ("minutes", priced.minutes.into()),
            ("asked", priced.asked.into()),
            ("leaves", priced.leaves.into()),
            ("wage", priced.wage.into()),
            ("wished", priced.wished.into()),
        ];
        writeln!(desk.out, "{}", say("supplies-price-line", &facts))?;
    }
    writeln!(desk.out, "{}", say("supplies-caution-costs", &[]))?;
    Ok(Done::Well)
}

fn taught(plan: &Plan, found: &ClassPlan, json: bool, desk: &mut Desk<'_>) -> Result<Done, Refusal> {
    let serious = found.findings.iter().any(|finding| finding.severity == Severity::Serious);
    let money = |amount: Option<Decimal>| {
        amount.map_or_else(|| say("sum-unknown", &[]), |amount| trade::money(amount, &found.money.currency))
    };
    if json {
        let coin = |amount: Option<Decimal>| {
            amount.map(|amount| cards::money::to_coin(amount, &found.money.currency).to_string())
        };
        let view = json!({
            "kits": found.kits,
            "spare": found.spare,
            "planned": found.planned,
            "to_cut": found.to_cut,
            "cards_each": [found.cards_each.0, found.cards_each.1],
            "timetable": found.timetable.iter().map(|due| json!({
                "what": due.code,
                "day": due.day.map(|day| day.to_string()),
                "days_before": due.before,
                "over": due.past,
            })).collect::<Vec<_>>(),
            "on_the_day": found.on_the_day.iter().map(|part| json!({
                "what": part.code,
                "card": Some(part.card).filter(|card| *card > 0),
                "minutes": part.minutes,
                "from": part.times.map(|(begins, _)| begins.to_string()),
                "to": part.times.map(|(_, ends)| ends.to_string()),
            })).collect::<Vec<_>>(),
            "money": {
                "currency": found.money.currency,
                "kit": coin(found.money.kit),
                "kits": coin(found.money.kits),
                "total": coin(found.money.total),
                "break_even": found.money.break_even,
                "seat": coin(found.money.seat),
                "price": coin(found.money.price),
                "brings": coin(found.money.brings),
                "over": coin(found.money.over),
                "missing": found.money.missing,
            },
            "findings": found.findings.iter().map(|finding| finding.code).collect::<Vec<_>>(),
        });
        desk.json(&view)?;
        return Ok(if serious { Done::Seriously } else { Done::Well });
    }
    for said in crate::trade::kits_told(plan, found) {
        writeln!(desk.out, "{said}")?;
    }
    for finding in &found.findings {
        let (said, remedy) = trade::finding(finding, plan.project.mark);
        let id = match finding.severity {
            Severity::Note => "made-note",
            Severity::Warning => "made-warning",
            Severity::Serious => "made-serious",
        };
        writeln!(desk.out, "{}", say(id, &[("said", said.into()), ("remedy", remedy.into())]))?;
    }
    for due in &found.timetable {
        writeln!(desk.out, "{}  {}", trade::day(due), trade::due(due.code))?;
    }
    writeln!(desk.out, "{}", trade::day_length(found))?;
    for part in &found.on_the_day {
        writeln!(desk.out, "{}  {}, {}", trade::when(part), trade::day_part(part), trade::takes(part))?;
    }
    let mix = trade::mix(plan, found.batch);
    if !mix.is_empty() {
        writeln!(desk.out, "{}", say("class-mix", &[]))?;
        for (print, each) in &mix {
            writeln!(desk.out, "  {print}: {each}")?;
        }
        writeln!(desk.out, "  {}", trade::mix_even(plan, found.batch))?;
    }
    let (kits, ahead) = trade::ahead(plan, found);
    if !ahead.is_empty() {
        writeln!(desk.out, "{}. {}", say("class-ahead", &[]), say("class-ahead-lead", &[("kits", kits.into())]))?;
        for line in &ahead {
            writeln!(desk.out, "  {line}")?;
        }
    }
    for (what, amount) in trade::money_told(plan, found) {
        writeln!(desk.out, "{what}: {}", money(amount))?;
    }
    if !found.money.missing.is_empty() {
        writeln!(desk.out, "{}", say("sum-missing", &[("names", trade::names(&found.money.missing).into())]))?;
    }
    Ok(if serious { Done::Seriously } else { Done::Well })
}
