//! From text to the document's structures, with the place of every refusal.
//!
//! The text is parsed by `serde_json` into a plain tree that loses nothing (repeated names included); the structures are
//! then filled from the tree by their derived code, through a deserializer that knows where in the document it is.

use super::document::Document;
use super::entry::{ENTRY, NESTED, TREE, WORDS};
use crate::error::{Error, ErrorKind};
use core::fmt::{self, Write};
use serde::de::value::{MapDeserializer, SeqDeserializer};
use serde::de::{
    self, DeserializeSeed, Deserializer, EnumAccess, IntoDeserializer, MapAccess, SeqAccess, Unexpected,
    VariantAccess, Visitor,
};
use serde::{Deserialize, Serialize, Serializer, forward_to_deserialize_any};

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
pub(crate) fn from_json<'de, T: Deserialize<'de>>(
    text: &str,
    format: &str,
    version: u32,
) -> Result<T, Error> {
    check_size(text.len())?;
    if text.starts_with('\u{feff}') {
        let reason = "it begins with a byte order mark; save it as UTF-8 without one";
        return Err(Error::new(ErrorKind::Syntax, "", reason));
    }
    let mut tree: Json = serde_json::from_str(text).map_err(|e| syntax(&e))?;
    tree.keep_numbers(&mut Numbers(text));
    tree.check_heads(format, version)?;
    T::deserialize(Place { json: &tree, path: &Path::Root }).map_err(|Refused(e)| e)
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
    let job = Document::deserialize(Place { json: tree, path: &Path::Root }).map_err(|Refused(e)| e)?;
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
            // a number as it was typed
            fn visit_newtype_struct<D: Deserializer<'de>>(self, text: D) -> Result<Json, D::Error> {
                String::deserialize(text).map(Json::Number)
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

/// A value of the tree as it is, for a copy of it.
struct Plain<'j>(&'j Json);

impl<'de> Deserializer<'de> for Plain<'_> {
    type Error = Refused;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        match self.0 {
            Json::Null => visitor.visit_unit(),
            Json::Bool(value) => visitor.visit_bool(*value),
            Json::Number(text) => visitor.visit_newtype_struct(text.as_str().into_deserializer()),
            Json::Text(text) => visitor.visit_str(text),
            Json::List(items) => visitor.visit_seq(SeqDeserializer::new(items.iter().map(Plain))),
            Json::Object(fields) => {
                let fields = fields.iter().map(|(name, value)| (name.as_str(), Plain(value)));
                visitor.visit_map(MapDeserializer::new(fields))
            }
        }
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf option unit unit_struct
        newtype_struct seq tuple tuple_struct map struct enum identifier ignored_any
    }
}

impl<'de> IntoDeserializer<'de, Refused> for Plain<'_> {
    type Deserializer = Self;
    fn into_deserializer(self) -> Self {
        self
    }
}

enum Path<'p> {
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
}

/// A value of the tree and where it stands.
#[derive(Clone, Copy)]
struct Place<'j> {
    json: &'j Json,
    path: &'j Path<'j>,
}

/// An [`Error`] as `serde` makes it.
#[derive(Debug)]
struct Refused(Error);

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
impl core::error::Error for Refused {}

impl Refused {
    fn at(self, path: &Path<'_>) -> Self {
        if !self.0.field().is_empty() {
            return self;
        }
        // a missing or repeated field is named under the object it belongs to
        let place = match self.0.kind() {
            ErrorKind::MissingField | ErrorKind::RepeatedField => {
                format!("{}/{}", path.pointer(), self.0.refused())
            }
            _ => path.pointer(),
        };
        Refused(self.0.at(&place))
    }
}

