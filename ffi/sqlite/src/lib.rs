//! Functions of gaugepoint in SQLite, as an extension that is loaded: every function of the table of the core, a decision as a word, and why a value is
//! refused. `ffi/docs/guide-sql.md` shows them.
//!
//! They depend on nothing but their arguments and do no harm, so that a schema may call them: in a CHECK, an index, a generated column.

#![allow(unsafe_code, reason = "what SQLite calls, and what it lends")]

mod functions;
mod routines;

use core::ffi::{CStr, c_char, c_int};
use core::ptr::{null, without_provenance};
use core::slice;
use functions::{Answer, Given, MOST, PREFIX};
use gaugepoint::flat::{self, TABLE};
use routines::{Call, Connection, Context, Routines, Slot, Value};
use std::ffi::CString;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::OnceLock;

/// The SQLite that loaded the extension. Only it may call: the types of another one in the same process are others.
static LENT: OnceLock<Lent> = OnceLock::new();

struct Lent {
    /// Where the table is.
    place: usize,
    routines: Routines,
}

/// SQLite finds it by the name of the file, and it gives the connection the functions.
///
/// # Safety
/// The connection and the table are those of one SQLite, and `message` is NULL or a place for a text that it frees.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn sqlite3_gaugepointsqlite_init(
    connection: *mut Connection,
    message: *mut *mut c_char,
    table: *const Slot,
) -> c_int {
    // SAFETY: the caller's promise
    let load = || unsafe {
        let Some(routines) = Routines::of(table) else { return routines::ERROR };
        let lent = LENT.get_or_init(|| Lent { place: table.addr(), routines });
        if lent.place != table.addr() {
            say(
                &routines,
                message,
                c"gaugepoint serves another SQLite of this process: load a copy of the file",
            );
            return routines::ERROR;
        }
        register(&routines, connection).map_or_else(|code| code, |()| routines::OK)
    };
    catch_unwind(AssertUnwindSafe(load)).unwrap_or(routines::ERROR)
}

/// Leaves a message that SQLite frees.
///
/// # Safety
/// `message` is NULL or a place for a text that SQLite frees.
unsafe fn say(routines: &Routines, message: *mut *mut c_char, text: &CStr) {
    // SAFETY: the caller's promise; what is copied has its size
    unsafe {
        let place = (routines.malloc)(text.count_bytes() as c_int + 1).cast::<c_char>();
        if !place.is_null() && !message.is_null() {
            place.copy_from_nonoverlapping(text.as_ptr(), text.count_bytes() + 1);
            message.write(place);
        }
    }
}

/// Gives a connection every function.
///
/// # Safety
/// The routines are those of the connection.
unsafe fn register(routines: &Routines, connection: *mut Connection) -> Result<(), c_int> {
    let add = |name: &str, arguments: usize, row: *const flat::Function, function: Call| {
        let name = CString::new(format!("{PREFIX}{name}")).map_err(|_| routines::ERROR)?;
        let (name, arguments, row) = (name.as_ptr(), arguments as c_int, row.cast_mut().cast());
        // SAFETY: the caller's promise; the rows of the table live for ever
        let create = || unsafe {
            (routines.create_function_v2)(
                connection,
                name,
                arguments,
                routines::PURE,
                row,
                Some(function),
                null(),
                null(),
                null(),
            )
        };
        match create() {
            routines::OK => Ok(()),
            code => Err(code),
        }
    };
    for function in TABLE {
        add(function.name, function.parameters.len(), *function, call_flat)?;
    }
    let parameters = functions::DECIDE_PARAMETERS.len();
    add(functions::DECIDE, parameters - 1, null(), call_decide)?;
    add(functions::DECIDE, parameters, null(), call_decide)?;
    for arguments in 1..=MOST {
        add(functions::WHY, arguments, null(), call_why)?;
    }
    add("version", 0, null(), call_version)
}

