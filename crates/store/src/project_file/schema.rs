//! The schema of a project file, written from the forms.

use serde_json::{Map, Value, json};

use super::form::{Form, PROJECT, Shape};

/// The JSON Schema of a project file, for editors that check as one types.
///
/// It says what the keys are, not what fits together: only [`super::read`] can tell that.
///
/// # Source
/// JSON Schema, draft 2020-12.
pub fn schema() -> Value {
    let mut definitions = Map::new();
    let mut root = table(&PROJECT, &mut definitions);
    if let Value::Object(root) = &mut root {
        root.insert("$schema".to_owned(), json!("https://json-schema.org/draft/2020-12/schema"));
        root.insert("title".to_owned(), json!("Octavo project"));
        root.insert("$defs".to_owned(), Value::Object(definitions));
    }
    root
}

fn table(form: &Form, definitions: &mut Map<String, Value>) -> Value {
    let mut properties = Map::new();
    for key in form.keys {
        let mut schema = shape(key.shape, definitions);
        if let Value::Object(schema) = &mut schema {
            schema.insert("description".to_owned(), json!(key.says));
        }
        properties.insert(key.name.to_owned(), schema);
    }
    let needed: Vec<&str> = form.keys.iter().filter(|key| key.needed).map(|key| key.name).collect();
    json!({
        "type": "object",
        "description": form.says,
        "properties": properties,
        "required": needed,
        "additionalProperties": false,
    })
}

/// A reference to the definition of a form, which is written once.
fn named(form: &Form, definitions: &mut Map<String, Value>) -> Value {
    if !definitions.contains_key(form.name) {
        // Its place is taken first, should a form ever hold itself.
        definitions.insert(form.name.to_owned(), Value::Null);
        let written = table(form, definitions);
        definitions.insert(form.name.to_owned(), written);
    }
    json!({ "$ref": format!("#/$defs/{}", form.name) })
}

fn list(items: &Value) -> Value {
    json!({ "type": "array", "minItems": 1, "items": items })
}

fn shape(shape: Shape, definitions: &mut Map<String, Value>) -> Value {
    let text = json!({ "type": "string", "minLength": 1 });
    let number_or_text = json!({ "type": ["string", "number"] });
    match shape {
        Shape::Text | Shape::Size => text,
        Shape::Letter => json!({ "type": "string", "minLength": 1, "maxLength": 4 }),
        Shape::Length | Shape::Range => number_or_text,
        Shape::Count(least, most) => json!({ "type": "integer", "minimum": least, "maximum": most }),
        Shape::YesNo => json!({ "type": "boolean" }),
        Shape::Color => json!({ "type": "string", "pattern": "^#[0-9A-Fa-f]{6}$" }),
        Shape::Date => json!({ "type": "string", "pattern": "^[0-9]{4}-[0-9]{2}-[0-9]{2}$" }),
        Shape::Amount => number_or_text,
        Shape::Price => json!({ "anyOf": [number_or_text, named(&super::form::PRICE, definitions)] }),
        Shape::Choice(words) => json!({ "enum": words }),
        Shape::Lengths => list(&number_or_text),
        Shape::Names => list(&text),
        Shape::Pairs => list(&json!({ "type": "array", "minItems": 2, "maxItems": 2, "items": text })),
        Shape::ByLetter => json!({ "anyOf": [text, { "type": "object", "additionalProperties": text }] }),
        Shape::Table(form) => named(form, definitions),
        Shape::SizeOrTable(form) => json!({ "anyOf": [text, named(form, definitions)] }),
        Shape::Tables(form) => list(&named(form, definitions)),
        Shape::SizesOrTables(form) => {
            let one = json!([text, named(form, definitions)]);
            json!({ "anyOf": [one[0], one[1], list(&json!({ "anyOf": one }))] })
        }
        Shape::Layers(kinds) => {
            let forms: Vec<Value> =
                kinds.iter().enumerate().map(|(index, kind)| layer(index, *kind, definitions)).collect();
            list(&json!({ "oneOf": forms }))
        }
    }
}

/// The form of one kind of layer; only the first kind can go without being named.
fn layer(index: usize, (kind, form): (&str, &Form), definitions: &mut Map<String, Value>) -> Value {
    let mut schema = named(form, definitions);
    if let Value::Object(schema) = &mut schema {
        schema.insert("properties".to_owned(), json!({ "kind": { "const": kind } }));
        if index > 0 {
            schema.insert("required".to_owned(), json!(["kind"]));
        }
    }
    schema
}
