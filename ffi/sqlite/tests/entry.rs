//! The entry point with a table of routines in place of SQLite: what is registered, what a call answers, and how loading fails.
//! With SQLite itself: `tests/hosts/sql`.

#![allow(unsafe_code, reason = "it stands for SQLite")]
#![allow(clippy::indexing_slicing, clippy::unwrap_used, reason = "a test stops where it fails")]

use core::ffi::{CStr, c_char, c_int, c_void};
use core::ptr::{null, null_mut};
use core::slice;
use gaugepoint::flat::TABLE;
use gaugepoint_sqlite::sqlite3_gaugepointsqlite_init as init;
use std::sync::OnceLock;

type Call = unsafe extern "C" fn(*mut c_void, c_int, *mut *mut c_void);

/// A connection: what it was given.
#[derive(Default)]
struct Connection {
    functions: Vec<Registered>,
    /// It takes no more than so many.
    room: usize,
}

struct Registered {
    name: String,
    arguments: c_int,
    flags: c_int,
    row: *mut c_void,
    call: Call,
}

/// A call: what it is of, and what it answered.
struct Context {
    row: *mut c_void,
    answer: Answer,
}

#[derive(Debug, PartialEq)]
enum Answer {
    Nothing,
    Null,
    Number(f64),
    Text(String),
    Error(String, c_int),
}