unsafe extern "C" fn call_flat(context: *mut Context, count: c_int, values: *mut *mut Value) {
    // SAFETY: what SQLite calls with; it gives back the row of the table that the function was registered with
    unsafe {
        answer(context, count, values, |routines, given| {
            let row = &*(routines.user_data)(context).cast::<flat::Function>();
            functions::flat(row, given).map_err(|refusal| refusal.by(row.name))
        });
    }
}

unsafe extern "C" fn call_decide(context: *mut Context, count: c_int, values: *mut *mut Value) {
    // SAFETY: what SQLite calls with
    unsafe {
        answer(context, count, values, |_, given| {
            functions::decide(given).map_err(|refusal| refusal.by(functions::DECIDE))
        })
    }
}

unsafe extern "C" fn call_why(context: *mut Context, count: c_int, values: *mut *mut Value) {
    // SAFETY: what SQLite calls with
    unsafe {
        answer(context, count, values, |_, given| {
            functions::why(given).map_err(|refusal| refusal.by(functions::WHY))
        })
    }
}

unsafe extern "C" fn call_version(context: *mut Context, count: c_int, values: *mut *mut Value) {
    // SAFETY: what SQLite calls with
    unsafe { answer(context, count, values, |_, _| Ok(Answer::Text(env!("CARGO_PKG_VERSION").into()))) }
}

/// Reads the arguments, runs `body`, and says what came of it.
///
/// # Safety
/// The first three are what SQLite calls with.
unsafe fn answer(
    context: *mut Context,
    count: c_int,
    values: *mut *mut Value,
    body: impl FnOnce(&Routines, &[Given<'_>]) -> Result<Answer, String>,
) {
    let Some(Lent { routines, .. }) = LENT.get() else { return };
    let mut given = [Given::Null; MOST];
    for (k, given) in given.iter_mut().enumerate().take(count as usize) {
        // SAFETY: there are so many
        *given = unsafe { argument(routines, *values.add(k)) };
    }
    let given = given.get(..count as usize).unwrap_or_default();
    // SAFETY: the caller's promise
    unsafe {
        match guarded(|| body(routines, given)) {
            Ok(Answer::Null) => (routines.result_null)(context),
            Ok(Answer::Number(number)) => (routines.result_double)(context, number),
            Ok(Answer::Text(text)) => {
                let copied = without_provenance(usize::MAX);
                (routines.result_text)(context, text.as_ptr().cast(), text.len() as c_int, copied);
            }
            Err(text) => {
                (routines.result_error)(context, text.as_ptr().cast(), text.len() as c_int);
                (routines.result_error_code)(context, routines::CONSTRAINT_FUNCTION);
            }
        }
    }
}

/// # Safety
/// The value is one of the call.
unsafe fn argument<'a>(routines: &Routines, value: *mut Value) -> Given<'a> {
    // SAFETY: the caller's promise; a text lives as long as the call, and NULL stands for one that had no memory
    unsafe {
        match (routines.value_type)(value) {
            routines::INTEGER | routines::FLOAT => Given::Number((routines.value_double)(value)),
            routines::TEXT => {
                let text = (routines.value_text)(value);
                let bytes = (routines.value_bytes)(value) as usize;
                Given::Text(if text.is_null() { &[] } else { slice::from_raw_parts(text, bytes) })
            }
            routines::NULL => Given::Null,
            _ => Given::Blob,
        }
    }
}

/// A panic is a refusal too: none may reach SQLite.
fn guarded(body: impl FnOnce() -> Result<Answer, String>) -> Result<Answer, String> {
    catch_unwind(AssertUnwindSafe(body))
        .unwrap_or_else(|_| Err("a fault inside gaugepoint; please report it with its arguments".to_owned()))
}

#[cfg(test)]
mod tests {
    //! No argument is known to panic, so the boundary is proved with a body that does.
    use super::*;

    #[test]
    fn a_panic_becomes_an_error() {
        let refused = guarded(|| panic!("broken"));
        assert!(refused.unwrap_err().starts_with("a fault inside gaugepoint"));
    }
}
