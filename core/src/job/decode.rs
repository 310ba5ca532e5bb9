//! From text to the document's structures, with the place of every refusal.
//!
//! The text is parsed by `serde_json` into a plain tree that loses nothing (repeated names included); the structures are
//! then filled from the tree, each field from its place in the document.

use super::document::Document;
use crate::error::{Error, ErrorKind};
use core::fmt::{self, Write};
use serde::de::{self, Deserializer, MapAccess, SeqAccess, Visitor};
use serde::{Deserialize, Serialize, Serializer};

/// Largest accepted document. A job with every field of twelve cylinders is about 50 kB.
const LARGEST_DOCUMENT: usize = 16 * 1024 * 1024;

/// Refuses a document that is too large, before anything of it is read.
///
/// # Errors
/// [`ErrorKind::TooLarge`].
pub fn check_size(bytes: usize) -> Result<(), Error> {
    match bytes <= LARGEST_DOCUMENT {
        true => Ok(()),
        false => Err(Error::new(
            ErrorKind::TooLarge,
            "",
            format!("the document has {bytes} bytes; at most {LARGEST_DOCUMENT} are accepted"),
        )),
    }
}

/// The text of a document that arrives as bytes.
pub(crate) fn text(bytes: &[u8]) -> Result<&str, Error> {
    check_size(bytes.len())?;
    str::from_utf8(bytes)
        .map_err(|e| Error::new(ErrorKind::NotUtf8, "", format!("the document is not UTF-8: {e}")))
}

/// Fills a structure from JSON text.
///
/// Format and version come first: a document of another kind is refused as that, not for its unknown fields.
pub(crate) fn from_json<T: Decode>(text: &str, format: &str, version: u32) -> Result<T, Error> {
    T::decode(Place { json: &tree(text, format, version)?, path: &Path::Root })
}

fn tree(text: &str, format: &str, version: u32) -> Result<Json, Error> {
    check_size(text.len())?;
    if text.starts_with('\u{feff}') {
        let reason = "it begins with a byte order mark; save it as UTF-8 without one";
        return Err(Error::new(ErrorKind::Syntax, "", reason));
    }
    let mut tree: Json = serde_json::from_str(text).map_err(|e| syntax(&e))?;
    tree.keep_numbers(&mut Numbers(text));
    tree.check_heads(format, version)?;
    Ok(tree)
}

fn syntax(error: &serde_json::Error) -> Error {
    let said = error.to_string();
    if said.starts_with("recursion limit exceeded") {
        Error::new(ErrorKind::TooDeep, "", said)
    } else if said.starts_with("number out of range") {
        Error::new(ErrorKind::NotFinite, "", said)
    } else {
        Error::new(ErrorKind::Syntax, "", format!("not valid JSON: {said}"))
    }
}

/// The numbers of a text that is valid JSON, in order, as they are typed.
///
/// The parser hands over doubles, and a double no longer shows how many digits were typed.
struct Numbers<'t>(&'t str);

impl<'t> Iterator for Numbers<'t> {
    type Item = &'t str;

    fn next(&mut self) -> Option<&'t str> {
        loop {
            // by bytes: what is looked for is ASCII, and no part of another character is
            let begins = |b: &u8| matches!(b, b'"' | b'-') || b.is_ascii_digit();
            let start = self.0.as_bytes().iter().position(begins)?;
            let rest = self.0.get(start..)?;
            match rest.strip_prefix('"') {
                Some(text) => self.0 = behind_text(text)?,
                None => {
                    let of_number = |c: char| c.is_ascii_digit() || "+-.eE".contains(c);
                    let end = rest.find(|c| !of_number(c)).unwrap_or(rest.len());
                    let (number, rest) = rest.split_at(end);
                    self.0 = rest;
                    return Some(number);
                }
            }
        }
    }
}

/// What follows the quotation mark that ends a text.
fn behind_text(text: &str) -> Option<&str> {
    let mut escaped = false;
    let ends = |b: &u8| {
        let is_escaped = escaped;
        escaped = !is_escaped && *b == b'\\';
        *b == b'"' && !is_escaped
    };
    let end = text.as_bytes().iter().position(ends)?;
    text.get(end + 1..)
}