impl de::Error for Refused {
    fn custom<M: fmt::Display>(message: M) -> Self {
        Refused(Error::new(ErrorKind::WrongType, "", message.to_string()))
    }
    fn invalid_type(unexpected: Unexpected<'_>, expected: &dyn de::Expected) -> Self {
        Refused(Error::new(ErrorKind::WrongType, unexpected.to_string(), format!("{expected} is needed")))
    }
    fn unknown_field(field: &str, expected: &'static [&'static str]) -> Self {
        Refused(unknown(ErrorKind::UnknownField, field, expected, "no such field here"))
    }
    fn unknown_variant(variant: &str, expected: &'static [&'static str]) -> Self {
        Refused(unknown_choice(variant, expected))
    }
    fn missing_field(field: &'static str) -> Self {
        Refused(Error::new(ErrorKind::MissingField, field, "this field is required"))
    }
    fn duplicate_field(field: &'static str) -> Self {
        Refused(Error::new(ErrorKind::RepeatedField, field, "this field stands twice in the same object"))
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

impl<'j> Place<'j> {
    fn items(self, items: &'j [Json]) -> Items<'j> {
        Items { items: items.iter().enumerate(), path: self.path }
    }

    fn fields(self, fields: &'j [(String, Json)]) -> Fields<'j> {
        Fields { fields: fields.iter(), value: None, path: self.path }
    }

    fn wrong_type(self, expected: &dyn de::Expected) -> Refused {
        Refused(Error::new(ErrorKind::WrongType, self.json.brief(), format!("{expected} is needed")))
            .at(self.path)
    }
}

impl<'de> Deserializer<'de> for Place<'_> {
    type Error = Refused;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        match self.json {
            Json::Text(text) => visitor.visit_str(text),
            Json::List(items) => visitor.visit_seq(self.items(items)),
            Json::Object(fields) => visitor.visit_map(self.fields(fields)),
            Json::Null | Json::Bool(_) | Json::Number(_) => Err(self.wrong_type(&visitor)),
        }
        .map_err(|e| e.at(self.path))
    }

    fn deserialize_bool<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        match self.json {
            Json::Bool(value) => visitor.visit_bool(*value),
            _ => Err(self.wrong_type(&"true or false")),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        // an optional field is left out; null is refused by what it should hold
        visitor.visit_some(self)
    }

    fn deserialize_newtype_struct<V: Visitor<'de>>(
        self,
        name: &'static str,
        visitor: V,
    ) -> Result<V::Value, Refused> {
        match self.json {
            Json::Text(text) | Json::Number(text) if name == ENTRY => {
                let pair = [text.clone(), self.path.pointer()];
                visitor.visit_seq(SeqDeserializer::new(pair.into_iter()))
            }
            Json::Text(text) if name == WORDS => {
                let pair = [text.clone(), self.path.pointer()];
                visitor.visit_seq(SeqDeserializer::new(pair.into_iter()))
            }
            _ if name == NESTED => {
                let root = Place { json: self.json, path: &Path::Root };
                let heads = self.json.check_heads(super::FORMAT, super::VERSION).map_err(Refused);
                let job = heads.and_then(|()| visitor.visit_newtype_struct(root));
                job.map_err(|Refused(e)| Refused(e.below(&self.path.pointer())))
            }
            _ if name == TREE => visitor.visit_newtype_struct(Plain(self.json)).map_err(|e| e.at(self.path)),
            _ if name == WORDS => Err(self.wrong_type(&"a text")),
            _ if name == ENTRY => Err(self.wrong_type(&visitor)),
            _ => visitor.visit_newtype_struct(self),
        }
    }

    fn deserialize_enum<V: Visitor<'de>>(
        self,
        _: &'static str,
        variants: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refused> {
        match self.json {
            Json::Text(word) => visitor.visit_enum(word.as_str().into_deserializer()),
            Json::Object(fields) => match fields.as_slice() {
                [(word, json)] => visitor.visit_enum(Variant { word, json, path: self.path }),
                [(word, _), rest @ ..] if rest.iter().any(|(other, _)| other == word) => Err(Refused(
                    Error::new(ErrorKind::RepeatedField, word, "this field stands twice in the same object"),
                )),
                _ => Err(Refused(Error::new(
                    ErrorKind::WrongType,
                    self.json.brief(),
                    format!("an object with exactly one of: {}", variants.join(", ")),
                ))),
            },
            _ => Err(self.wrong_type(&"one of the choices")),
        }
        .map_err(|e| e.at(self.path))
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refused> {
        match self.json {
            // derived code would take a list for a structure, by position; a document names its fields
            Json::Object(fields) => visitor.visit_map(self.fields(fields)),
            _ => Err(self.wrong_type(&"an object")),
        }
        .map_err(|e| e.at(self.path))
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Refused> {
        match self.json {
            Json::List(items) => visitor.visit_seq(self.items(items)),
            _ => Err(self.wrong_type(&"a list")),
        }
        .map_err(|e| e.at(self.path))
    }

    forward_to_deserialize_any! {
        i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit unit_struct
        tuple tuple_struct map identifier ignored_any
    }
}

struct Items<'j> {
    items: core::iter::Enumerate<core::slice::Iter<'j, Json>>,
    path: &'j Path<'j>,
}

impl<'de> SeqAccess<'de> for Items<'_> {
    type Error = Refused;
    fn next_element_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Refused> {
        let Some((index, json)) = self.items.next() else {
            return Ok(None);
        };
        let path = Path::Item(self.path, index);
        seed.deserialize(Place { json, path: &path }).map(Some).map_err(|e| e.at(&path))
    }
}

