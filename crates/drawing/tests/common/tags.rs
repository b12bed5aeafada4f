//! The tags of a PDF, read by a library of others (`lopdf`), and what they break of ISO 14289-1 (PDF/UA-1).
//!
//! Source: ISO 14289-1:2014, clause numbers from memory; ISO 32000-1:2008 chapter 14.7 and 14.8 for the structure
//! itself, from memory.

use std::collections::{BTreeMap, BTreeSet};

use lopdf::content::Content;
use lopdf::{Dictionary, Document, Object, ObjectId};

#[path = "matrix.rs"]
mod matrix;
use matrix::product;

/// A fault: the clause and what is wrong.
pub(crate) type Fault = (&'static str, String);

/// One element of the structure.
#[derive(Debug)]
pub(crate) struct Element {
    pub(crate) kind: String,
    pub(crate) alt: String,
    pub(crate) attributes: Dictionary,
    pub(crate) kids: Vec<Kid>,
    id: ObjectId,
}

#[derive(Debug)]
pub(crate) enum Kid {
    Element(Element),
    /// Page and number of the marked content.
    Content(ObjectId, i64),
}

impl Element {
    pub(crate) fn inner(&self) -> impl Iterator<Item = &Element> {
        self.kids.iter().filter_map(|kid| match kid {
            Kid::Element(element) => Some(element),
            Kid::Content(..) => None,
        })
    }

    /// It and all below it, in reading order.
    pub(crate) fn all(&self) -> Vec<&Element> {
        std::iter::once(self).chain(self.inner().flat_map(Element::all)).collect()
    }

    /// What it says, in reading order, with the element that says it.
    pub(crate) fn contents(&self) -> Vec<(ObjectId, i64, ObjectId)> {
        let of = |kid: &Kid| match kid {
            Kid::Element(element) => element.contents(),
            Kid::Content(page, number) => vec![(*page, *number, self.id)],
        };
        self.kids.iter().flat_map(of).collect()
    }
}

/// What is drawn under one number of a page.
#[derive(Debug, Default)]
pub(crate) struct Drawn {
    /// Left end and height above the foot of the page of each run of letters.
    pub(crate) lines: Vec<(f64, f64)>,
    /// What is to be read instead.
    pub(crate) actual: Option<String>,
}

pub(crate) struct Read<'a> {
    pub(crate) document: &'a Document,
    pub(crate) root: Element,
    pub(crate) pages: Vec<(ObjectId, BTreeMap<i64, Drawn>)>,
    faults: Vec<Fault>,
}

/// Text of a PDF string: UTF-16 with its mark, else one byte a sign.
fn string(object: &Object) -> String {
    let bytes = object.as_str().unwrap_or_default();
    match bytes.strip_prefix(&[0xfe, 0xff]) {
        Some(wide) => {
            let units: Vec<u16> = wide.chunks(2).map(|pair| u16::from_be_bytes([pair[0], pair[1]])).collect();
            String::from_utf16_lossy(&units)
        }
        None => bytes.iter().map(|&byte| char::from(byte)).collect(),
    }
}

fn number(object: &Object) -> f64 {
    f64::from(object.as_float().unwrap_or_default())
}