/// A job from a tree that was read already.
pub(crate) fn job(tree: &Json) -> Result<Document, Error> {
    tree.check_heads(super::FORMAT, super::VERSION)?;
    let job = Document::decode(Place { json: tree, path: &Path::Root })?;
    job.version.count(super::VERSION, super::VERSION)?;
    Ok(job)
}

/// A JSON value that keeps repeated names and the text of numbers.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Json {
    Null,
    Bool(bool),
    Number(String),
    Text(String),
    List(Vec<Json>),
    Object(Vec<(String, Json)>),
}

impl<'de> Deserialize<'de> for Json {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Tree;
        impl<'de> Visitor<'de> for Tree {
            type Value = Json;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("JSON")
            }
            fn visit_unit<E>(self) -> Result<Json, E> {
                Ok(Json::Null)
            }
            fn visit_bool<E>(self, value: bool) -> Result<Json, E> {
                Ok(Json::Bool(value))
            }
            fn visit_i64<E>(self, value: i64) -> Result<Json, E> {
                Ok(Json::Number(value.to_string()))
            }
            fn visit_u64<E>(self, value: u64) -> Result<Json, E> {
                Ok(Json::Number(value.to_string()))
            }
            fn visit_f64<E>(self, value: f64) -> Result<Json, E> {
                Ok(Json::Number(value.to_string()))
            }
            fn visit_str<E>(self, value: &str) -> Result<Json, E> {
                Ok(Json::Text(value.to_owned()))
            }
            fn visit_string<E>(self, value: String) -> Result<Json, E> {
                Ok(Json::Text(value))
            }
            fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Json, A::Error> {
                let mut out = Vec::new();
                while let Some(next) = list.next_element()? {
                    out.push(next);
                }
                Ok(Json::List(out))
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Json, A::Error> {
                let mut out = Vec::new();
                while let Some(next) = map.next_entry()? {
                    out.push(next);
                }
                Ok(Json::Object(out))
            }
        }
        deserializer.deserialize_any(Tree)
    }
}

impl Json {
    fn check_heads(&self, format: &str, version: u32) -> Result<(), Error> {
        self.check_head("format", format, |value| matches!(value, Json::Text(_)))?;
        self.check_head("version", &version.to_string(), |value| value.brief().parse::<u32>().is_ok())
    }

    /// Refuses another format or version; what is missing or cannot be one is left to the structure.
    fn check_head(&self, name: &str, expected: &str, can_be: fn(&Json) -> bool) -> Result<(), Error> {
        let Json::Object(fields) = self else {
            return Ok(());
        };
        match fields.iter().find(|(field, _)| field == name) {
            Some((_, value)) if can_be(value) && value.brief() != expected => {
                let reason = format!("the {name} read here is {expected}");
                Err(Error::new(ErrorKind::UnknownFormat, value.brief(), reason).at(&format!("/{name}")))
            }
            _ => Ok(()),
        }
    }

    /// Puts the numbers as they are typed in place of what became of them.
    fn keep_numbers(&mut self, numbers: &mut Numbers<'_>) {
        match self {
            Json::Number(text) => numbers.next().unwrap_or_default().clone_into(text),
            Json::List(items) => items.iter_mut().for_each(|item| item.keep_numbers(numbers)),
            Json::Object(fields) => fields.iter_mut().for_each(|(_, value)| value.keep_numbers(numbers)),
            Json::Null | Json::Bool(_) | Json::Text(_) => {}
        }
    }

    /// The value at a JSON Pointer.
    pub(crate) fn at(&self, pointer: &str) -> Option<&Json> {
        tokens(pointer).try_fold(self, |json, token| match json {
            Json::List(items) => items.get(place(&token)?),
            Json::Object(fields) => fields.iter().find(|(name, _)| *name == token).map(|(_, value)| value),
            _ => None,
        })
    }