struct Fields<'j> {
    fields: core::slice::Iter<'j, (String, Json)>,
    value: Option<(&'j str, &'j Json)>,
    path: &'j Path<'j>,
}

impl<'de> MapAccess<'de> for Fields<'_> {
    type Error = Refused;
    fn next_key_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<Option<S::Value>, Refused> {
        let Some((name, json)) = self.fields.next() else {
            return Ok(None);
        };
        self.value = Some((name, json));
        let key: de::value::StrDeserializer<'_, Refused> = name.as_str().into_deserializer();
        seed.deserialize(key).map(Some).map_err(|e| e.at(&Path::Field(self.path, name)))
    }
    fn next_value_seed<S: DeserializeSeed<'de>>(&mut self, seed: S) -> Result<S::Value, Refused> {
        let Some((name, json)) = self.value.take() else {
            return Err(de::Error::custom("a value without a name"));
        };
        let path = Path::Field(self.path, name);
        seed.deserialize(Place { json, path: &path }).map_err(|e| e.at(&path))
    }
}

struct Variant<'j> {
    word: &'j str,
    json: &'j Json,
    path: &'j Path<'j>,
}

impl<'de> EnumAccess<'de> for Variant<'_> {
    type Error = Refused;
    type Variant = Self;
    fn variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<(S::Value, Self), Refused> {
        let key: de::value::StrDeserializer<'_, Refused> = self.word.into_deserializer();
        let word = seed.deserialize(key).map_err(|e| e.at(&Path::Field(self.path, self.word)))?;
        Ok((word, self))
    }
}

impl<'de> VariantAccess<'de> for Variant<'_> {
    type Error = Refused;
    fn unit_variant(self) -> Result<(), Refused> {
        let path = Path::Field(self.path, self.word);
        Err(Place { json: self.json, path: &path }.wrong_type(&"the word alone, without an object"))
    }
    fn newtype_variant_seed<S: DeserializeSeed<'de>>(self, seed: S) -> Result<S::Value, Refused> {
        let path = Path::Field(self.path, self.word);
        seed.deserialize(Place { json: self.json, path: &path }).map_err(|e| e.at(&path))
    }
    fn tuple_variant<V: Visitor<'de>>(self, _: usize, visitor: V) -> Result<V::Value, Refused> {
        self.struct_variant(&[], visitor)
    }
    fn struct_variant<V: Visitor<'de>>(
        self,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Refused> {
        let path = Path::Field(self.path, self.word);
        Place { json: self.json, path: &path }.deserialize_any(visitor).map_err(|e| e.at(&path))
    }
}