impl<'a> Read<'a> {
    pub(crate) fn new(document: &'a Document) -> Read<'a> {
        let none = || Element {
            kind: String::new(),
            alt: String::new(),
            attributes: Dictionary::new(),
            kids: Vec::new(),
            id: (0, 0),
        };
        let mut read = Read { document, root: none(), pages: Vec::new(), faults: Vec::new() };
        let top = document.catalog().ok().and_then(|catalog| read.get(catalog, b"StructTreeRoot")?.as_dict().ok());
        let first = top.and_then(|top| {
            let kids = top.get(b"K").ok()?;
            let kid = kids.as_array().ok().and_then(|kids| kids.first()).unwrap_or(kids);
            kid.as_reference().ok()
        });
        match first {
            Some(id) => read.root = read.element(id),
            None => read.fault("7.1", "no structure"),
        }
        for id in document.get_pages().into_values() {
            let drawn = read.page(id);
            read.pages.push((id, drawn));
        }
        read
    }

    fn fault(&mut self, clause: &'static str, what: impl Into<String>) {
        self.faults.push((clause, what.into()));
    }

    fn get(&self, dictionary: &'a Dictionary, key: &[u8]) -> Option<&'a Object> {
        let found = dictionary.get(key).ok()?;
        self.document.dereference(found).ok().map(|(_, object)| object)
    }

    fn element(&self, id: ObjectId) -> Element {
        let dictionary = self.document.get_dictionary(id).unwrap();
        let mut attributes = Dictionary::new();
        let told = self.get(dictionary, b"A");
        let told: Vec<&Dictionary> = match told {
            Some(Object::Array(several)) => {
                several.iter().filter_map(|one| self.document.dereference(one).ok()?.1.as_dict().ok()).collect()
            }
            Some(Object::Dictionary(one)) => vec![one],
            _ => Vec::new(),
        };
        for one in told {
            attributes.extend(one);
        }
        let page = dictionary.get(b"Pg").and_then(Object::as_reference).unwrap_or((0, 0));
        let one;
        let kids = match self.get(dictionary, b"K") {
            Some(Object::Array(kids)) => kids.as_slice(),
            Some(_) => {
                one = [dictionary.get(b"K").unwrap().clone()];
                &one
            }
            None => &[],
        };
        let kid = |object: &Object| match object {
            Object::Integer(number) => Kid::Content(page, *number),
            Object::Reference(id) => Kid::Element(self.element(*id)),
            Object::Dictionary(reference) => {
                let page = reference.get(b"Pg").and_then(Object::as_reference).unwrap_or(page);
                Kid::Content(page, reference.get(b"MCID").and_then(Object::as_i64).unwrap())
            }
            other => panic!("a kid {other:?}"),
        };
        Element {
            kind: String::from_utf8(dictionary.get(b"S").unwrap().as_name().unwrap().to_vec()).unwrap(),
            alt: dictionary.get(b"Alt").map(string).unwrap_or_default(),
            attributes,
            kids: kids.iter().map(kid).collect(),
            id,
        }
    }

    /// Goes through what a page draws: everything lies in exactly one mark, decoration or numbered.
    fn page(&mut self, id: ObjectId) -> BTreeMap<i64, Drawn> {
        let content = Content::decode(&self.document.get_page_content(id)).unwrap();
        let mut found: BTreeMap<i64, Drawn> = BTreeMap::new();
        // Decoration, a number, or neither (a span inside one of them).
        let mut open: Vec<Option<Option<i64>>> = Vec::new();
        let mut matrices = vec![[1.0, 0.0, 0.0, 1.0, 0.0, 0.0]];
        let mut at = (0.0, 0.0);
        for step in &content.operations {
            let numbers: Vec<f64> = step.operands.iter().map(number).collect();
            match step.operator.as_str() {
                "q" => matrices.push(*matrices.last().unwrap()),
                "Q" => {
                    matrices.pop();
                }
                "cm" => {
                    let last = matrices.last_mut().unwrap();
                    *last = product(&numbers, *last);
                }
                "Tm" => {
                    let whole = product(&numbers, *matrices.last().unwrap());
                    at = (whole[4], whole[5]);
                }
                "BDC" | "BMC" => {
                    let list = step.operands.get(1).and_then(|list| list.as_dict().ok());
                    let own = list.and_then(|list| list.get(b"MCID").ok()?.as_i64().ok());
                    let kind = step.operands[0].as_name().unwrap_or_default();
                    let what = if kind == b"Artifact" { Some(None) } else { own.map(Some) };
                    if what.is_some() && open.iter().any(Option::is_some) {
                        self.fault("7.1", "decoration and content inside each other");
                    }
                    if let Some(number) = own {
                        let actual = list.and_then(|list| list.get(b"ActualText").ok()).map(string);
                        if found.insert(number, Drawn { actual, ..Drawn::default() }).is_some() {
                            self.fault("7.1", format!("number {number} twice on a page"));
                        }
                    }
                    open.push(what);
                }
                "EMC" => {
                    open.pop();
                }
                "Tj" | "TJ" | "S" | "s" | "f" | "F" | "f*" | "B" | "B*" | "b" | "b*" | "sh" | "Do" | "'" | "\"" => {
                    let Some(within) = open.iter().copied().flatten().next() else {
                        self.fault("7.1", format!("`{}` draws outside every mark", step.operator));
                        continue;
                    };
                    if step.operator.starts_with('T') {
                        if has_zero(&step.operands) {
                            self.fault("7.21.8", "the glyph for what a font lacks");
                        }
                        if let Some(number) = within {
                            found.entry(number).or_default().lines.push(at);
                        }
                    }
                }
                _ => {}
            }
        }
        if !open.is_empty() {
            self.fault("7.1", "a mark that does not end");
        }
        found
    }

    /// Every fault of the file.
    pub(crate) fn faults(mut self) -> Vec<Fault> {
        self.file();
        self.contents();
        self.elements();
        self.fonts();
        self.faults
    }

    fn file(&mut self) {
        let catalog = self.document.catalog().unwrap();
        let of = |key: &[u8], inner: &[u8]| {
            let within = self.get(catalog, key)?.as_dict().ok()?;
            self.get(within, inner)?.as_bool().ok()
        };
        let (marked, suspects) = (of(b"MarkInfo", b"Marked"), of(b"MarkInfo", b"Suspects"));
        let shows_title = of(b"ViewerPreferences", b"DisplayDocTitle");
        let language = self.get(catalog, b"Lang").map(string).unwrap_or_default();
        let metadata = self.get(catalog, b"Metadata").and_then(|object| object.as_stream().ok());
        let metadata = metadata.and_then(|stream| stream.get_plain_content().ok()).unwrap_or_default();
        let metadata = String::from_utf8_lossy(&metadata).into_owned();
        let outline = self.get(catalog, b"Outlines").and_then(|outline| outline.as_dict().ok());
        let entries = outline.is_some_and(|outline| outline.has(b"First"));
        let mut said = |fails: bool, clause, what: &str| {
            if fails {
                self.faults.push((clause, what.to_owned()));
            }
        };
        said(!metadata.contains("<pdfuaid:part>1</pdfuaid:part>"), "5", "not named as PDF/UA-1");
        said(marked != Some(true), "7.1", "not marked as tagged");
        said(suspects == Some(true), "7.1", "suspects");
        said(shows_title != Some(true), "7.1", "a window would not show the title");
        let title = metadata.split("<dc:title>").nth(1).and_then(|rest| rest.split("</dc:title>").next());
        let title = title.map(|title| title.split(['<', '>']).nth(4).unwrap_or_default().trim().to_owned());
        said(title.is_none_or(|title| title.is_empty()), "7.1", "no title in the metadata");
        said(language.is_empty(), "7.2", "no language");
        said(self.document.trailer.has(b"Encrypt"), "7.16", "encrypted");
        said(!entries, "7.17", "no outline");
        for (page, _) in &self.pages {
            let page = self.document.get_dictionary(*page).unwrap();
            said(page.has(b"Annots") && !page.has(b"Tabs"), "7.18.3", "notes without an order");
        }
    }

    /// Each number of a page is said by one element, and the page knows by which.
    fn contents(&mut self) {
        let mut said: BTreeMap<ObjectId, BTreeMap<i64, ObjectId>> = BTreeMap::new();
        let mut twice = Vec::new();
        for (page, number, element) in self.root.contents() {
            if said.entry(page).or_default().insert(number, element).is_some() {
                twice.push(number);
            }
        }
        for number in twice {
            self.fault("7.1", format!("number {number} said twice"));
        }
        let pages: Vec<(ObjectId, BTreeSet<i64>)> =
            self.pages.iter().map(|(id, drawn)| (*id, drawn.keys().copied().collect())).collect();
        for (id, drawn) in pages {
            let of = said.remove(&id).unwrap_or_default();
            if drawn != of.keys().copied().collect() {
                self.fault("7.1", "what is drawn and what is said differ");
            }
            let back: Vec<ObjectId> = self.parents(id);
            if !of.iter().all(|(&number, element)| back.get(usize::try_from(number).unwrap()) == Some(element)) {
                self.fault("7.1", "a page does not know its elements");
            }
        }
    }

    /// The elements of a page by number, as the parent tree says.
    fn parents(&self, page: ObjectId) -> Vec<ObjectId> {
        let of = || {
            let key = self.document.get_dictionary(page).ok()?.get(b"StructParents").ok()?.as_i64().ok()?;
            let top = self.get(self.document.catalog().ok()?, b"StructTreeRoot")?.as_dict().ok()?;
            let numbers = self.get(self.get(top, b"ParentTree")?.as_dict().ok()?, b"Nums")?.as_array().ok()?;
            let at = numbers.chunks(2).find(|pair| pair[0].as_i64().ok() == Some(key))?;
            let list = self.document.dereference(&at[1]).ok()?.1.as_array().ok()?;
            Some(list.iter().filter_map(|entry| entry.as_reference().ok()).collect())
        };
        of().unwrap_or_default()
    }

    fn elements(&mut self) {
        const KNOWN: [&str; 16] = [
            "Document", "Sect", "H1", "H2", "H3", "P", "L", "LI", "Lbl", "LBody", "Table", "THead", "TBody", "TR",
            "TH", "TD",
        ];
        let mut faults: Vec<Fault> = Vec::new();
        let mut level = 0;
        for element in self.root.all() {
            let inner: Vec<&str> = element.inner().map(|inner| inner.kind.as_str()).collect();
            let kind = element.kind.as_str();
            let only = |allowed: &[&str]| inner.iter().all(|kind| allowed.contains(kind));
            if !KNOWN.contains(&kind) && kind != "Figure" {
                faults.push(("7.1", format!("an element `{kind}` that no reader knows")));
            }
            if element.kids.is_empty() {
                faults.push(("7.1", format!("an empty `{kind}`")));
            }
            if let Some(found) = kind.strip_prefix('H').and_then(|level| level.parse::<i32>().ok()) {
                if found > level + 1 {
                    faults.push(("7.4.2", format!("heading {found} after {level}")));
                }
                level = found;
            }
            match kind {
                "Figure" => {
                    if element.alt.trim().is_empty() {
                        faults.push(("7.3", "a figure without words".to_owned()));
                    }
                    if !element.attributes.has(b"BBox") {
                        faults.push(("7.3", "a figure without its bounds".to_owned()));
                    }
                }
                "Table" => table(element, &mut faults),
                "TR" if !only(&["TH", "TD"]) => faults.push(("7.5", format!("a row of {inner:?}"))),
                "TH" if !element.attributes.has(b"Scope") => faults.push(("7.5", "a head of nothing".to_owned())),
                "L" => {
                    let labels = element.all().iter().any(|inner| inner.kind == "Lbl");
                    let numbering = element.attributes.get(b"ListNumbering").and_then(Object::as_name);
                    if !only(&["LI"]) || labels == (numbering.unwrap_or(b"None") == b"None") {
                        faults.push(("7.6", format!("a list of {inner:?}, labels {labels}")));
                    }
                }
                "LI" if !only(&["Lbl", "LBody"]) || !inner.contains(&"LBody") => {
                    faults.push(("7.6", format!("an item of {inner:?}")));
                }
                _ => {}
            }
        }
        self.faults.extend(faults);
    }

    /// Each font is in the file and says which letters its glyphs are.
    fn fonts(&mut self) {
        let mut faults: Vec<Fault> = Vec::new();
        let fonts = self.document.objects.values().filter_map(|object| object.as_dict().ok());
        for font in fonts.filter(|font| font.has_type(b"Font")) {
            if font.has(b"DescendantFonts") && !font.has(b"ToUnicode") {
                faults.push(("7.21.7", "a font that does not say its letters".to_owned()));
            }
            if let Some(Object::Dictionary(of)) = self.get(font, b"FontDescriptor")
                && !of.has(b"FontFile2")
                && !of.has(b"FontFile3")
            {
                faults.push(("7.21.4.1", "a font that is not in the file".to_owned()));
            }
        }
        self.faults.extend(faults);
    }
}

fn table(element: &Element, faults: &mut Vec<Fault>) {
    let rows: Vec<&Element> = element.all().into_iter().filter(|inner| inner.kind == "TR").collect();
    let wide: BTreeSet<usize> = rows.iter().map(|row| row.inner().count()).collect();
    if wide.len() != 1 {
        faults.push(("7.5", format!("rows of {wide:?} cells")));
    }
    if !rows.first().is_some_and(|row| row.inner().all(|cell| cell.kind == "TH")) {
        faults.push(("7.5", "a table without heads".to_owned()));
    }
}

/// True if two bytes of a shown string are glyph 0.
fn has_zero(operands: &[Object]) -> bool {
    operands.iter().any(|operand| match operand {
        Object::String(bytes, _) => bytes.chunks(2).any(|pair| pair == [0, 0]),
        Object::Array(inner) => has_zero(inner),
        _ => false,
    })
}