    fn at_mut(&mut self, pointer: &str) -> Option<&mut Json> {
        tokens(pointer).try_fold(self, |json, token| match json {
            Json::List(items) => items.get_mut(place(&token)?),
            Json::Object(fields) => {
                fields.iter_mut().find(|(name, _)| *name == token).map(|(_, value)| value)
            }
            _ => None,
        })
    }

    /// Puts a value where a JSON Pointer says: in place of what is there, or as a new field of an object. Whether there was room for it.
    pub(crate) fn put(&mut self, pointer: &str, value: Json) -> bool {
        if let Some(there) = self.at_mut(pointer) {
            *there = value;
            return true;
        }
        let Some((parent, field)) = pointer.rsplit_once('/') else { return false };
        match self.at_mut(parent) {
            Some(Json::Object(fields)) => {
                fields.push((unescaped(field), value));
                true
            }
            _ => false,
        }
    }

    /// The value as a reader sees it: of a list or an object its JSON.
    pub(crate) fn written(&self) -> String {
        match self {
            Json::List(_) | Json::Object(_) => serde_json::to_string(self).unwrap_or_default(),
            _ => self.brief(),
        }
    }

    /// How the value is named in a refusal.
    pub(crate) fn brief(&self) -> String {
        match self {
            Json::Null => "null".to_owned(),
            Json::Bool(value) => value.to_string(),
            Json::Number(text) | Json::Text(text) => text.clone(),
            Json::List(items) => format!("a list of {}", items.len()),
            Json::Object(_) => "an object".to_owned(),
        }
    }
}

impl Serialize for Json {
    /// A number is written as the text it was typed as: a document takes both.
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Json::Null => serializer.serialize_unit(),
            Json::Bool(value) => serializer.serialize_bool(*value),
            Json::Number(text) | Json::Text(text) => serializer.serialize_str(text),
            Json::List(items) => serializer.collect_seq(items),
            Json::Object(fields) => serializer.collect_map(fields.iter().map(|(name, value)| (name, value))),
        }
    }
}

/// The names of a JSON Pointer, RFC 6901.
fn tokens(pointer: &str) -> impl Iterator<Item = String> {
    pointer.split('/').skip(1).map(unescaped)
}

fn unescaped(token: &str) -> String {
    token.replace("~1", "/").replace("~0", "~")
}

/// A place in a list: digits without a leading zero.
fn place(token: &str) -> Option<usize> {
    let plain = token.chars().all(|c| c.is_ascii_digit()) && (token == "0" || !token.starts_with('0'));
    token.parse().ok().filter(|_| plain)
}

/// Where in a document a value stands.
pub(crate) enum Path<'p> {
    Root,
    Item(&'p Path<'p>, usize),
    Field(&'p Path<'p>, &'p str),
}

impl Path<'_> {
    /// Writes the JSON Pointer, RFC 6901, behind a text.
    fn write(&self, out: &mut String) {
        match self {
            Path::Root => {}
            Path::Item(parent, index) => {
                parent.write(out);
                let _ = write!(out, "/{index}");
            }
            Path::Field(parent, name) => {
                parent.write(out);
                out.push('/');
                match name.contains(['~', '/']) {
                    true => out.push_str(&name.replace('~', "~0").replace('/', "~1")),
                    false => out.push_str(name),
                }
            }
        }
    }

    fn pointer(&self) -> String {
        let mut out = String::with_capacity(64);
        self.write(&mut out);
        out
    }

    /// The refusal of a field that stands twice in the object here.
    fn repeated(&self, name: &str) -> Error {
        self.of_object(ErrorKind::RepeatedField, name, "this field stands twice in the same object")
    }

    /// The refusal of a field, named under the object it belongs to.
    fn of_object(&self, kind: ErrorKind, name: &str, reason: &str) -> Error {
        let error = Error::new(kind, name, reason);
        let place = format!("{}/{}", self.pointer(), error.refused());
        error.at(&place)
    }
}

/// A value of the tree and where it stands.
#[derive(Clone, Copy)]
pub(crate) struct Place<'j> {
    json: &'j Json,
    path: &'j Path<'j>,
}