enum Value {
    Number(f64),
    Text(&'static str),
    Null,
}

unsafe extern "C" fn create(
    connection: *mut Connection,
    name: *const c_char,
    arguments: c_int,
    flags: c_int,
    row: *mut c_void,
    call: Call,
    _step: *const c_void,
    _last: *const c_void,
    _destroy: *const c_void,
) -> c_int {
    let (connection, name) = unsafe { (&mut *connection, CStr::from_ptr(name)) };
    if connection.functions.len() == connection.room {
        return 21;
    }
    let name = name.to_str().unwrap().to_owned();
    connection.functions.push(Registered { name, arguments, flags, row, call });
    0
}

unsafe extern "C" fn malloc(bytes: c_int) -> *mut c_void {
    Box::leak(vec![0_u8; bytes as usize].into_boxed_slice()).as_mut_ptr().cast()
}

unsafe fn copied(text: *const c_char, bytes: c_int) -> String {
    String::from_utf8(unsafe { slice::from_raw_parts(text.cast(), bytes as usize) }.to_vec()).unwrap()
}

unsafe extern "C" fn result_double(context: *mut Context, number: f64) {
    unsafe { (*context).answer = Answer::Number(number) }
}

unsafe extern "C" fn result_error(context: *mut Context, text: *const c_char, bytes: c_int) {
    unsafe { (*context).answer = Answer::Error(copied(text, bytes), 1) }
}

unsafe extern "C" fn result_error_code(context: *mut Context, code: c_int) {
    if let Answer::Error(_, kept) = unsafe { &mut (*context).answer } {
        *kept = code;
    }
}

unsafe extern "C" fn result_null(context: *mut Context) {
    unsafe { (*context).answer = Answer::Null }
}

unsafe extern "C" fn result_text(context: *mut Context, text: *const c_char, bytes: c_int, lives: isize) {
    assert_eq!(lives, -1, "SQLite must copy it");
    unsafe { (*context).answer = Answer::Text(copied(text, bytes)) }
}

unsafe extern "C" fn user_data(context: *mut Context) -> *mut c_void {
    unsafe { (*context).row }
}

unsafe extern "C" fn value_type(value: *mut Value) -> c_int {
    match unsafe { &*value } {
        Value::Number(_) => 2,
        Value::Text(_) => 3,
        Value::Null => 5,
    }
}

unsafe extern "C" fn value_double(value: *mut Value) -> f64 {
    match unsafe { &*value } {
        Value::Number(number) => *number,
        _ => 0.0,
    }
}

unsafe extern "C" fn value_text(value: *mut Value) -> *const u8 {
    match unsafe { &*value } {
        Value::Text(text) => text.as_ptr(),
        _ => null(),
    }
}

unsafe extern "C" fn value_bytes(value: *mut Value) -> c_int {
    match unsafe { &*value } {
        Value::Text(text) => text.len() as c_int,
        _ => 0,
    }
}

/// The routines where SQLite has them; `tests/hosts/sql` compares the places with its header.
fn routines() -> Vec<usize> {
    let mut table = vec![0; 163];
    let all: [(usize, *const ()); 12] = [
        (68, malloc as *const ()),
        (79, result_double as *const ()),
        (80, result_error as *const ()),
        (84, result_null as *const ()),
        (85, result_text as *const ()),
        (101, user_data as *const ()),
        (103, value_bytes as *const ()),
        (105, value_double as *const ()),
        (109, value_text as *const ()),
        (113, value_type as *const ()),
        (146, result_error_code as *const ()),
        (162, create as *const ()),
    ];
    for (place, routine) in all {
        table[place] = routine.expose_provenance();
    }
    table
}

fn load(connection: &mut Connection, table: &[usize]) -> (c_int, Option<String>) {
    let mut message = null_mut();
    let code = unsafe { init((&raw mut *connection).cast(), &raw mut message, table.as_ptr().cast()) };
    let text = (!message.is_null()).then(|| unsafe { CStr::from_ptr(message) }.to_str().unwrap().to_owned());
    (code, text)
}

/// A connection of the SQLite of this process.
fn loaded(room: usize) -> (Connection, c_int) {
    static SQLITE: OnceLock<Vec<usize>> = OnceLock::new();
    let mut connection = Connection { room, ..Connection::default() };
    let (code, message) = load(&mut connection, SQLITE.get_or_init(routines));
    assert_eq!(message, None);
    (connection, code)
}

fn asked(connection: &Connection, name: &str, values: &mut [Value]) -> Answer {
    let count = values.len() as c_int;
    let of = connection.functions.iter().find(|f| f.name == name && f.arguments == count).unwrap();
    let mut context = Context { row: of.row, answer: Answer::Nothing };
    let mut pointers: Vec<*mut c_void> = values.iter_mut().map(|v| (&raw mut *v).cast()).collect();
    unsafe { (of.call)((&raw mut context).cast(), count, pointers.as_mut_ptr()) };
    context.answer
}

#[test]
fn every_function_of_the_table_is_registered_as_pure() {
    let (connection, code) = loaded(usize::MAX);
    assert_eq!(code, 0);
    for function in TABLE {
        let name = format!("gaugepoint_{}", function.name);
        let found: Vec<_> = connection.functions.iter().filter(|f| f.name == name).collect();
        assert_eq!(found.len(), 1, "{name}");
        assert_eq!(found[0].arguments as usize, function.parameters.len(), "{name}");
    }
    // UTF-8, deterministic, innocuous
    assert!(connection.functions.iter().all(|f| f.flags == 1 | 0x800 | 0x20_0000));
}

#[test]
fn calls_answer() {
    let (connection, _) = loaded(usize::MAX);
    let bench = |bore, piston| asked(&connection, "gaugepoint_bench_clearance_mm", &mut [bore, piston]);
    assert_eq!(bench(Value::Number(86.25), Value::Number(86.125)), Answer::Number(0.125));
    assert_eq!(bench(Value::Null, Value::Number(86.125)), Answer::Null);
    let Answer::Error(text, code) = bench(Value::Null, Value::Text("86")) else { panic!("a text is taken") };
    assert_eq!(text, "gaugepoint_bench_clearance_mm: wrong_type: piston_mm: \"86\" is a text, not a number");
    // SQLITE_CONSTRAINT_FUNCTION
    assert_eq!(code, 1043);
    let version = asked(&connection, "gaugepoint_version", &mut []);
    assert_eq!(version, Answer::Text(env!("CARGO_PKG_VERSION").to_owned()));
}

#[test]
fn a_connection_that_takes_no_more_fails_with_its_code() {
    let (connection, code) = loaded(3);
    assert_eq!((connection.functions.len(), code), (3, 21));
}

#[test]
fn another_sqlite_and_one_without_a_routine_are_refused() {
    loaded(usize::MAX);
    let mut connection = Connection { room: usize::MAX, ..Connection::default() };
    let mut other = routines();
    let (code, message) = load(&mut connection, &other);
    assert_eq!(code, 1);
    assert!(message.unwrap().contains("another SQLite of this process"));
    other[146] = 0;
    assert_eq!(load(&mut connection, &other), (1, None));
    assert!(connection.functions.is_empty());
}
