//! What SQLite lends to an extension: a table of routines whose places never change; new ones are added at its end.
//! `tests/hosts/sql` compares the places with those of its own header.

use core::ffi::{c_char, c_int, c_void};

/// A connection.
pub(crate) type Connection = c_void;
/// A call of a function.
pub(crate) type Context = c_void;
/// An argument of a call.
pub(crate) type Value = c_void;
/// A place of the table.
pub(crate) type Slot = *const c_void;
/// A function as SQLite calls it.
pub(crate) type Call = unsafe extern "C" fn(*mut Context, c_int, *mut *mut Value);

/// The call went well.
pub(crate) const OK: c_int = 0;
/// The call did not.
pub(crate) const ERROR: c_int = 1;
/// A function refused a value: the code that is kept for functions of extensions.
pub(crate) const CONSTRAINT_FUNCTION: c_int = 19 | 4 << 8;
/// Type of an argument.
pub(crate) const INTEGER: c_int = 1;
/// Type of an argument.
pub(crate) const FLOAT: c_int = 2;
/// Type of an argument.
pub(crate) const TEXT: c_int = 3;
/// Type of an argument.
pub(crate) const NULL: c_int = 5;
/// UTF-8; the same arguments give the same result; and no harm is done by calling it, so that a schema may.
pub(crate) const PURE: c_int = 0x1 | 0x800 | 0x20_0000;

macro_rules! routines {
    ($($place:literal $name:ident: fn($($argument:ty),*) $(-> $result:ty)?;)+) => {
        /// The routines that are needed.
        #[derive(Clone, Copy)]
        pub(crate) struct Routines {
            $(pub(crate) $name: unsafe extern "C" fn($($argument),*) $(-> $result)?,)+
        }

        impl Routines {
            /// None when SQLite has not all of them.
            ///
            /// # Safety
            /// `table` is the table of a SQLite 3 that is as long as the last place.
            pub(crate) unsafe fn of(table: *const Slot) -> Option<Self> {
                Some(Routines {
                    $($name: {
                        // SAFETY: the caller's promise; a place holds NULL or the routine
                        let slot = unsafe { table.add($place).cast::<Option<unsafe extern "C" fn($($argument),*) $(-> $result)?>>().read() };
                        slot?
                    },)+
                })
            }
        }
    };
}

routines! {
    68 malloc: fn(c_int) -> *mut c_void;
    79 result_double: fn(*mut Context, f64);
    80 result_error: fn(*mut Context, *const c_char, c_int);
    84 result_null: fn(*mut Context);
    85 result_text: fn(*mut Context, *const c_char, c_int, *const c_void);
    101 user_data: fn(*mut Context) -> *mut c_void;
    103 value_bytes: fn(*mut Value) -> c_int;
    105 value_double: fn(*mut Value) -> f64;
    109 value_text: fn(*mut Value) -> *const u8;
    113 value_type: fn(*mut Value) -> c_int;
    146 result_error_code: fn(*mut Context, c_int);
    162 create_function_v2: fn(*mut Connection, *const c_char, c_int, c_int, *mut c_void, Option<Call>, Slot, Slot, Slot) -> c_int;
}