/// What a part of a document is filled with.
pub(crate) trait Decode: Sized {
    /// The value at a place of the document.
    fn decode(place: Place<'_>) -> Result<Self, Error>;
}

impl Decode for bool {
    fn decode(place: Place<'_>) -> Result<Self, Error> {
        match place.json {
            Json::Bool(value) => Ok(*value),
            _ => Err(place.wrong_type("true or false")),
        }
    }
}

impl<T: Decode> Decode for Option<T> {
    fn decode(place: Place<'_>) -> Result<Self, Error> {
        // an optional field is left out; null is refused by what it should hold
        T::decode(place).map(Some)
    }
}

impl<T: Decode> Decode for Vec<T> {
    fn decode(place: Place<'_>) -> Result<Self, Error> {
        let Json::List(items) = place.json else { return Err(place.wrong_type("a list")) };
        let mut out = Vec::with_capacity(items.len());
        for (index, json) in items.iter().enumerate() {
            out.push(T::decode(Place { json, path: &Path::Item(place.path, index) })?);
        }
        Ok(out)
    }
}

/// A structure from any other format, by way of the tree.
pub(crate) fn deserialize<'de, T: Decode, D: Deserializer<'de>>(deserializer: D) -> Result<T, D::Error> {
    let tree = Json::deserialize(deserializer)?;
    T::decode(Place { json: &tree, path: &Path::Root }).map_err(de::Error::custom)
}

impl<'j> Place<'j> {
    /// What was typed at the place, which may be a number or not, and its JSON Pointer.
    pub(super) fn typed(self, number: bool) -> Result<(String, String), Error> {
        match self.json {
            Json::Text(text) => Ok((text.clone(), self.path.pointer())),
            Json::Number(text) if number => Ok((text.clone(), self.path.pointer())),
            _ if number => Err(self.wrong_type("a text or a number")),
            _ => Err(self.wrong_type("a text")),
        }
    }

    /// A copy of what stands there.
    pub(super) fn copied(self) -> Json {
        self.json.clone()
    }

    /// A job that stands there, as if it stood alone; what is refused in it is named from the root of the whole.
    pub(super) fn job(self) -> Result<Document, Error> {
        let heads = self.json.check_heads(super::FORMAT, super::VERSION);
        let job = heads.and_then(|()| Document::decode(Place { json: self.json, path: &Path::Root }));
        job.map_err(|e| e.below(&self.path.pointer()))
    }

    /// The choice that stands there: a word, or an object with one field.
    pub(crate) fn choice(self, words: &[&str]) -> Result<Choice<'j>, Error> {
        let path = self.path;
        match self.json {
            Json::Text(word) => Ok(Choice { word, json: None, path }),
            Json::Object(fields) => match fields.as_slice() {
                [(word, json)] => Ok(Choice { word, json: Some(json), path }),
                [(word, _), rest @ ..] if rest.iter().any(|(other, _)| other == word) => {
                    Err(path.repeated(word))
                }
                _ => {
                    let reason = format!("an object with exactly one of: {}", words.join(", "));
                    Err(Error::new(ErrorKind::WrongType, self.json.brief(), reason).at(&path.pointer()))
                }
            },
            _ => Err(self.wrong_type("one of the choices")),
        }
    }

    fn wrong_type(self, expected: &str) -> Error {
        wrong_type(self.json.brief(), expected).at(&self.path.pointer())
    }
}

fn wrong_type(refused: impl Into<String>, expected: &str) -> Error {
    Error::new(ErrorKind::WrongType, refused, format!("{expected} is needed"))
}

/// The fields of an object, for a structure to take.
pub(crate) struct Fields<'j> {
    object: &'j [(String, Json)],
    path: &'j Path<'j>,
    /// what is refused first in the order of the document, and its place in that order
    refused: Option<(usize, Error)>,
}

impl<'j> Fields<'j> {
    /// The fields at a place; what is no object is refused.
    pub(crate) fn of(place: Place<'j>, names: &[&str]) -> Result<Self, Error> {
        let (Json::Object(object), path) = (place.json, place.path) else {
            return Err(place.wrong_type("an object"));
        };
        let refused = object.iter().enumerate().find_map(|(index, (name, _))| {
            let error = if !names.contains(&name.as_str()) {
                let error = unknown(ErrorKind::UnknownField, name, names, "no such field here");
                error.at(&Path::Field(path, name).pointer())
            } else if object.iter().take(index).any(|(earlier, _)| earlier == name) {
                path.repeated(name)
            } else {
                return None;
            };
            Some((index, error))
        });
        Ok(Fields { object, path, refused })
    }

    /// The field of a name; nothing when it is left out or refused.
    // once for every type, not once for every field
    #[inline(never)]
    pub(crate) fn read<T: Decode>(&mut self, name: &str) -> Option<T> {
        let (index, json) = self.find(name)?;
        let value = T::decode(Place { json, path: &Path::Field(self.path, name) });
        value.map_err(|error| self.refuse(index, error)).ok()
    }

    #[cold]
    fn refuse(&mut self, index: usize, error: Error) {
        self.refused = Some((index, error));
    }

    /// A field that stands before what is refused already.
    fn find(&self, name: &str) -> Option<(usize, &'j Json)> {
        let before = self.refused.as_ref().map_or(self.object.len(), |(index, _)| *index);
        let mut fields = self.object.iter().take(before).enumerate();
        fields.find(|(_, (other, _))| other == name).map(|(index, (_, json))| (index, json))
    }

    /// Refuses what is to be refused, the first in the order of the document.
    pub(crate) fn finish(&mut self) -> Result<(), Error> {
        self.refused.take().map_or(Ok(()), |(_, error)| Err(error))
    }

    /// The refusal of a field that is left out and may not be.
    pub(crate) fn missing(&self, name: &str) -> Error {
        self.path.of_object(ErrorKind::MissingField, name, "this field is required")
    }
}

/// A choice of a document: its word and, where it is the name of a field, what that holds.
pub(crate) struct Choice<'j> {
    pub(crate) word: &'j str,
    json: Option<&'j Json>,
    path: &'j Path<'j>,
}

impl Choice<'_> {
    /// A choice that is a word alone.
    pub(crate) fn alone(&self) -> Result<(), Error> {
        match self.json {
            None => Ok(()),
            Some(json) => Err(Place { json, path: &Path::Field(self.path, self.word) }
                .wrong_type("the word alone, without an object")),
        }
    }

    /// What a choice holds.
    pub(crate) fn holds<T: Decode>(&self) -> Result<T, Error> {
        match self.json {
            Some(json) => T::decode(Place { json, path: &Path::Field(self.path, self.word) }),
            None => {
                let reason = format!("\"{0}\" needs its contents: {{\"{0}\": ...}}", self.word);
                Err(Error::new(ErrorKind::WrongType, self.word, reason).at(&self.path.pointer()))
            }
        }
    }

    /// The refusal of a word that is no choice.
    pub(crate) fn refused(&self, error: Error) -> Error {
        match self.json {
            Some(_) => error.at(&Path::Field(self.path, self.word).pointer()),
            None => error.at(&self.path.pointer()),
        }
    }
}

/// A word that is none of the accepted ones.
pub(crate) fn unknown_choice(word: &str, accepted: &[&str]) -> Error {
    unknown(ErrorKind::UnknownChoice, word, accepted, "not one of the choices")
}

fn unknown(kind: ErrorKind, word: &str, expected: &[&str], what: &str) -> Error {
    let reason = match expected {
        [] => format!("{what}; none is accepted"),
        _ => format!("{what}; accepted: {}", expected.join(", ")),
    };
    Error::new(kind, word, reason).suggest(nearest(word, expected))
}

/// The accepted word that a typing error turned into this one.
pub(crate) fn nearest(word: &str, accepted: &[&str]) -> Option<String> {
    let plain = |w: &str| w.to_lowercase().replace([' ', '-', '.'], "_");
    accepted
        .iter()
        .map(|a| (strsim::normalized_damerau_levenshtein(&plain(word), &plain(a)), *a))
        .filter(|(likeness, _)| *likeness >= 0.6)
        .max_by(|a, b| a.0.total_cmp(&b.0))
        .map(|(_, a)| a.to_owned())
}
